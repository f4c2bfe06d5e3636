package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Uncertainty;
import org.seacairn.plan.SitingPlan.Values;

class BagReaderTest {
    private static final float GAP = Float.NaN;

    @TempDir
    Path folder;

    private Path write(byte[] bytes) throws IOException {
        return Files.write(folder.resolve("survey.bag"), bytes);
    }

    private Bathymetry open(HandHdf hdf) throws IOException {
        return Bathymetries.open(Sources.plain(write(hdf.toBytes())));
    }

    private String refusal(HandHdf hdf) throws IOException {
        Path file = write(hdf.toBytes());
        InputException e = assertThrows(InputException.class, () -> Bathymetries.open(Sources.plain(file)).close());
        Refusals.requireUsable(e);
        return e.getMessage();
    }

    private static float[] all(Bathymetry grid) {
        float[] values = new float[grid.cols() * grid.rows()];
        grid.read(0, 0, grid.cols(), grid.rows(), values);
        return values;
    }

    @Test
    void rowsRunFromSouthToNorthAndNodesAreCentres() throws IOException {
        try (Bathymetry grid = open(BagFixture.plain(BagFixture.metadata()))) {
            assertArrayEquals(new float[] {-4, GAP, -6, -1, -2, -3}, all(grid));
            assertEquals(List.of(500_000.0, 3_000_040.0, 10.0, 20.0), List.of(grid.west(), grid.north(), grid.cellWidth(), grid.cellHeight()));
            assertEquals(Crs.ofEpsg(32617), grid.crs());
            assertEquals(List.of("BAG", "m", "MLLW"), List.of(grid.format(), grid.statedUnit(), grid.statedDatum()));
            assertEquals(List.of(), grid.notes());
            float[] one = new float[2];
            grid.read(1, 1, 2, 1, one);
            assertArrayEquals(new float[] {-2, -3}, one);
        }
    }

    /** 0 is the unknown state of the uncertainty (BAG Format Specification Document 2.0.1, "Uncertainty Grid"). */
    @Test
    void uncertaintyOfNothingIsUnknown() throws IOException {
        byte[] bag = BagFixture.of(500_000, 3_000_000, 10, 3, 1, new float[] {-1, -2, -3}, new float[] {0, -1, .5f}, "rawStdDev");
        try (Bathymetry grid = Bathymetries.open(Sources.plain(write(bag)))) {
            float[] values = new float[3];
            grid.uncertainty().orElseThrow().read(0, 0, 3, 1, values);
            assertArrayEquals(new float[] {GAP, GAP, .5f}, values);
        }
    }

    @Test
    void uncertaintyGoesCellForCellWithItsKind() throws IOException {
        try (Bathymetry grid = open(BagFixture.plain(BagFixture.metadata()))) {
            float[] values = new float[6];
            CellUncertainty uncertainty = grid.uncertainty().orElseThrow();
            uncertainty.read(0, 0, 3, 2, values);
            assertArrayEquals(new float[] {.4f, GAP, .6f, .1f, .2f, .3f}, values);
            assertEquals("productUncert", uncertainty.kind());
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "500005,3000010 500025,3000030 | 0",
        "500025,3000030 500005,3000010 | 0",
        "500005,3000010 500035,3000050 | 1",
    })
    void cornersComeInAnyOrderAndADoubtIsTold(String corners, int notes) throws IOException {
        try (Bathymetry grid = open(BagFixture.plain(BagFixture.metadata(corners, BagFixture.WKT, "WKT")))) {
            assertEquals(500_000, grid.west());
            assertEquals(3_000_040, grid.north());
            assertEquals(notes, grid.notes().size());
        }
    }

    @Test
    void theCrsComesFromACompoundTextOrACode() throws IOException {
        String compound = "COMPD_CS[\"both\"," + BagFixture.WKT + ",VERT_CS[\"MLLW\",VERT_DATUM[\"MLLW\",2000]]]";
        String second = "COMPOUNDCRS[\"both\",PROJCRS[\"x\",ID[\"EPSG\",26917]],VERTCRS[\"MLLW\"]]";
        String corners = "500005,3000010 500025,3000030";
        Map<String, Integer> expected = Map.of(compound, 32617, second, 26917, "26918", 26918);
        for (Map.Entry<String, Integer> one : expected.entrySet()) {
            String space = one.getKey().startsWith("2") ? "EPSG" : "WKT";
            try (Bathymetry grid = open(BagFixture.plain(BagFixture.metadata(corners, one.getKey(), space)))) {
                assertEquals(Crs.ofEpsg(one.getValue()), grid.crs());
            }
        }
    }

    /** The profile before version 1.5, with the values of elements that survey software wrote there. */
    @ParameterizedTest
    @CsvSource({"UTM, 2, WGS84, 0, 32602", "UTM, -2, WGS84, 10000000, 32702", "UTM, 17, NAD83, 0, 26917", "Geodetic, 0, WGS84, 0, 4326"})
    void olderMetadataNamesProjectionZoneAndDatum(String projection, int zone, String datum, double falseNorthing, int epsg) throws IOException {
        double west = projection.equals("UTM") ? 500_010 : 10;
        double south = projection.equals("UTM") ? 3_000_020 : 20;
        String axis = "<s:MD_Dimension><resolution><s:Measure><s:value>2.0</s:value></s:Measure></resolution></s:MD_Dimension>";
        String xml = "<s:MD_Metadata xmlns:s='http://metadata.dgiwg.org/smXML'>" + axis + axis + "<llCornerX>" + west + "</llCornerX><llCornerY>" + south + "</llCornerY>"
                + "<referenceSystemInfo><s:MD_CRS><projection><s:RS_Identifier><code>" + projection + "</code></s:RS_Identifier></projection>"
                + "<datum><s:RS_Identifier><code>" + datum + "</code></s:RS_Identifier></datum>"
                + "<verticalDatum><s:RS_Identifier><code>Mean Sea Level</code></s:RS_Identifier></verticalDatum>"
                + "<zone>" + zone + "</zone><falseNorthing>" + falseNorthing + "</falseNorthing></s:MD_CRS></referenceSystemInfo></s:MD_Metadata>";
        try (Bathymetry grid = open(BagFixture.plain(xml))) {
            assertEquals(Crs.ofEpsg(epsg), grid.crs());
            assertEquals(List.of(west - 1, south + 3), List.of(grid.west(), grid.north()));
            assertEquals("Mean Sea Level", grid.statedDatum());
        }
    }

    @Test
    void ofVariableResolutionTheShallowestFinerCellCounts() throws IOException {
        try (Bathymetry grid = open(BagFixture.variable(0))) {
            assertArrayEquals(new float[] {-4, -5.5f, -6, -7, -2, -3}, all(grid));
            float[] uncertainty = new float[6];
            grid.uncertainty().orElseThrow().read(0, 0, 3, 2, uncertainty);
            assertArrayEquals(new float[] {.4f, .3f, .6f, .9f, .2f, .3f}, uncertainty);
            assertEquals(List.of("the grid is of variable resolution: each of its cells of 10 x 20 takes the shallowest of the finer cells in it, and the"
                    + " largest of their uncertainties; slope and ruggedness are those of the coarse cells; its finer depths are 5 to 10 apart, and"
                    + " a smaller cell in the plan would have them"), grid.notes());
        }
    }

    @Test
    void finerCellsBeyondTheListAreRefused() throws IOException {
        assertEquals("survey.bag, varres_metadata, row 0, column 0: names the finer cells 5 to 6 of 6; the file is damaged, get it again",
                refusal(BagFixture.variable(5)));
    }

    @Test
    void chunksThatWereNeverWrittenAreNoData() throws IOException {
        Map<long[], byte[]> chunks = new LinkedHashMap<>();
        chunks.put(new long[] {0, 0}, HandHdf.deflated(HandHdf.shuffled(HandHdf.floats(-1, -2, -4, -5), 4)));
        chunks.put(new long[] {0, 2}, null);
        HandHdf hdf = BagFixture.withMetadata(BagFixture.metadata()).chunked("elevation", HandHdf.FLOAT, new long[] {2, 3}, new int[] {2, 2}, 4,
                new int[] {ChunkFilters.SHUFFLE, ChunkFilters.DEFLATE}, chunks, 0, Map.of());
        try (Bathymetry grid = open(hdf)) {
            assertArrayEquals(new float[] {-4, -5, GAP, -1, -2, GAP}, all(grid));
            assertEquals(Optional.empty(), grid.uncertainty());
            assertEquals(List.of(2, 2), List.of(grid.blockCols(), grid.blockRows()));
        }
    }

    @Test
    void aChunkMaySkipAFilter() throws IOException {
        Map<long[], byte[]> chunks = new LinkedHashMap<>();
        chunks.put(new long[] {0, 0}, HandHdf.shuffled(HandHdf.floats(-1, -2, -3, -4, -5, -6), 4));
        HandHdf hdf = BagFixture.withMetadata(BagFixture.metadata()).chunked("elevation", HandHdf.FLOAT, new long[] {2, 3}, new int[] {2, 3}, 4,
                new int[] {ChunkFilters.SHUFFLE, ChunkFilters.DEFLATE}, chunks, 0b10, Map.of());
        try (Bathymetry grid = open(hdf)) {
            assertArrayEquals(new float[] {-4, -5, -6, -1, -2, -3}, all(grid));
        }
    }

    @Test
    void aPlanThatCountsOtherwiseIsRefused() throws IOException {
        Path file = write(BagFixture.plain(BagFixture.metadata()).toBytes());
        assertEquals("survey.bag, values: count positive up, and the plan says \"values: depth\"; write \"values: elevation\" in the plan's bathymetry",
                disagreement(file, Values.DEPTH, 1, "m"));
        assertEquals("survey.bag, values: are in the unit \"m\", and the plan says \"unit: ft\"; state the file's unit in the plan's bathymetry",
                disagreement(file, Values.ELEVATION, 0.3048, "ft"));
    }

    static String disagreement(Path file, Values values, double metres, String unit) {
        SitingPlan.Bathymetry plan = new SitingPlan.Bathymetry(Sources.plain(file), values, metres, unit, Optional.empty(), 0, SitingPlan.Gridding.USUAL, Uncertainty.NONE);
        InputException e = assertThrows(InputException.class, () -> Bathymetries.open(plan).close());
        Refusals.requireUsable(e);
        return e.getMessage();
    }

    @Test
    void whatIsNoWholeBagIsRefused() throws IOException {
        Map<String, Object> none = Map.of();
        assertEquals("survey.bag, BAG_root: has no elevation, so this is no whole BAG; get the file again",
                refusal(BagFixture.withMetadata(BagFixture.metadata())));
        assertEquals("survey.bag, BAG_root: has no metadata, so this is no whole BAG; get the file again", refusal(new HandHdf()));
        assertEquals("survey.bag, elevation: holds no numbers; get the file again", refusal(BagFixture.withMetadata(BagFixture.metadata())
                .contiguous("elevation", HandHdf.text(4), new long[] {2, 3}, new byte[24], none)));
        assertEquals("survey.bag, elevation: has values up to byte", refusal(BagFixture.withMetadata(BagFixture.metadata())
                .contiguous("elevation", HandHdf.FLOAT, new long[] {20_000, 30_000}, new byte[24], none)).substring(0, 44));
        assertEquals("survey.bag, elevation: promises 1000000000000 cells, more than 20000000000; cut out what is needed",
                refusal(BagFixture.withMetadata(BagFixture.metadata())
                        .contiguous("elevation", HandHdf.FLOAT, new long[] {1_000_000, 1_000_000}, new byte[24], none)));
        assertEquals("survey.bag, elevation: has the shape [3, 2, 3], which is no grid; write one with rows and columns alone",
                refusal(BagFixture.withMetadata(BagFixture.metadata())
                        .contiguous("elevation", HandHdf.FLOAT, new long[] {3, 2, 3}, new byte[72], none)));
        assertEquals("survey.bag, uncertainty: has 2 x 2 cells and the elevation 3 x 2; the file is damaged, get it again",
                refusal(BagFixture.withMetadata(BagFixture.metadata())
                        .contiguous("elevation", HandHdf.FLOAT, new long[] {2, 3}, new byte[24], none)
                        .contiguous("uncertainty", HandHdf.FLOAT, new long[] {2, 2}, new byte[16], none)));
    }

    @Test
    void absurdChunksAndUnknownFiltersAreRefused() throws IOException {
        Map<long[], byte[]> chunks = Map.of(new long[] {0, 0}, new byte[24]);
        assertEquals("survey.bag, elevation: has chunks of [1000000, 1000000] cells, which cannot be or are over 256 MB; write it again with chunks of some 256 x 256",
                refusal(BagFixture.withMetadata(BagFixture.metadata()).chunked("elevation", HandHdf.FLOAT, new long[] {2, 3},
                        new int[] {1_000_000, 1_000_000}, 4, new int[0], chunks, 0, Map.of())));
        assertEquals("survey.bag, elevation: is compressed with Zstandard, which is not read here; write it again with deflate",
                refusal(BagFixture.withMetadata(BagFixture.metadata()).chunked("elevation", HandHdf.FLOAT, new long[] {2, 3},
                        new int[] {2, 3}, 4, new int[] {32015}, chunks, 0, Map.of())));
    }

    @Test
    void aDamagedChunkIsNamedByItsRows() throws IOException {
        Map<long[], byte[]> chunks = Map.of(new long[] {0, 0}, new byte[] {1, 2, 3, 4});
        HandHdf hdf = BagFixture.withMetadata(BagFixture.metadata()).chunked("elevation", HandHdf.FLOAT, new long[] {2, 3},
                new int[] {2, 3}, 4, new int[] {ChunkFilters.DEFLATE}, chunks, 0, Map.of());
        try (Bathymetry grid = open(hdf)) {
            InputException e = assertThrows(InputException.class, () -> all(grid));
            assertEquals("survey.bag, rows 0 to 1: the values cannot be read (a compressed chunk is damaged); the file is damaged or cut short, get it again",
                    e.getMessage());
        }
    }

    @Test
    void metadataThatTellsNoPlaceIsRefused() throws IOException {
        assertEquals("survey.bag, metadata: states the corner points [500005.0, 3000010.0, 5.0]; a BAG states x and y of the south-western"
                + " and north-eastern node, get the file again",
                refusal(BagFixture.plain(BagFixture.metadata("500005,3000010 5", BagFixture.WKT, "WKT"))));
        assertEquals("survey.bag, metadata: states the resolution NaN x NaN; a BAG states that of its columns and rows, get the file again",
                refusal(BagFixture.plain("<MI_Metadata/>")));
        assertTrue(refusal(BagFixture.plain("<MI_Metadata>")).startsWith("survey.bag, metadata: is no proper XML (XML document structures"));
        assertTrue(refusal(BagFixture.plain("<!DOCTYPE a [<!ENTITY b SYSTEM \"file:///etc/hostname\">]><MI_Metadata>&b;</MI_Metadata>"))
                .startsWith("survey.bag, metadata: is no proper XML (DOCTYPE is disallowed"));
        assertTrue(refusal(BagFixture.plain("<a>".repeat(100_000))).startsWith("survey.bag, metadata: is no proper XML (JAXP"));
        assertEquals("survey.bag, metadata: the CRS text \"PROJCS[\"x\"\" cannot be read; state crs in the plan, for example EPSG:32617",
                refusal(BagFixture.plain(BagFixture.metadata("500005,3000010 500025,3000030", "PROJCS[\"x\"", "WKT"))));
    }

    @Test
    void aFileCutShortSaysSo() throws IOException {
        byte[] whole = BagFixture.plain(BagFixture.metadata()).toBytes();
        Path file = write(java.util.Arrays.copyOf(whole, whole.length - 10));
        InputException e = assertThrows(InputException.class, () -> Bathymetries.open(Sources.plain(file)).close());
        assertEquals("survey.bag, header: states a length of " + whole.length + " bytes and the file has " + (whole.length - 10)
                + "; it is cut short, get it again", e.getMessage());
    }
}
