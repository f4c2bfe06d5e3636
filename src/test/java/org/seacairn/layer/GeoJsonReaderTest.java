package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.geodesy.Crs;

class GeoJsonReaderTest {
    private static final String POINT = "{'type':'Point','coordinates':[-87.25,29.5]}";

    @TempDir
    Path folder;

    private Path write(String json) throws IOException {
        return Files.writeString(folder.resolve("cables.geojson"), json.replace('\'', '"'));
    }

    private VectorLayer read(String json) throws IOException {
        return VectorLayers.read(Sources.plain(write(json)));
    }

    private String refusal(String json) throws IOException {
        return Refusals.of(Sources.plain(write(json)));
    }

    private static String collection(String... features) {
        return "{'type':'FeatureCollection','features':[" + String.join(",", features) + "]}";
    }

    private static String feature(String geometry, String properties) {
        return "{'type':'Feature','geometry':" + geometry + ",'properties':" + properties + "}";
    }

    @Test
    void readsACollectionWithIdsByPlace() throws IOException {
        VectorLayer layer = read(collection(feature(POINT, "{'name':'a'}"), feature("null", "null"), "{'type':'Feature','properties':{}}", feature(POINT, "null")));
        assertEquals(Crs.WGS84, layer.crs());
        assertEquals(List.of(1L, 4L), layer.features().stream().map(Feature::id).toList());
        assertEquals(2, layer.featuresWithoutGeometry());
        assertEquals("POINT (-87.25 29.5)", layer.features().get(0).geometry().toText());
        assertEquals(List.of(), layer.notes());
    }

    @Test
    void readsOneFeatureOrABareGeometry() throws IOException {
        assertEquals("{name=a}", read(feature(POINT, "{'name':'a'}")).features().get(0).attributes().toString());
        assertEquals("POINT (-87.25 29.5)", read(POINT).features().get(0).geometry().toText());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "{'type':'Point','coordinates':[1,2,30,40]} | POINT (1 2)",
        "{'coordinates':[1e1,-2.5],'bbox':[0,0,1,1],'type':'Point'} | POINT (10 -2.5)",
        "{'type':'MultiPoint','coordinates':[[1,2],[3,4,5]]} | MULTIPOINT ((1 2), (3 4))",
        "{'type':'LineString','coordinates':[[1,2],[3,4]]} | LINESTRING (1 2, 3 4)",
        "{'type':'MultiLineString','coordinates':[[[1,2],[3,4]],[[5,6],[7,8]]]} | MULTILINESTRING ((1 2, 3 4), (5 6, 7 8))",
        "{'type':'Polygon','coordinates':[[[0,0],[9,0],[9,9],[0,0]],[[2,1],[3,1],[3,2],[2,1]]]} | POLYGON ((0 0, 9 0, 9 9, 0 0), (2 1, 3 1, 3 2, 2 1))",
        "{'type':'MultiPolygon','coordinates':[[[[0,0],[9,0],[9,9],[0,0]]],[[[20,0],[29,0],[29,9],[20,0]]]]} | MULTIPOLYGON (((0 0, 9 0, 9 9, 0 0)), ((20 0, 29 0, 29 9, 20 0)))",
        "{'type':'GeometryCollection','geometries':[{'type':'Point','coordinates':[1,2]},{'type':'Point','coordinates':[]}]} | GEOMETRYCOLLECTION (POINT (1 2))",
    })
    void readsEveryGeometry(String json, String wkt) throws IOException {
        assertEquals(wkt, read(collection(feature(json, "{}"))).features().get(0).geometry().toText());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "{'type':'Point','coordinates':[]}", "{'type':'LineString','coordinates':[]}", "{'type':'Polygon','coordinates':[]}",
        "{'type':'MultiPolygon','coordinates':[]}", "{'type':'GeometryCollection','geometries':[]}",
    })
    void countsEmptyCoordinatesAsNoGeometry(String json) throws IOException {
        VectorLayer layer = read(collection(feature(json, "{}"), feature(POINT, "{}")));
        assertEquals(1, layer.featuresWithoutGeometry());
        assertEquals(1, layer.features().size());
    }

    @Test
    void readsMembersInAnyOrder() throws IOException {
        VectorLayer layer = read("{'features':[{'properties':{'a':1},'geometry':{'coordinates':[1,2],'type':'Point'},'type':'Feature'}],"
                + "'note':{'deep':[1,[2]]},'crs':{'properties':{'name':'EPSG:32617'},'type':'name'},'type':'FeatureCollection'}");
        assertEquals(Crs.ofEpsg(32617), layer.crs());
        assertEquals("POINT (1 2)", layer.features().get(0).geometry().toText());
    }

    @Test
    void keepsAttributesInOrderAndNestedOnesAsText() throws IOException {
        VectorLayer layer = read(collection("{'type':'Feature','id':'c-7','geometry':" + POINT
                + ",'properties':{'z':1,'a':2.5,'yes':true,'none':null,'':'x','list':[4,'5'],'object':{'k':{'v':null}}}}"));
        assertEquals("{z=1, a=2.5, yes=true, none=null, =x, list=[4,\"5\"], object={\"k\":{\"v\":null}}, id=c-7}",
                layer.features().get(0).attributes().toString());
        assertEquals(true, layer.features().get(0).attributes().get("yes"));
    }

    @Test
    void keepsThePropertyIdBeforeTheMemberId() throws IOException {
        VectorLayer layer = read(collection("{'type':'Feature','id':9,'geometry':" + POINT + ",'properties':{'id':'own'}}"));
        assertEquals("{id=own}", layer.features().get(0).attributes().toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "UTF-8 | \ufeff", "UTF-16LE | \ufeff", "UTF-16BE | ''",
    })
    void readsAByteOrderMarkAndWideText(String charset, String mark) throws IOException {
        Path file = Files.write(folder.resolve("a.JSON"), (mark + POINT.replace('\'', '"')).getBytes(charset));
        assertEquals("POINT (-87.25 29.5)", VectorLayers.read(Sources.plain(file)).features().get(0).geometry().toText());
    }

    @Test
    void honoursTheCrsMemberOfTheEarlierSpecification() throws IOException {
        VectorLayer layer = read("{'type':'FeatureCollection','crs':{'type':'name','properties':{'name':'urn:ogc:def:crs:EPSG::26916'}},'features':["
                + feature("{'type':'Point','coordinates':[500000,3200000],'crs':{'type':'name','properties':{'name':'EPSG:4267'}}}", "{}") + "]}");
        assertEquals(Crs.ofEpsg(26916), layer.crs());
        assertEquals(List.of("its CRS is that of its \"crs\" member, urn:ogc:def:crs:EPSG::26916, with x before y",
                "1 \"crs\" members inside features are not read"), layer.notes());
    }

    @Test
    void takesThePlansCrsBeforeTheFilesAndSaysSo() throws IOException {
        VectorLayer layer = VectorLayers.read(Sources.withCrs(write(POINT), "EPSG:4269"));
        assertEquals(Crs.ofEpsg(4269), layer.crs());
        assertEquals(1, layer.notes().size());
        assertTrue(layer.notes().get(0).startsWith("the plan's CRS EPSG:4269"), layer.notes().get(0));
    }

    @Test
    void readsPolygonsWhicheverWayTheyTurn() throws IOException {
        String clockwise = "{'type':'Polygon','coordinates':[[[0,0],[0,9],[9,9],[0,0]],[[1,2],[2,3],[1,3],[1,2]]]}";
        assertEquals(40, read(clockwise).features().get(0).geometry().getArea(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "{'type':'Point','coordinates':[1]}                          | expected a number in a position of two numbers or more but found \"]\"",
        "{'type':'Point','coordinates':[1,'2']}                      | expected a number in a position of two numbers or more but found \"2\"",
        "{'type':'Point','coordinates':[1,null]}                     | expected a number in a position of two numbers or more but found \"null\"",
        "{'type':'Point','coordinates':[1,2,[3]]}                    | expected a number in a position of two numbers or more but found \"[\"",
        "{'type':'Point','coordinates':'1,2'}                        | expected a list of coordinates but found \"1,2\"",
        "{'type':'Point','coordinates':[1e999,2]}                    | a coordinate is 1e999 and not a place",
        "{'type':'Point','coordinates':[NaN,2]}                      | is no proper JSON (",
        "{'type':'Point','coordinates':[[1,2]]}                      | its coordinates are nested deeper than the type Point allows",
        "{'type':'Point'}                                            | its \"Point\" has no \"coordinates\"",
        "{'coordinates':[1,2]}                                       | its geometry has no \"type\"",
        "{'type':'Circle','coordinates':[1,2]}                       | its geometry is of the unknown type \"Circle\"",
        "{'type':'LineString','coordinates':[[1,2]]}                 | a line has one point",
        "{'type':'LineString','coordinates':[1,2]}                   | its coordinates are nested less deep than its type asks for",
        "{'type':'LineString','coordinates':[[[1,2],[3,4]]]}         | its coordinates are nested deeper than its type allows",
        "{'type':'Polygon','coordinates':[[[0,0],[9,0],[9,9],[1,0]]]} | ring 1 of a polygon is not closed: it starts at (0.0, 0.0) and ends at (1.0, 0.0)",
        "{'type':'Polygon','coordinates':[[[0,0],[9,0],[0,0]]]}      | ring 1 of a polygon has 3 points",
        "{'type':'Polygon','coordinates':[[]]}                       | ring 1 of a polygon has 0 points",
        "{'type':'MultiPolygon','coordinates':[[[[0,0],[9,0],[9,9],[0,0]],[[1,1]]]]} | ring 2 of a polygon has 1 points",
        "{'type':'MultiPolygon','coordinates':[[[[[0,0]]]]]}         | its coordinates are nested too deep",
        "{'type':'GeometryCollection'}                               | its GeometryCollection has no \"geometries\"",
        "{'type':'GeometryCollection','geometries':[7]}              | expected an object in braces but found \"7\"",
        "{'rings':[[[0,0],[0,1],[1,1],[0,0]]]}                       | is Esri JSON (member \"rings\") and not GeoJSON",
        "[1,2]                                                       | expected an object in braces but found \"[\"",
        "{'type':'Point','coordinates':[1,2}                         | is no proper JSON (",
    })
    void namesTheFeatureWithABadGeometry(String geometry, String message) throws IOException {
        String text = refusal(collection(feature(POINT, "{}"), feature(geometry, "{}")));
        assertTrue(text.matches("(?s)cables\\.geojson, feature 2 \\(line 1, column \\d+\\): .*"), text);
        assertTrue(text.contains("): " + message), text);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "[]                                              | expected an object in braces but found \"[\"",
        "7                                               | expected an object in braces but found \"7\"",
        "{}                                              | the outermost object has no \"type\"",
        "{'geometry':{'type':'Point','coordinates':[1,2]}} | the outermost object has no \"type\"",
        "{'type':'Topology','objects':{}}                | is TopoJSON and not GeoJSON",
        "{'geometryType':'esriGeometryPoint','features':[]} | is Esri JSON (member \"geometryType\") and not GeoJSON",
        "{'type':'FeatureCollection','features':{}}      | expected a list of features but found \"{\"",
        "{'type':'FeatureCollection','features':[7]}     | expected an object in braces but found \"7\"",
        "{'type':'FeatureCollection','features':[{'type':'FeatureCollection','features':[]}]} | a collection stands inside another",
        "{'type':'FeatureCollection','features':[{'type':'Point','coordinates':[1,2]}]} | has no \"type\": \"Feature\"",
        "{'type':'FeatureCollection','features':[],'crs':{'type':'link','properties':{'href':'x'}}} | its \"crs\" member names no CRS",
        "{'type':'FeatureCollection','features':[],'crs':'EPSG:4326'} | expected a crs in braces but found \"EPSG:4326\"",
        "{'type':'Feature','geometry':null,'properties':[]} | expected properties in braces but found \"[\"",
        "{'type':'Point','coordinates':[1,2]}{'type':'Point','coordinates':[1,2]} | text follows after the end of the first object",
        "{'type':'Point','coordinates':[1,2]} x          | is no proper JSON (",
        "hello                                           | is no proper JSON (",
        "{'type':'FeatureCollection','features':[        | is no proper JSON (",
        "<kml/>                                          | is no proper JSON (",
    })
    void refusesWhatIsNoGeoJson(String json, String message) throws IOException {
        String text = refusal(json);
        assertTrue(text.startsWith("cables.geojson, ") && text.contains(": " + message), text);
        assertTrue(text.contains("line 1, column "), text);
    }

    @Test
    void refusesACrsThatIsNotKnown() throws IOException {
        assertTrue(refusal("{'type':'Point','coordinates':[1,2],'crs':{'type':'name','properties':{'name':'EPSG:999999'}}}")
                .startsWith("cables.geojson, member \"crs\": CRS EPSG:999999 is not in the EPSG data set"));
    }

    @Test
    void refusesNestingBombs() throws IOException {
        String deep = "{'type':'GeometryCollection','geometries':[".repeat(10_000);
        String text = refusal(collection(feature(POINT, "{}"), feature(deep, "{}")));
        assertTrue(text.startsWith("cables.geojson, feature 2 (line 1, column "), text);
        assertTrue(text.contains("is no proper JSON (Document nesting depth (101) exceeds the maximum allowed (100));"), text);
        assertTrue(refusal(collection(feature(POINT, "{'a':" + "[".repeat(100_000)))).contains("feature 1 (line 1, "));
        assertTrue(refusal("[".repeat(100_000)).startsWith("cables.geojson, line 1, column "));
    }

    /** What stands in a list or an object is none of the members about it. */
    @Test
    void takesNoMemberFromWithinATypeOrAnId() throws IOException {
        assertEquals("cables.geojson, line 1, column 66: the outermost object has no \"type\"; a GeoJSON file starts with {\"type\": \"FeatureCollection\"",
                refusal("{'type':{'type':'Point','coordinates':[1,2]},'coordinates':[3,4]}"));
        assertEquals("POINT (1 2)", read("{'type':'Feature','id':{'geometry':null,'type':'x'},'geometry':{'type':'Point','coordinates':[1,2]}}")
                .features().get(0).geometry().toText());
        assertTrue(refusal("{'type':[[[[0,0]]]]}").contains("has no \"type\""));
    }

    @Test
    void refusesTextThatIsNotUtf8() throws IOException {
        Path file = Files.write(folder.resolve("a.json"), "{\"type\":\"Ñ\"}".getBytes(StandardCharsets.ISO_8859_1));
        assertTrue(Refusals.of(Sources.plain(file)).startsWith("a.json, line 1, column "));
    }

    @Test
    void tellsTheLineOfAFeature() throws IOException {
        String text = refusal("{'type':'FeatureCollection',\n'features':[\n" + feature(POINT, "{}") + ",\n"
                + feature("{'type':'LineString','coordinates':[[1,2]]}", "{}") + "\n]}");
        assertEquals("cables.geojson, feature 2 (line 4, column 90): a line has one point; delete it or add a second point", text);
    }

    @Test
    void refusesACollectionWithoutGeometry() throws IOException {
        assertEquals("cables.geojson, layer \"trial\" (line 12 of the plan): holds no feature with a geometry (1 without);"
                + " give a file with features, or leave the layer out of the plan", refusal(collection(feature("null", "{}"))));
        assertEquals("cables.geojson, layer \"trial\" (line 12 of the plan): holds no feature; give a file with features,"
                + " or leave the layer out of the plan", refusal(collection()));
    }
}
