package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.seacairn.layer.HandHdf.attributes;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.Values;

class NetCdfReaderTest {
    private static final float GAP = Float.NaN;
    private static final Map<String, Object> LAT = attributes("units", "degrees_north");
    private static final Map<String, Object> LON = attributes("units", "degrees_east");
    private static final Map<String, Object> WGS84 = attributes("grid_mapping_name", "latitude_longitude", "epsg_code", "EPSG:4326");

    @TempDir
    Path folder;

    private Path write(byte[] bytes) throws IOException {
        return Files.write(folder.resolve("grid.nc"), bytes);
    }

    private Bathymetry open(HandCdf cdf) throws IOException {
        return Bathymetries.open(Sources.plain(write(cdf.toBytes())));
    }

    private String refusal(HandCdf cdf) throws IOException {
        Path file = write(cdf.toBytes());
        InputException e = assertThrows(InputException.class, () -> Bathymetries.open(Sources.plain(file)).close());
        Refusals.requireUsable(e);
        return e.getMessage();
    }

    private static float[] all(Bathymetry grid) {
        float[] values = new float[grid.cols() * grid.rows()];
        grid.read(0, 0, grid.cols(), grid.rows(), values);
        return values;
    }

    /** Elevation over 2 latitudes and 3 longitudes. */
    private static HandCdf grid(int version, double[] lat, double[] lon, Map<String, Object> elevation, int type, double... values) {
        return new HandCdf(version).dimension("lat", lat.length).dimension("lon", lon.length)
                .variable("lat", HandCdf.DOUBLE, LAT, lat, "lat").variable("lon", HandCdf.DOUBLE, LON, lon, "lon")
                .variable("crs", HandCdf.BYTE, WGS84, new double[] {0})
                .variable("elevation", type, elevation, values, "lat", "lon");
    }

    private static HandCdf usual(Map<String, Object> elevation) {
        return grid(1, new double[] {10, 11}, new double[] {-80, -79, -78}, elevation, HandCdf.SHORT, 1, 2, 3, 4, 5, 6);
    }

    private static Map<String, Object> mapped(Object... more) {
        Map<String, Object> attributes = attributes(more);
        attributes.put("grid_mapping", "crs");
        return attributes;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5})
    void classicFormatsGiveCentresAndRowsFromTheNorth(int version) throws IOException {
        try (Bathymetry grid = open(grid(version, new double[] {10, 11}, new double[] {-80, -79, -78}, mapped("units", "m"), HandCdf.SHORT,
                1, 2, 3, 4, -32767, 6))) {
            assertArrayEquals(new float[] {4, GAP, 6, 1, 2, 3}, all(grid));
            assertEquals(List.of(-80.5, 11.5, 1.0, 1.0), List.of(grid.west(), grid.north(), grid.cellWidth(), grid.cellHeight()));
            assertEquals(Crs.WGS84, grid.crs());
            assertEquals(List.of("NetCDF classic, variable elevation", "m"), List.of(grid.format(), grid.statedUnit()));
        }
    }

    @Test
    void latitudesMayFall() throws IOException {
        try (Bathymetry grid = open(grid(1, new double[] {11, 10}, new double[] {-80, -79, -78}, mapped(), HandCdf.FLOAT, 1, 2, 3, 4, 5, 6))) {
            assertArrayEquals(new float[] {1, 2, 3, 4, 5, 6}, all(grid));
            assertEquals(11.5, grid.north());
        }
    }

    @Test
    void packedValuesAreUnpackedAndLimitsHoldForWhatIsStored() throws IOException {
        Map<String, Object> packed = mapped("scale_factor", new double[] {0.5}, "add_offset", new double[] {100}, "_FillValue", new double[] {6},
                "missing_value", new double[] {5}, "valid_range", new double[] {2, 10});
        try (Bathymetry grid = open(usual(packed))) {
            assertArrayEquals(new float[] {102, GAP, GAP, GAP, 101, 101.5f}, all(grid));
        }
    }

    @Test
    void aRecordDimensionMayCountRowsOrStandBeforeThem() throws IOException {
        double[] six = {1, 2, 3, 4, 5, 6};
        HandCdf rows = new HandCdf(1).records("lat", 2).dimension("lon", 3)
                .variable("lon", HandCdf.DOUBLE, LON, new double[] {1, 2, 3}, "lon").variable("lat", HandCdf.DOUBLE, LAT, new double[] {5, 6}, "lat")
                .variable("crs", HandCdf.BYTE, WGS84, new double[] {0}).variable("z", HandCdf.SHORT, mapped(), six, "lat", "lon");
        HandCdf time = new HandCdf(2).records("time", 1).dimension("lat", 2).dimension("lon", 3)
                .variable("lon", HandCdf.DOUBLE, LON, new double[] {1, 2, 3}, "lon").variable("lat", HandCdf.DOUBLE, LAT, new double[] {5, 6}, "lat")
                .variable("crs", HandCdf.BYTE, WGS84, new double[] {0}).variable("z", HandCdf.SHORT, mapped(), six, "time", "lat", "lon");
        for (HandCdf cdf : List.of(rows, time)) {
            try (Bathymetry grid = open(cdf)) {
                assertArrayEquals(new float[] {4, 5, 6, 1, 2, 3}, all(grid));
            }
        }
    }

    @Test
    void netCdf4ReadsChunksOfANumber() throws IOException {
        Map<long[], byte[]> chunks = new LinkedHashMap<>();
        chunks.put(new long[] {0, 0}, HandHdf.deflated(HandHdf.shuffled(HandHdf.shorts(-10, -20, -40, -50), 2)));
        chunks.put(new long[] {0, 2}, HandHdf.deflated(HandHdf.shuffled(HandHdf.shorts(-30, 0, -60, 0), 2)));
        HandHdf hdf = new HandHdf().contiguous("lat", HandHdf.DOUBLE, new long[] {2}, HandHdf.doubles(10, 11), LAT)
                .contiguous("lon", HandHdf.DOUBLE, new long[] {3}, HandHdf.doubles(-80, -79, -78), LON)
                .contiguous("crs", HandHdf.INT, new long[0], new byte[4], WGS84)
                .chunked("elevation", HandHdf.SHORT, new long[] {2, 3}, new int[] {2, 2}, 2, new int[] {ChunkFilters.SHUFFLE, ChunkFilters.DEFLATE},
                        chunks, 0, mapped("_FillValue", new double[] {-60}, "scale_factor", new double[] {0.1}));
        try (Bathymetry grid = Bathymetries.open(Sources.plain(write(hdf.toBytes())))) {
            assertArrayEquals(new float[] {-4, -5, GAP, -1, -2, -3}, all(grid), 1e-6f);
            assertEquals("NetCDF-4, variable elevation", grid.format());
            assertEquals(11.5, grid.north());
        }
    }

    @Test
    void bigEndianNumbersAreReadAsSuch() throws IOException {
        byte[] swapped = new byte[24];
        java.nio.ByteBuffer.wrap(swapped).asFloatBuffer().put(new float[] {1, 2, 3, 4, 5, 6});
        HandHdf hdf = new HandHdf().contiguous("lat", HandHdf.DOUBLE, new long[] {2}, HandHdf.doubles(10, 11), LAT)
                .contiguous("lon", HandHdf.DOUBLE, new long[] {3}, HandHdf.doubles(-80, -79, -78), LON)
                .contiguous("z", HandHdf.BIG_ENDIAN_FLOAT, new long[] {2, 3}, swapped, attributes());
        try (Bathymetry grid = Bathymetries.open(Sources.withCrs(write(hdf.toBytes()), "EPSG:4326"))) {
            assertArrayEquals(new float[] {4, 5, 6, 1, 2, 3}, all(grid));
        }
    }

    @Test
    void severalGridsAreToldApartByNameAndFlagsAreNoDepths() throws IOException {
        double[] six = {1, 2, 3, 4, 5, 6};
        HandCdf cdf = new HandCdf(1).dimension("lat", 2).dimension("lon", 3).variable("lat", HandCdf.DOUBLE, LAT, new double[] {1, 2}, "lat")
                .variable("lon", HandCdf.DOUBLE, LON, new double[] {1, 2, 3}, "lon").variable("crs", HandCdf.BYTE, WGS84, new double[] {0})
                .variable("tid", HandCdf.BYTE, mapped("flag_values", new double[] {0, 10}), six, "lat", "lon")
                .variable("z", HandCdf.SHORT, mapped(), six, "lat", "lon");
        try (Bathymetry grid = open(cdf)) {
            assertEquals("NetCDF classic, variable z", grid.format());
        }
        assertEquals("grid.nc, variables: holds several grids; name one with \"table\" beside the file: z, depth",
                refusal(cdf.variable("depth", HandCdf.SHORT, mapped(), six, "lat", "lon")));
        try (Bathymetry grid = Bathymetries.open(Sources.withTable(folder.resolve("grid.nc"), "depth"))) {
            assertEquals("NetCDF classic, variable depth", grid.format());
        }
        InputException e = assertThrows(InputException.class, () -> Bathymetries.open(Sources.withTable(folder.resolve("grid.nc"), "depht")).close());
        assertEquals("grid.nc, variables: has no grid named \"depht\"; choose among: z, depth", e.getMessage());
    }

    @Test
    void longitudesBeyond180AreCountedFromTheOtherSide() throws IOException {
        try (Bathymetry grid = open(grid(1, new double[] {10, 11}, new double[] {270, 271, 272}, mapped(), HandCdf.SHORT, 1, 2, 3, 4, 5, 6))) {
            assertEquals(-90.5, grid.west());
            assertEquals(List.of("longitudes from 270 to 272 degrees are counted from -90"), grid.notes());
        }
        assertEquals("grid.nc, lon: runs from 179 to 181 degrees and so across the antimeridian; cut the grid there and use one part",
                refusal(grid(1, new double[] {10, 11}, new double[] {179, 180, 181}, mapped(), HandCdf.SHORT, 1, 2, 3, 4, 5, 6)));
        assertEquals("grid.nc, lat: runs from 89 to 91 degrees of latitude; check the file, or state crs in the plan if these are no degrees",
                refusal(grid(1, new double[] {89, 91}, new double[] {1, 2, 3}, mapped(), HandCdf.SHORT, 1, 2, 3, 4, 5, 6)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "1, 2, 3.01 | grid.nc, lon[1]: is 2 where an even spacing from 1 to 3.01 has 2.005; resample it to a grid of equal cells first",
        "1, 1, 1    | grid.nc, lon[0]: is 1 where an even spacing from 1 to 1 has 1; resample it to a grid of equal cells first",
        "1, NaN, 3  | grid.nc, lon[1]: is NaN where an even spacing from 1 to 3 has 2; resample it to a grid of equal cells first",
        "3, 2, 1    | grid.nc, lon: runs from east to west; write it again from west to east",
    })
    void coordinatesThatAreNoEvenGridAreRefused(String lon, String problem) throws IOException {
        double[] at = Arrays.stream(lon.split(", *")).mapToDouble(Double::parseDouble).toArray();
        assertEquals(problem, refusal(grid(1, new double[] {10, 11}, at, mapped(), HandCdf.SHORT, 1, 2, 3, 4, 5, 6)));
    }

    /** Steps of 1/240 degree in 4 bytes, which hold only some 8e-6 of a degree there. */
    @Test
    void coordinatesRoundedToFourBytesAreEven() throws IOException {
        double[] lon = {-79.5, -79.5 + 1 / 240.0, -79.5 + 2 / 240.0, -79.5 + 3 / 240.0};
        HandCdf cdf = new HandCdf(1).dimension("lat", 2).dimension("lon", 4).variable("lat", HandCdf.FLOAT, LAT, new double[] {10, 10 + 1 / 240.0}, "lat")
                .variable("lon", HandCdf.FLOAT, LON, lon, "lon").variable("crs", HandCdf.BYTE, WGS84, new double[] {0})
                .variable("z", HandCdf.SHORT, mapped(), new double[8], "lat", "lon");
        try (Bathymetry grid = open(cdf)) {
            assertEquals(1 / 240.0, grid.cellWidth(), 4e-6);
        }
        HandCdf tooFine = new HandCdf(1).dimension("lat", 2).dimension("lon", 4).variable("lat", HandCdf.FLOAT, LAT, new double[] {10, 11}, "lat")
                .variable("lon", HandCdf.FLOAT, LON, new double[] {-79.5, -79.49999, -79.49997, -79.49995}, "lon")
                .variable("crs", HandCdf.BYTE, WGS84, new double[] {0}).variable("z", HandCdf.SHORT, mapped(), new double[8], "lat", "lon");
        assertEquals("grid.nc, lon[1]: is -79.4999924 where an even spacing from -79.5 to -79.4999466 has -79.4999822; resample it to a grid of"
                + " equal cells first", refusal(tooFine));
    }

    @Test
    void coordinatesInUnitsOfTheirOwnAreTakenToThoseOfTheCrs() throws IOException {
        Map<String, Object> mercator = attributes("grid_mapping_name", "transverse_mercator", "latitude_of_projection_origin", new double[] {0},
                "longitude_of_central_meridian", new double[] {-81}, "scale_factor_at_central_meridian", new double[] {0.9996},
                "false_easting", new double[] {500_000}, "false_northing", new double[] {0});
        HandCdf cdf = new HandCdf(1).dimension("y", 2).dimension("x", 3)
                .variable("y", HandCdf.DOUBLE, attributes("units", "km"), new double[] {3000, 3001}, "y")
                .variable("x", HandCdf.DOUBLE, attributes("units", "km"), new double[] {500, 501, 502}, "x")
                .variable("tm", HandCdf.BYTE, mercator, new double[] {0})
                .variable("z", HandCdf.SHORT, attributes("grid_mapping", "tm: x y"), new double[] {1, 2, 3, 4, 5, 6}, "y", "x");
        try (Bathymetry grid = open(cdf)) {
            assertEquals(List.of(499_500.0, 3_001_500.0, 1000.0), List.of(grid.west(), grid.north(), grid.cellWidth()));
            assertEquals(0, grid.crs().to(Crs.ofEpsg(32617)).apply(600_000, 3_000_000).distance(new org.locationtech.jts.geom.Coordinate(600_000, 3_000_000)), 1e-6);
        }
        InputException e = assertThrows(InputException.class, () -> Bathymetries.open(Sources.withCrs(folder.resolve("grid.nc"), "EPSG:4326")).close());
        assertEquals("grid.nc, x: is in \"km\", and the CRS is EPSG:4326 (WGS 84); state in the plan the crs that the coordinates are in", e.getMessage());
    }

    @Test
    void aGridWithoutCrsNeedsThePlans() throws IOException {
        assertEquals("grid.nc: the file states no CRS; state it in the plan beside the file, for example crs: EPSG:32617", refusal(usual(attributes())));
        try (Bathymetry grid = Bathymetries.open(Sources.withCrs(folder.resolve("grid.nc"), "EPSG:4326"))) {
            assertEquals(Crs.WGS84, grid.crs());
        }
    }

    @Test
    void whatTheFileSaysOfItsValuesMustAgreeWithThePlan() throws IOException {
        Path file = write(usual(mapped("positive", "down", "units", "feet")).toBytes());
        assertEquals("grid.nc, values: count positive down, and the plan says \"values: elevation\"; write \"values: depth\" in the plan's bathymetry",
                BagReaderTest.disagreement(file, Values.ELEVATION, 1, "m"));
        assertEquals("grid.nc, values: are in the unit \"feet\", and the plan says \"unit: m\"; state the file's unit in the plan's bathymetry",
                BagReaderTest.disagreement(file, Values.DEPTH, 1, "m"));
        Path named = write(usual(mapped("standard_name", "height_above_mean_sea_level")).toBytes());
        assertEquals("grid.nc, values: count positive up, and the plan says \"values: depth\"; write \"values: elevation\" in the plan's bathymetry",
                BagReaderTest.disagreement(named, Values.DEPTH, 1, "m"));
    }

    @Test
    void headersThatCannotBeAreRefused() throws IOException {
        byte[] whole = usual(mapped()).toBytes();
        assertEquals("grid.nc, elevation: has values up to byte " + whole.length + " and the file has " + (whole.length - 1)
                + "; it is damaged or cut short, get it again", refused(Arrays.copyOf(whole, whole.length - 1)));
        assertEquals("grid.nc, header: ends before its last variable; the file is damaged or cut short, get it again", refused(Arrays.copyOf(whole, 300)));
        byte[] third = whole.clone();
        third[3] = 3;
        assertEquals("grid.nc, header: is of version 3; versions 1, 2 and 5 are read, write it again as NetCDF-4", refused(third));
        byte[] huge = whole.clone();
        // Both lengths of 2,147,483,647, at the end of the first and the second dimension.
        for (int at : new int[] {24, 36}) {
            java.nio.ByteBuffer.wrap(huge).putInt(at, Integer.MAX_VALUE);
        }
        assertEquals("grid.nc, lon: has values up to byte", refused(huge).substring(0, 35));
        assertEquals("grid.nc, header: is no HDF5 that can be read; the file is damaged or cut short, get it again", refused(new byte[100]));
        assertEquals("grid.nc, the file: is empty (0 bytes); export it again", refused(new byte[0]));
    }

    private String refused(byte[] bytes) throws IOException {
        Path file = write(bytes);
        InputException e = assertThrows(InputException.class, () -> Bathymetries.open(Sources.plain(file)).close());
        Refusals.requireUsable(e);
        return e.getMessage();
    }

    @Test
    void aGrdIsTakenByItsContent() throws IOException {
        Path file = Files.write(folder.resolve("z.GRD"), usual(mapped()).toBytes());
        try (Bathymetry grid = Bathymetries.open(Sources.plain(file))) {
            assertEquals(6, grid.cols() * grid.rows());
        }
        Path other = Files.write(folder.resolve("other.grd"), "DSAA".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
        InputException e = assertThrows(InputException.class, () -> Bathymetries.open(Sources.plain(other)).close());
        assertEquals("other.grd: no reader takes this file; bathymetry is read from GeoTIFF (.tif, .tiff), Esri ASCII grid (.asc), BAG (.bag),"
                + " NetCDF (.nc, .nc4, .grd) and soundings (.xyz, .txt, .csv)", e.getMessage());
        assertEquals(Optional.empty(), Sources.plain(other).table());
    }
}
