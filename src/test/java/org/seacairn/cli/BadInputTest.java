package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seacairn.cli.TinyScene.Outcome;

/**
 * What a stranger may do wrong: each ends with status 2 and a line that says which file, which place in
 * it, what is wrong and what to do, and the former output stays as it was, byte for byte.
 */
class BadInputTest {
    private static Map<String, String> formerOutput;

    @BeforeAll
    static void makeFormerOutput(@TempDir Path folder) {
        TinyScene scene = new TinyScene(folder);
        assertEquals(0, scene.rank().status());
        formerOutput = TinyScene.bytes(scene.path("plan-out"));
    }

    /**
     * One mistake.
     *
     * @param lines of standard error without {@code seacairn: }; … stands for any text, since readers
     *     may word their own part of a message as they like
     */
    private record Mistake(String name, Consumer<TinyScene> make, List<String> lines, String... options) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static Mistake mistake(String name, Consumer<TinyScene> make, String... lines) {
        return new Mistake(name, make, List.of(lines));
    }

    @ParameterizedTest
    @MethodSource({"plans", "bathymetries", "layers", "places"})
    void isToldInOneLine(Mistake mistake, @TempDir Path folder) {
        TinyScene scene = new TinyScene(folder.resolve("scene"));
        formerOutput.forEach((name, bytes) -> scene.write("plan-out/" + name, bytes.getBytes(StandardCharsets.ISO_8859_1)));
        mistake.make.accept(scene);
        Map<String, String> before = TinyScene.bytes(scene.folder);
        Outcome outcome = scene.rank(Arrays.stream(mistake.options)
                .map(option -> option.replace("{scene}", scene.folder.toString())).toArray(String[]::new));
        assertEquals(2, outcome.status(), outcome.err());
        assertEquals("", outcome.out());
        assertLines(mistake.lines, outcome.err());
        assertEquals(before, TinyScene.bytes(scene.folder), "files changed, or were left behind");
    }

    private static void assertLines(List<String> expected, String printed) {
        List<String> lines = printed.lines().toList();
        boolean same = lines.size() == expected.size();
        for (int i = 0; same && i < lines.size(); i++) {
            String pattern = Arrays.stream(("seacairn: " + expected.get(i)).split("…", -1)).map(Pattern::quote)
                    .collect(Collectors.joining(".*"));
            same = lines.get(i).matches(pattern);
        }
        if (!same) {
            assertEquals(String.join("\n", expected), printed);
        }
    }

    static Stream<Mistake> plans() {
        return Stream.of(
                mistake("no plan", s -> s.delete("plan.yaml"),
                        "plan.yaml: there is no such file; check the name and the folder"),
                mistake("plan is empty", s -> s.write("plan.yaml", ""),
                        "plan.yaml: the file is empty; write keys and values in it"),
                mistake("plan is a picture", s -> s.write("plan.yaml", garbage()),
                        "plan.yaml, line 1: this is not UTF-8 text; save the file as UTF-8"),
                mistake("ten mistakes", s -> s.write("plan.yaml", """
                        titel: Trial off Teasel Bank
                        display: imperial
                        crs: EPSG:4326
                        cell: 20
                        bathymetry: {file: depth.asc, values: heights, unit: m}
                        reefs: {file: reefs.csv, name: name, keep-off: -60 m}
                        keep-off:
                          - {layer: cables, file: cables.geojson, distance: 100 m, comfortable: 3 furlong}
                        limits: {depth: [120 m, 60 m]}
                        module: {file: module.yaml}
                        criteria:
                          depth: {weight: 3, curve: [60 m, 80 m, 70 m, 120 m]}
                        sites: {count: 4, apart: 150 m}
                        """),
                        "plan.yaml, line 1: \"titel\" is not a key of the plan; did you mean \"title\"?",
                        "plan.yaml, line 2: display is \"imperial\"; known here: us, metric",
                        "plan.yaml, line 3: crs is \"EPSG:4326\", which is not projected in metres; write one that is, such as"
                                + " EPSG:32617, or leave it out for the UTM zone",
                        "plan.yaml, line 4: cell is \"20\"; write the unit, for example \"20 m\"",
                        "plan.yaml, line 5: file is \"depth.asc\", and there is no such file; check the name (paths start from the"
                                + " plan's folder)",
                        "plan.yaml, line 5: values is \"heights\"; known here: elevation, depth",
                        "plan.yaml, line 6: keep-off is \"-60 m\"; a length is 0 or more…",
                        "plan.yaml, line 8: comfortable is \"3 furlong\", but \"furlong\" is not a unit known here; a length is"
                                + " written in m, …",
                        "plan.yaml, line 9: depth does not run from shallow to deep; write the shallowest first, for example"
                                + " \"[60 m, 150 m]\"",
                        "plan.yaml, line 12: corner 3 of curve is less than corner 2; write the four corners so that none falls"),
                mistake("three files are missing", s -> s.delete("reefs.csv").delete("cables.geojson").delete("module.yaml"),
                        "plan.yaml, line 12: file is \"reefs.csv\", and there is no such file; check the name…",
                        "plan.yaml, line 15: file is \"cables.geojson\", and there is no such file; check the name…",
                        "plan.yaml, line 17: file is \"module.yaml\", and there is no such file; check the name…"),
                mistake("working CRS in degrees", s -> s.plan("crs: EPSG:32617", "crs: EPSG:4326"),
                        "plan.yaml, line 2: crs is \"EPSG:4326\", which is not projected in metres; write one that is, such as"
                                + " EPSG:32617, or leave it out for the UTM zone"),
                mistake("working CRS in feet", s -> s.plan("crs: EPSG:32617", "crs: EPSG:2236"),
                        "plan.yaml, line 2: crs is \"EPSG:2236\", which is not projected in metres; …"),
                mistake("no such CRS", s -> s.plan("crs: EPSG:32617", "crs: EPSG:999999"),
                        "plan.yaml, line 2: CRS EPSG:999999 is not in the EPSG data set; check the code"),
                mistake("CRS in words", s -> s.plan("crs: EPSG:32617", "crs: UTM 17"),
                        "plan.yaml, line 2: CRS \"UTM 17\" is not known; write an EPSG code such as EPSG:32617, or well-known text"),
                mistake("CRS of the other side of the globe", s -> s.plan("crs: EPSG:32617", "crs: EPSG:32755"),
                        "depths.asc: coordinates lie outside the domain of EPSG:32617 …; check the CRS…"),
                mistake("a layer out of the plan's folder", s -> s.write("../cables.geojson", s.read("cables.geojson"))
                        .plan("file: cables.geojson", "file: ../cables.geojson"),
                        "plan.yaml, line 15: file is \"../cables.geojson\" and leads out of the plan's folder; move the file there,"
                                + " or run with --allow-outside"),
                mistake("an absolute path", s -> s.plan("file: cables.geojson", "file: \"" + slashed(s.path("cables.geojson")) + "\""),
                        "plan.yaml, line 15: file is \"…cables.geojson…\" and leads out of the plan's folder; …"),
                mistake("two layers of one name", s -> s.plan("limits:", "  - {layer: old cables, file: cables.geojson, distance: 1 m}\nlimits:"),
                        "plan.yaml, line 16: layer is \"old cables\", which becomes the same column name \"old_cables\" as"
                                + " \"Old Cables\"; write another name"));
    }

    static Stream<Mistake> bathymetries() {
        return Stream.of(
                mistake("bathymetry is missing", s -> s.delete("depths.asc"),
                        "plan.yaml, line 3: file is \"depths.asc\", and there is no such file; check the name…"),
                mistake("garbage as ASCII grid", s -> s.write("depths.asc", garbage()),
                        "depths.asc…; an Esri ASCII grid begins with ncols, nrows, xllcorner, yllcorner, cellsize"),
                mistake("garbage as GeoTIFF", s -> s.write("depths.tif", garbage()).plan("depths.asc", "depths.tif"),
                        "depths.tif: not a readable GeoTIFF (…); the file is damaged or cut short, get it again"),
                mistake("empty GeoTIFF", s -> s.write("depths.tif", "").plan("depths.asc", "depths.tif"),
                        "depths.tif, the file: is empty (0 bytes); export it again"),
                mistake("GeoTIFF cut short", s -> s.geoTiff().write("depths.tif", half(s.path("depths.tif"))).plan("depths.asc", "depths.tif"),
                        "depths.tif: not a readable GeoTIFF (…); the file is damaged or cut short, get it again"),
                mistake("ASCII grid cut short", s -> s.write("depths.asc", TinyScene.asciiGrid(20)),
                        "depths.asc, line 27: the file ends after 1200 of 2400 values; it is cut short, get it again"),
                mistake("a word among the depths", s -> s.write("depths.asc", s.read("depths.asc").replaceFirst(" -70\\.\\d+ ", " dry ")),
                        "depths.asc, line …: \"dry\" is no number; …"),
                mistake("a format that is not read", s -> s.write("depths.las", "1 2 3").plan("depths.asc", "depths.las"),
                        "depths.las: no reader takes this file; bathymetry is read from …GeoTIFF (.tif, .tiff)…"),
                mistake("a grid that states no CRS", s -> s.delete("depths.prj"),
                        "depths.asc: the file states no CRS; state it in the plan beside the file, for example crs: EPSG:32617"),
                mistake("not one depth", s -> s.write("depths.asc", s.read("depths.asc").replaceAll("-\\d+\\.\\d+", "-9999")),
                        "depths.asc: no cell of the working grid has a depth, all are no-data; check the file, its no-data value, and"
                                + " the cell that the plan states"),
                mistake("one cell larger than the survey", s -> s.plan("crs: EPSG:32617", "crs: EPSG:32617\ncell: 100 km"),
                        "depths.asc: no cell of the working grid has a depth, all are no-data; …, and the cell that the plan states"),
                mistake("more cells than anyone has", s -> s.plan("crs: EPSG:32617", "crs: EPSG:32617\ncell: 1 mm"),
                        "depths.asc: a grid of 0.001 m cells over it has 1200000 x 800000 cells, …; state a larger cell in the plan"),
                mistake("bathymetry lies elsewhere", s -> s.write("depths.asc", s.read("depths.asc").replace("520000", "620000")),
                        "bottom.geojson: no polygon of \"bottom\" meets the working grid; check the file and its CRS…",
                        "permit.geojson: no polygon of \"inside\" meets the working grid; check the file and its CRS…"));
    }

    static Stream<Mistake> layers() {
        List<Mistake> mistakes = new ArrayList<>(List.of(
                mistake("garbage as GeoJSON", s -> s.write("cables.geojson", garbage()),
                        "cables.geojson, line 1, column 1: is no proper JSON (…); correct it or export it again"),
                mistake("a web page as GeoJSON", s -> s.write("cables.geojson", "<html>Page not found</html>"),
                        "cables.geojson, line 1, column 1: is no proper JSON (…); correct it or export it again"),
                mistake("garbage as GeoPackage", s -> s.write("g.gpkg", garbage()).plan("cables.geojson", "g.gpkg"),
                        "g.gpkg, start: is no SQLite database and so no GeoPackage; export it again"),
                mistake("garbage as shapefile", s -> s.write("g.shp", garbage()).write("g.prj", s.read("depths.prj")).plan("cables.geojson", "g.shp"),
                        "g.shp, header: is no main file of a shapefile; export it again"),
                mistake("garbage as CSV", s -> s.write("reefs.csv", garbage()),
                        "reefs.csv, character …: is a zero byte, so this is no text file; export it as CSV"),
                mistake("a format that is not read", s -> s.write("c.xls", "x").plan("cables.geojson", "c.xls"),
                        "c.xls, layer \"Old Cables\" (line 15 of the plan): its name is of no format that can be read; give"
                                + " GeoPackage (.gpkg), shapefile (.shp), GeoJSON (.geojson, .json), GPX (.gpx), KML (.kml, .kmz), CSV (.csv, .txt), …"),
                mistake("shapefile without .prj", s -> s.write("cables.shp", pointShapefile()).plan("cables.geojson, name: name", "cables.shp"),
                        "cables.shp, CRS: there is no .prj file beside it that states its CRS; state its \"crs\","
                                + " for example EPSG:4326"),
                mistake("no such CRS of a layer", s -> s.plan("file: cables.geojson", "crs: EPSG:999999, file: cables.geojson"),
                        "plan.yaml, line 15: CRS EPSG:999999 is not in the EPSG data set; check the code"),
                mistake("no feature", s -> s.write("cables.geojson", TinyScene.features()),
                        "cables.geojson, layer \"Old Cables\" (line 15 of the plan): holds no feature; give a file with features, or"
                                + " leave the layer out of the plan"),
                mistake("no bottom polygon", s -> s.write("bottom.geojson", TinyScene.features()),
                        "bottom.geojson, layer \"bottom\" (line 5 of the plan): holds no feature; …"),
                mistake("a header and no reef", s -> s.write("reefs.csv", "name,longitude,latitude\n"),
                        "reefs.csv, layer \"reefs\" (line 12 of the plan): holds no feature; …"),
                mistake("CSV without coordinates", s -> s.write("reefs.csv", "name,depth\nTeapot,80\n"),
                        "reefs.csv, line 1: no columns of longitude and latitude, or easting and northing, among \"name\", \"depth\"; …"),
                mistake("bottom lies elsewhere", s -> s.write("bottom.geojson",
                        TinyScene.features(TinyScene.polygon("kind", "sand", 90_000, 0, 91_000, 800))),
                        "bottom.geojson: no polygon of \"bottom\" meets the working grid; check the file and its CRS…"),
                mistake("permit area lies elsewhere", s -> s.write("permit.geojson",
                        TinyScene.features(TinyScene.polygon("name", "Plot C", 90_000, 0, 91_000, 800))),
                        "permit.geojson: no polygon of \"inside\" meets the working grid; check the file and its CRS…"),
                mistake("bottom of lines", s -> s.write("bottom.geojson", s.read("cables.geojson")),
                        "bottom.geojson: \"bottom\" has no polygon, only points or lines, which say nothing of the ground between; give polygons,"
                                + " or leave it out of the plan"),
                mistake("bottom crosses itself", s -> s.write("bottom.geojson", TinyScene.features(BOW_TIE)),
                        "bottom.geojson, feature 1 at (-80.787…, 29.563…): the polygon crosses itself; correct the feature in a GIS"
                                + " (repair geometries) and export the file again, or write repair: true beside the file in the plan"),
                mistake("keep-off area crosses itself", s -> s.write("cables.geojson", TinyScene.features(BOW_TIE)),
                        "cables.geojson, feature 1 at (…): the polygon crosses itself; correct the feature in a GIS…"),
                mistake("a bottom class that the plan does not name", s -> s.write("bottom.geojson", s.read("bottom.geojson").replace("mud", "muck")),
                        "bottom.geojson: the plan does not name the class \"muck\" (attribute kind); add it under bottom: classes with"
                                + " a suitability or never"),
                mistake("class attribute misspelt", s -> s.plan("class: kind", "class: Kind"),
                        "bottom.geojson, class of the bottom (line 5 of the plan): no feature has the attribute \"Kind\"; did you mean"
                                + " \"kind\"?"),
                mistake("class attribute of another file", s -> s.plan("class: kind", "class: substrate_code"),
                        "bottom.geojson, class of the bottom (line 5 of the plan): no feature has the attribute \"substrate_code\"; it"
                                + " has kind"),
                mistake("NaN in GeoJSON", s -> s.write("cables.geojson", s.read("cables.geojson").replaceFirst("\\[\\[-80[0-9.]+", "[[NaN")),
                        "cables.geojson, feature 1 (line 2, column …): …NaN…; correct it or export it again"),
                mistake("infinity in GeoJSON", s -> s.write("cables.geojson", s.read("cables.geojson").replaceFirst("\\[\\[-80[0-9.]+", "[[1e999")),
                        "cables.geojson, feature 1 (line 2, column …): a coordinate is 1e999 and not a place; correct or delete the"
                                + " feature"),
                mistake("NaN and inf in CSV", s -> s.write("reefs.csv", "name,longitude,latitude\nTeapot,NaN,29.5\nKettle,-80.7,inf\n"),
                        "reefs.csv, line 2, column \"longitude\": \"NaN\" is no longitude; write it as …",
                        "reefs.csv, line 3, column \"latitude\": \"inf\" is no latitude; write it as …"),
                mistake("metres as degrees", s -> s.write("reefs.csv", "name,longitude,latitude\nTeapot,520700,3270200\n"),
                        "reefs.csv, line 2, column \"longitude\": \"520700\" lies outside ±180 degrees; check the longitude, and that"
                                + " it is in degrees and not in metres"),
                mistake("bottom with longitude and latitude swapped", s -> s.write("bottom.geojson", swapped(s.read("bottom.geojson"))),
                        "bottom.geojson, layer \"bottom\": x and y (longitude and latitude) look swapped: the other way 3 of 3 features"
                                + " would lie on the working grid; correct the file"),
                mistake("keep-off with longitude and latitude swapped", s -> s.write("cables.geojson", swapped(s.read("cables.geojson"))),
                        "cables.geojson, layer \"Old Cables\": x and y (longitude and latitude) look swapped: the other way 1 of 1"
                                + " features would lie on the working grid; correct the file"),
                mistake("CSV columns of longitude and latitude swapped", s -> s.write("reefs.csv",
                        s.read("reefs.csv").replace("longitude,latitude", "latitude,longitude")),
                        "reefs.csv, layer \"reefs\": x and y (longitude and latitude) look swapped: …; correct the file"),
                mistake("west longitude without its sign", s -> s.write("reefs.csv", s.read("reefs.csv").replace("-80", "80")),
                        "reefs.csv, layer \"reefs\": the longitudes look as if their sign were wrong (west is negative): …; correct the"
                                + " file"),
                mistake("degrees in a CRS of metres", s -> s.plan("file: cables.geojson", "crs: EPSG:32617, file: cables.geojson"),
                        "cables.geojson, layer \"Old Cables\": all of it looks like longitude and latitude while its CRS, EPSG:32617"
                                + " (WGS 84 / UTM zone 17N), is in metres; check the CRS that the file or the plan states"),
                mistake("problems in several layers", s -> s.write("reefs.csv", "").write("cables.geojson", "{}"),
                        "reefs.csv, layer \"reefs\" (line 12 of the plan): is empty (0 bytes); export it again",
                        "cables.geojson, …: the outermost object has no \"type\"; a GeoJSON file starts with {\"type\":"
                                + " \"FeatureCollection\"")));
        for (String format : List.of("geojson", "gpkg", "shp", "csv")) {
            mistakes.add(mistake("0 bytes of " + format, s -> s.write("g." + format, "").plan("cables.geojson", "g." + format),
                    "g." + format + ", layer \"Old Cables\" (line 15 of the plan): is empty (0 bytes); export it again"));
        }
        return mistakes.stream();
    }

    static Stream<Mistake> places() {
        return Stream.of(
                mistake("output folder of someone else", s -> s.delete("plan-out/run.json").write("plan-out/thesis.doc", "ten years"),
                        "plan-out: holds files and no run.json of Seacairn, so it is not a former output; empty it, or choose another"
                                + " output folder"),
                mistake("a note among our files", s -> s.write("plan-out/note to the board.txt", "see site 3"),
                        "plan-out: holds note to the board.txt, which Seacairn did not write and would delete; move that elsewhere, or"
                                + " choose another output folder"),
                new Mistake("output is a file", s -> { }, List.of("reefs.csv: is a file; choose a folder for the output"),
                        "--out", "{scene}/reefs.csv"),
                new Mistake("output below a file", s -> { },
                        List.of("cannot write out: reefs.csv is in the way, and is no folder; check space and permission"),
                        "--out", "{scene}/reefs.csv/out"),
                new Mistake("output is the plan's folder", s -> { },
                        List.of("plan.yaml: lies in the output folder scene, which would be replaced; name another folder with --out"),
                        "--out", "{scene}"),
                new Mistake("output is the root", s -> { },
                        List.of("/: is the root of a file system; choose a folder for the output"), "--out", "/"));
    }

    private static final String BOW_TIE =
            TinyScene.feature("kind", "sand", "Polygon", "[" + TinyScene.line(0, 0, 1200, 800, 1200, 0, 0, 800, 0, 0) + "]");

    private static byte[] garbage() {
        byte[] bytes = new byte[3000];
        new Random(7).nextBytes(bytes);
        return bytes;
    }

    private static byte[] half(Path file) {
        try {
            byte[] bytes = Files.readAllBytes(file);
            return Arrays.copyOf(bytes, bytes.length / 2);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** GeoJSON with latitude first. */
    private static String swapped(String geoJson) {
        return geoJson.replaceAll("\\[(-80[0-9.]*), ([0-9.]*)]", "[$2, $1]");
    }

    private static String slashed(Path path) {
        return path.toString().replace('\\', '/');
    }

    /** One point near the scene (ESRI Shapefile Technical Description, July 1998, pages 3 to 6). */
    private static byte[] pointShapefile() {
        ByteBuffer shp = ByteBuffer.allocate(128);
        shp.putInt(0, 9994).putInt(24, 64);
        shp.order(ByteOrder.LITTLE_ENDIAN).putInt(28, 1000).putInt(32, 1);
        shp.order(ByteOrder.BIG_ENDIAN).putInt(100, 1).putInt(104, 10);
        shp.order(ByteOrder.LITTLE_ENDIAN).putInt(108, 1)
                .putDouble(112, TinyScene.WEST_M + 100).putDouble(120, TinyScene.SOUTH_M + 100);
        return shp.array();
    }

    @Test
    void theShapefileAboveLacksNothingButItsCrs(@TempDir Path folder) {
        TinyScene scene = new TinyScene(folder).write("cables.shp", pointShapefile())
                .plan("file: cables.geojson, name: name", "crs: EPSG:32617, file: cables.shp");
        assertEquals(0, scene.rank().status());
    }

    @Test
    void aPlanMayReadOutsideItsFolderWhenAllowed(@TempDir Path folder) {
        TinyScene scene = new TinyScene(folder.resolve("scene"));
        scene.write("../cables.geojson", scene.read("cables.geojson")).delete("cables.geojson");
        scene.plan("file: cables.geojson", "file: ../cables.geojson");
        assertEquals(2, scene.rank().status());
        Outcome outcome = scene.rank("--allow-outside");
        assertEquals(0, outcome.status(), outcome.err());
        assertTrue(scene.read("plan-out/sites.csv").contains("Cable 1"));
    }

    @Test
    void aFolderThatMayNotBeWritten(@TempDir Path folder) {
        TinyScene scene = new TinyScene(folder);
        scene.write("locked/readme.txt", "");
        assumeTrue(scene.path("locked").toFile().setWritable(false) && !Files.isWritable(scene.path("locked")), "root may write anywhere");
        Outcome outcome = scene.rank("--out", scene.path("locked/out").toString());
        assertEquals(2, outcome.status());
        assertLines(List.of("cannot write out: permission denied; check space and permission"), outcome.err());
    }

    @Test
    void aLayerFarFromTheGridIsWarnedOf(@TempDir Path folder) {
        TinyScene scene = new TinyScene(folder);
        scene.write("cables.geojson", TinyScene.features(TinyScene.feature("name", "Cable 2", "LineString", TinyScene.line(90_000, 0, 91_000, 0))));
        Outcome outcome = scene.rank();
        assertEquals(0, outcome.status(), outcome.err());
        assertTrue(outcome.err().contains("warning: cables.geojson: no feature of \"Old Cables\" comes near the working grid; if that"
                + " is unexpected, check its CRS"), outcome.err());
    }
}
