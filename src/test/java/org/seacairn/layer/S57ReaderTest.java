package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.seacairn.layer.ChartFixture.attributes;
import static org.seacairn.layer.ChartFixture.control;
import static org.seacairn.layer.ChartFixture.feature;
import static org.seacairn.layer.ChartFixture.nodes;
import static org.seacairn.layer.ChartFixture.part;
import static org.seacairn.layer.ChartFixture.pointers;
import static org.seacairn.layer.ChartFixture.positions;
import static org.seacairn.layer.ChartFixture.vector;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

/** Object classes by number: 22 CBLSUB, 42 DEPARE, 86 OBSTRN, 121 SBDARE, 129 SOUNDG (S-57 appendix A, chapter 1). */
class S57ReaderTest {
    private static final String SQUARE_WITH_HOLE = "POLYGON ((0 0, 0 4, 4 4, 4 0, 2 -0.5, 0 0), (1 1, 2 1, 2 2, 1 2, 1 1))";

    @TempDir
    Path folder;

    /** A square with one side bent outwards and a square hole, cut into three edges, and a place of each other kind. */
    static ChartFixture trial() {
        return ChartFixture.chart(3, 0)
                .node(110, 1, 295, -795)
                .soundings(2, 10, 20, 345, 11, 21, -7)
                .node(120, 1, 0, 0).node(120, 2, 0, 40).node(120, 3, 10, 10)
                .edge(1, 1, 2, -5, 20).edge(2, 2, 1, 40, 40, 40, 0).edge(3, 3, 3, 10, 20, 20, 20, 20, 10)
                .feature(11, 1, 86, pointers(110, 1, 255, 255, 255), attributes(42, "5", 179, "12.5", 116, "Tamarack Point"))
                .feature(12, 2, 22, pointers(130, 1, 1, 255, 1, 130, 2, 1, 255, 2))
                .feature(13, 3, 121, pointers(130, 2, 2, 1, 2, 130, 1, 2, 3, 1, 130, 3, 1, 2, 2), attributes(113, "4,1,17"))
                .feature(14, 1, 129, pointers(110, 2, 255, 255, 255), attributes(125, "6"));
    }

    private VectorLayer read(ChartFixture chart, String objectClass) throws IOException {
        return VectorLayers.read(Sources.withTable(chart.write(folder, "chart.000"), objectClass));
    }

    private String refused(ChartFixture chart, String objectClass) throws IOException {
        return Refusals.of(Sources.withTable(chart.write(folder, "chart.000"), objectClass));
    }

    private static String geometry(VectorLayer layer) {
        assertEquals(1, layer.features().size());
        return layer.features().get(0).geometry().toText();
    }

    @Test
    void dividesPositionsByTheFactorOfTheChart() throws IOException {
        VectorLayer layer = read(trial(), "OBSTRN");
        assertEquals("POINT (-79.5 29.5)", geometry(layer));
        assertEquals(Crs.WGS84, layer.crs());
        assertEquals("S-57 chart", layer.format());
        assertEquals(List.of("edition 3, update 0, issued 20260102, compiled at 1:50000; no later update lies beside it"), layer.notes());
        assertEquals(11, layer.features().get(0).id());
    }

    @Test
    void namesAttributesByAcronymAndTellsNumbersFromCodes() throws IOException {
        assertEquals(Map.of("CATOBS", "5", "VALSOU", 12.5, "OBJNAM", "Tamarack Point"), read(trial(), "OBSTRN").features().get(0).attributes());
        assertEquals(Map.of("NATSUR", "4,1,17", "NATSUR_words", "sand, mud, shells"), read(trial(), "sbdare").features().get(0).attributes());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"87|30|30", "87|-1.8|-1.8", "87|1e5|1e5", "87|deep|deep", "133|22000|22000", "42|05|05", "999|x|x", "113|9|9"})
    void keepsWhatIsNoNumberAsItStands(int code, String written, String shown) throws IOException {
        ChartFixture chart = ChartFixture.chart(1, 0).node(110, 1, 0, 0).feature(1, 1, 86, pointers(110, 1, 255, 255, 255), attributes(code, written));
        Map<String, Object> found = read(chart, "OBSTRN").features().get(0).attributes();
        assertEquals(shown, found.values().iterator().next().toString(), found.toString());
        boolean number = List.of("30", "-1.8", "22000").contains(written);
        assertEquals(number, found.values().iterator().next() instanceof Number, found.toString());
    }

    @Test
    void takesAnEmptyValueAsUnknown() throws IOException {
        ChartFixture chart = ChartFixture.chart(1, 0).node(110, 1, 0, 0)
                .feature(1, 1, 121, pointers(110, 1, 255, 255, 255), attributes(113, "", 87, ""));
        Map<String, Object> found = read(chart, "SBDARE").features().get(0).attributes();
        assertTrue(found.containsKey("NATSUR") && found.containsKey("DRVAL1"));
        assertNull(found.get("NATSUR"));
        assertNull(found.get("NATSUR_words"));
        assertNull(found.get("DRVAL1"));
    }

    @Test
    void readsNationalTextOfOneAndOfTwoBytes() throws IOException {
        ChartFixture latin = ChartFixture.chart(1, 0).node(110, 1, 0, 0)
                .feature(1, 1, 86, attributes(116, "\u00c9pave"), part("NATF", "2t", 301, "\u00c9pave"), pointers(110, 1, 255, 255, 255));
        assertEquals(Map.of("OBJNAM", "\u00c9pave", "NOBJNM", "\u00c9pave"), read(latin, "OBSTRN").features().get(0).attributes());
        ChartFixture wide = ChartFixture.chart(1, 0).nationalLevel(2).node(110, 1, 0, 0)
                .feature(1, 1, 86, attributes(116, "Wreck"), part("NATF", "2w", 301, "\u6c88\u8239\u1f00", 300, ""), pointers(110, 1, 255, 255, 255));
        assertEquals("\u6c88\u8239\u1f00", read(wide, "OBSTRN").features().get(0).attributes().get("NOBJNM"));
    }

    @Test
    void joinsEdgesToLinesMaskedOrNot() throws IOException {
        assertEquals("LINESTRING (0 0, 2 -0.5, 4 0, 4 4, 0 4, 0 0)", geometry(read(trial(), "CBLSUB")));
    }

    @Test
    void leavesALineWithAGapInParts() throws IOException {
        ChartFixture chart = trial().feature(20, 2, 43, pointers(130, 1, 2, 255, 2, 130, 3, 1, 255, 2));
        assertEquals("MULTILINESTRING ((4 0, 2 -0.5, 0 0), (1 1, 2 1, 2 2, 1 2, 1 1))", geometry(read(chart, "DEPCNT")));
    }

    @Test
    void closesRingsAndCutsHolesOut() throws IOException {
        assertEquals(SQUARE_WITH_HOLE, geometry(read(trial(), "SBDARE")));
    }

    @Test
    void turnsRingsAsTheyShouldBeWhereTheFileHasNot() throws IOException {
        ChartFixture chart = trial().feature(20, 3, 42, pointers(130, 1, 1, 1, 2, 130, 2, 1, 1, 2, 130, 3, 2, 2, 2));
        VectorLayer layer = read(chart, "DEPARE");
        // 4 x 4, a bulge of 4 x 0.5 / 2, less a hole of 1 x 1.
        assertEquals(16, layer.features().get(0).geometry().getArea(), 1e-12);
        assertTrue(GeometryCheck.of(layer).isEmpty());
    }

    @Test
    void takesAnExteriorThatTouchesItselfApart() throws IOException {
        ChartFixture chart = ChartFixture.chart(1, 0).node(120, 1, 0, 0)
                .edge(1, 1, 1, 10, 0, 10, 10).edge(2, 1, 1, -30, 0, -30, -30).edge(3, 1, 1)
                .node(120, 2, -20, -5).edge(4, 2, 2, -20, -10, -25, -10)
                .feature(1, 3, 42, pointers(130, 1, 1, 1, 2, 130, 2, 1, 1, 2, 130, 4, 1, 2, 2));
        assertEquals("MULTIPOLYGON (((0 0, 0 1, 1 1, 0 0)), ((0 0, 0 -3, -3 -3, 0 0), (-0.5 -2, -1 -2, -1 -2.5, -0.5 -2)))",
                geometry(read(chart, "DEPARE")));
    }

    @Test
    void makesEverySoundingAPointWithItsDepth() throws IOException {
        VectorLayer layer = read(trial(), "SOUNDG");
        assertEquals(List.of(1L, 2L), layer.features().stream().map(Feature::id).toList());
        assertEquals(List.of("POINT (2 1)", "POINT (2.1 1.1)"), layer.features().stream().map(f -> f.geometry().toText()).toList());
        assertEquals(Map.of("QUASOU", "6", "DEPTH", 34.5), layer.features().get(0).attributes());
        assertEquals(-0.7, layer.features().get(1).attributes().get("DEPTH"));
    }

    @Test
    void saysWhereDepthsAreInFeet() throws IOException {
        assertEquals("depths are not in metres (DUNI 3)", read(trial().parameters(2, 3, 1, 10, 10), "SOUNDG").notes().get(1));
    }

    @Test
    void listsTheObjectClassesWhereNoneIsNamedOrAnother() throws IOException {
        Path file = trial().write(folder, "chart.000");
        assertEquals("chart.000, layer \"trial\": is a chart with many object classes; name one as \"class\" (of the bottom as \"object-class\", of a proposal with --table),"
                + " from CBLSUB (1), OBSTRN (1), SBDARE (1), SOUNDG (1)", Refusals.of(Sources.plain(file)));
        assertEquals("chart.000, layer \"trial\": the chart has no feature of object class \"CBLSUV\" (did you mean \"CBLSUB\"?); name one from"
                + " CBLSUB (1), OBSTRN (1), SBDARE (1), SOUNDG (1), or leave the layer out of the plan", Refusals.of(Sources.withTable(file, "CBLSUV")));
    }

    @Test
    void goesByTheNumberOfAnObjectClassThatHasNoAcronym() throws IOException {
        ChartFixture chart = trial().feature(30, 1, 17011, pointers(110, 1, 255, 255, 255), attributes(17050, "2"));
        assertEquals(Map.of("ATTL_17050", "2"), read(chart, "OBJL_17011").features().get(0).attributes());
    }

    @Test
    void countsCollectionsAsFeaturesWithoutGeometry() throws IOException {
        assertEquals("chart.000, layer \"trial\" (line 12 of the plan): holds no feature with a geometry (1 without); give a file with features,"
                + " or leave the layer out of the plan", refused(trial().feature(31, 255, 400), "C_AGGR"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"CHART.000", "chart.enc", "chart"})
    void knowsAChartByItsNameOrByHowItBegins(String name) throws IOException {
        assertEquals("S-57 chart", VectorLayers.read(Sources.withTable(trial().write(folder, name), "CBLSUB")).format());
    }

    @Test
    void takesAnotherDatumOnlyIfThePlanStatesTheCrs() throws IOException {
        Path file = trial().parameters(77, 1, 1, 10, 10).write(folder, "chart.000");
        assertEquals("chart.000, field DSPM: its horizontal datum is number 77 of S-57 and not WGS 84 (2); state its \"crs\", for example EPSG:4326",
                Refusals.of(Sources.withTable(file, "CBLSUB")));
        VectorLayer layer = VectorLayers.read(new LayerFile("trial", file, Optional.of("CBLSUB"),
                Optional.of("EPSG:4269"), Optional.empty(), Optional.empty(), 1, Edges.GEODESIC));
        assertEquals(Crs.parse("EPSG:4269"), layer.crs());
        assertTrue(refused(trial().parameters(2, 1, 2, 10, 10), "CBLSUB").contains("its coordinates are no longitude and latitude; state"));
    }

    @Test
    void refusesATableForAFormatOfOneLayer() throws IOException {
        Path file = Files.writeString(folder.resolve("cables.geojson"), "{\"type\":\"Point\",\"coordinates\":[1,2]}");
        assertEquals("cables.geojson, layer \"trial\" (line 12 of the plan): \"CBLSUB\" is named as its table or object class, and a file of GeoJSON"
                + " holds one layer only; leave the name out, or give the file that it is in", Refusals.of(Sources.withTable(file, "CBLSUB")));
    }

    @Test
    void refusesADanglingPointer() throws IOException {
        assertEquals("chart.000, feature record 40: points at edge 9, which the chart has not; the chart or an update of it is damaged, so get them again",
                refused(trial().feature(40, 2, 43, pointers(130, 9, 1, 255, 2)), "DEPCNT"));
        assertTrue(refused(trial().edge(7, 1, 8).feature(40, 2, 43, pointers(130, 7, 1, 255, 2)), "DEPCNT")
                .startsWith("chart.000, edge 7: ends at connected node 8, which the chart has not"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "2|''|feature record 40: is a line and has no edge;",
        "3|''|feature record 40: is an area and has no exterior boundary;",
        "3|130 3 1 2 2|feature record 40: is an area and has no exterior boundary;",
        "3|130 1 1 1 2|feature record 40: has a boundary that does not close;",
        "3|130 1 1 1 2 130 3 1 1 2|feature record 40: has a boundary that does not close at edge 3;",
        "3|130 1 1 1 2 130 2 1 2 2|feature record 40: has a boundary that is exterior and interior;",
        "3|130 1 1 255 2|feature record 40: does not say whether edge 1 is an exterior or interior boundary (USAG 255);",
        "2|130 1 255 255 2|feature record 40: does not say which way it takes edge 1 (ORNT 255);",
        "2|120 1 1 255 2|feature record 40: is drawn along connected node 1, which is no edge;",
        "1|130 1 1 255 2|feature record 40: is a point and lies on edge 1;",
        "1|110 1 255 255 2 110 1 255 255 2|feature record 40: is a point and has 2 places;",
        "2|140 1 1 255 2|feature record 40: points at face 1, which the chart has not;"})
    void refusesGeometryThatIsNone(int primitive, String pointers, String expected) throws IOException {
        int[] values = pointers.isEmpty() ? new int[0] : Arrays.stream(pointers.split(" ")).mapToInt(Integer::parseInt).toArray();
        assertTrue(refused(trial().feature(40, primitive, 43, pointers(values)), "DEPCNT").startsWith("chart.000, " + expected), expected);
    }

    @Test
    void refusesTheSameEdgesOverAndOver() throws IOException {
        ChartFixture chart = ChartFixture.chart(1, 0).node(120, 1, 0, 0).edge(1, 1, 1, new int[20_000]);
        for (int i = 0; i < 60; i++) {
            chart.feature(i + 1, 2, 43, pointers(130, 1, 1, 255, 2));
        }
        assertTrue(refused(chart, "DEPCNT").contains("take the same edges over and over, to more vertices than the file has bytes"));
    }

    @Test
    void refusesAFileLargerThanAnyChart() throws IOException {
        Path file = folder.resolve("chart.000");
        try (RandomAccessFile large = new RandomAccessFile(file.toFile(), "rw")) {
            large.setLength((16 << 20) + 1);
        }
        assertEquals("chart.000, the file: is larger than 16 MiB, and no chart is; check the file", Refusals.of(Sources.withTable(file, "CBLSUB")));
    }

    @Test
    void refusesOtherStructuresAndArcs() throws IOException {
        assertEquals("chart.000, field DSSI: its data structure (DSTR) is 1, and charts for navigation are chain-node (2); export it as such",
                refused(trial().structure(1), "CBLSUB"));
        assertTrue(refused(trial().with(vector(130, 9, 1, 1), nodes(1, 2), part("ARCC", "11241", 1, 1, 1, 1, 1)), "CBLSUB")
                .contains("edge 9 is drawn as an arc or curve (ARCC), which charts for navigation may not have"));
    }

    @Test
    void refusesAFileWithoutWhatACellHas() throws IOException {
        assertTrue(refused(trial().withoutParameters(), "CBLSUB").startsWith("chart.000, start: no record states its units (field DSPM)"));
        assertTrue(refused(trial().parameters(2, 1, 1, 0, 10), "CBLSUB").contains("COMF is 0, and nothing can be divided by that"));
        assertTrue(refused(trial().nationalLevel(3), "CBLSUB").contains("its lexical level NALL is 3, which is none of 0 to 2"));
        assertEquals("chart.000, field DSSI: it promises records of 4 edges and the file holds 3; the chart is damaged or cut off, so get it again",
                refused(trial().promising(130, 1), "CBLSUB"));
        assertTrue(refused(trial().with(vector(130, 1, 1, 1)), "CBLSUB").contains("edge 1 is there already; "));
        assertTrue(refused(trial().with(vector(130, 1, 2, 3)), "CBLSUB").contains("(RUIN 3), which only an update may give"));
    }

    @Test
    void refusesAnUpdateAsAChart() throws IOException {
        Path file = ChartFixture.update(3, 1).write(folder, "chart.001");
        assertEquals("chart.001, field DSID: is update 1 of a chart; name the chart's own file, whose name ends in .000",
                Refusals.of(Sources.withTable(file, "CBLSUB")));
    }

    @Test
    void updatesMayChangeAttributesPointersAndPositions() throws IOException {
        ChartFixture.update(3, 1)
                .with(feature(11, 1, 86, 2, 3), attributes(42, "\u007f", 179, "9", 125, "1"))
                .with(vector(130, 1, 2, 3), control("SGCC", 1, 2, 1), positions(-6, 30))
                .with(feature(12, 2, 22, 2, 3), control("FSPC", 2, 2, 1))
                .write(folder, "chart.001");
        ChartFixture.update(3, 2)
                .with(vector(130, 1, 3, 3), control("SGCC", 3, 1, 1), positions(-7, 20))
                .with(vector(130, 4, 1, 1), nodes(2, 3))
                .with(feature(12, 2, 22, 3, 3), control("FSPC", 1, 2, 1), pointers(130, 4, 1, 255, 2))
                .with(feature(13, 3, 121, 2, 2))
                .with(feature(50, 1, 121, 1, 1), pointers(110, 1, 255, 255, 255))
                .write(folder, "chart.002");
        VectorLayer obstructions = read(trial(), "OBSTRN");
        assertEquals(Map.of("VALSOU", 9L, "QUASOU", "1", "OBJNAM", "Tamarack Point"), obstructions.features().get(0).attributes());
        assertEquals(List.of("edition 3, update 2, issued 20260102, compiled at 1:50000; updates .001 to .002 beside it applied"), obstructions.notes());
        assertEquals("LINESTRING (0 0, 2 -0.7, 3 -0.6, 4 0, 1 1)", geometry(read(trial(), "CBLSUB")));
        assertEquals("POINT (-79.5 29.5)", geometry(read(trial(), "SBDARE")));
    }

    @Test
    void updatesMayTakePositionsAndNodesAway() throws IOException {
        ChartFixture.update(3, 1)
                .with(vector(130, 2, 2, 3), control("SGCC", 2, 1, 1), control("VRPC", 3, 2, 1), part("VRPT", "141111", 120, 3, 255, 255, 2, 255))
                .with(feature(12, 2, 22, 2, 3), control("FSPC", 2, 1, 1))
                .write(folder, "chart.001");
        assertEquals("LINESTRING (4 0, 0 4, 1 1)", geometry(read(trial(), "CBLSUB")));
    }

    @Test
    void aReissueHoldsItsUpdatesAlready() throws IOException {
        ChartFixture.update(2, 1).write(folder, "chart.001");
        ChartFixture.update(3, 5).with(feature(13, 3, 121, 2, 2)).write(folder, "chart.005");
        ChartFixture chart = ChartFixture.chart(3, 4).node(120, 1, 0, 0).edge(1, 1, 1, 10, 0, 10, 10)
                .feature(13, 3, 121, pointers(130, 1, 1, 1, 2)).feature(14, 3, 42, pointers(130, 1, 1, 1, 2));
        assertEquals("edition 3, update 5, issued 20260102, compiled at 1:50000; update .005 beside it applied", read(chart, "DEPARE").notes().get(0));
        assertTrue(refused(chart, "SBDARE").contains("has no feature of object class \"SBDARE\""));
    }

    @Test
    void refusesAGapAmongUpdates() throws IOException {
        ChartFixture.update(3, 1).write(folder, "chart.001");
        ChartFixture.update(3, 3).write(folder, "chart.003");
        ChartFixture.update(3, 1).write(folder, "charter.002");
        assertEquals("chart.000, update .003: lies beside the chart, while update .002 does not; get the missing update, or take the later ones away",
                refused(trial(), "CBLSUB"));
    }

    @Test
    void refusesAnUpdateThatIsALinkIntoAnotherFolder() throws IOException {
        Path elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
        Files.createSymbolicLink(folder.resolve("chart.001"), ChartFixture.update(3, 1).write(elsewhere, "chart.001"));
        assertEquals("chart.001, the file: is a link into another folder; put the file itself beside chart.000", refused(trial(), "CBLSUB"));
        Files.createSymbolicLink(elsewhere.resolve("chart.000"), folder.resolve("chart.000"));
        Files.delete(folder.resolve("chart.001"));
        assertEquals(1, VectorLayers.read(Sources.withTable(elsewhere.resolve("chart.000"), "CBLSUB")).features().size());
    }

    @Test
    void refusesUpdatesOfAnotherEditionOrNumber() throws IOException {
        ChartFixture.update(2, 1).write(folder, "chart.001");
        assertEquals("chart.001, field DSID: is an update of edition 2, while the chart is edition 3; get the updates of the chart's edition, or take"
                + " this one away", refused(trial(), "CBLSUB"));
        ChartFixture.update(3, 2).write(folder, "chart.001");
        assertEquals("chart.001, field DSID: is update 2 by its contents and 1 by its name; get the updates again", refused(trial(), "CBLSUB"));
        ChartFixture.update(0, 1).write(folder, "chart.001");
        assertEquals("chart.001, field DSID: cancels the chart (edition 0); use the chart that replaces it", refused(trial(), "CBLSUB"));
        trial().write(folder, "chart.001");
        assertEquals("chart.001, field DSID: is no update but a chart of its own (EXPP 1); name it .000, or take it away", refused(trial(), "CBLSUB"));
    }

    @Test
    void refusesAnUpdateThatDoesNotFitTheChart() throws IOException {
        ChartFixture.update(3, 1).with(vector(130, 1, 3, 3)).write(folder, "chart.001");
        assertTrue(refused(trial(), "CBLSUB").contains("edge 1 is to become version 3, while the chart has version 1; "));
        ChartFixture.update(3, 1).with(vector(130, 9, 2, 3)).write(folder, "chart.001");
        assertTrue(refused(trial(), "CBLSUB").contains("edge 9 is to be modified, and the chart has none; "));
        ChartFixture.update(3, 1).with(vector(130, 9, 2, 2)).write(folder, "chart.001");
        assertTrue(refused(trial(), "CBLSUB").contains("edge 9 is to be deleted, and the chart has none; "));
        ChartFixture.update(3, 1).with(vector(130, 1, 1, 1)).write(folder, "chart.001");
        assertTrue(refused(trial(), "CBLSUB").contains("edge 1 is there already; "));
        ChartFixture.update(3, 1).with(vector(130, 1, 2, 3), control("SGCC", 2, 1, 2)).write(folder, "chart.001");
        assertTrue(refused(trial(), "CBLSUB").contains("edge 1 has 1 entries, of which 2 from number 1 cannot be changed by 0 (instruction 2); "));
        ChartFixture.update(3, 1).with(vector(130, 1, 2, 3), positions(1, 1)).write(folder, "chart.001");
        assertTrue(refused(trial(), "CBLSUB").contains("edge 1 is to be changed, and nothing says where; "));
        ChartFixture.update(3, 1).promising(130, 1).write(folder, "chart.001");
        assertTrue(refused(trial(), "CBLSUB").startsWith("chart.001, field DSSI: it promises records of 1 edges and the file holds 0"));
    }
}
