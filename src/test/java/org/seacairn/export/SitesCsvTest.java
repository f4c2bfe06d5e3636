package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.geodesy.CoordinateText;

class SitesCsvTest {
    @TempDir Path folder;

    private List<String> lines() throws IOException {
        Path file = folder.resolve("sites.csv");
        SitesCsv.write(file, Samples.plan(), Samples.sites());
        return Files.readString(file).lines().toList();
    }

    @Test
    void columnsStandInTheAgreedOrder() throws IOException {
        assertEquals("rank,site,longitude_deg,latitude_deg,longitude_ddm,latitude_ddm,easting_m,northing_m,depth_m,"
                + "slope_deg,bottom,score,suitability_depth,suitability_clearance,"
                + "distance_shipping_lanes_m,nearest_shipping_lanes,distance_cables_m,nearest_cables,"
                + "nearest_stone,stone_distance_m,landing_radius_m,release_longitude_deg,release_latitude_deg,"
                + "required_shipping_lanes_m,required_cables_m,stone_required_m,"
                + "release_distance_shipping_lanes_m,release_required_shipping_lanes_m,"
                + "release_distance_cables_m,release_required_cables_m,release_bearing_deg,release_distance_m,sink_time_s,"
                + "impact_speed_m_s,impact_energy_kj,tilt_deg,embedment_m,relief_m,stability,standing_note,"
                + "depth_uncertainty_m,least_water_m", lines().get(0));
    }

    @Test
    void everyValueHasItsDecimals() throws IOException {
        String line = lines().get(1);
        // Degrees and decimal minutes are the business of CoordinateTextTest.
        String ddm = CoordinateText.formatLongitudeDdm(-79.123456789123) + "," + CoordinateText.formatLatitudeDdm(27.243666666666);
        assertEquals("1,\"'=S-01, \"\"<A&B>\"\"\",-79.123456789,27.243666667," + ddm
                + ",601234.500,3012345.250,92.400,1.250,sand,0.812346,1.000000,0.500000,"
                + "812.346,#7,1200.000,\"'-cable\",\"'@old wreck\",75.500,30.000,-79.124000,27.243000,540.250,540.250,67.082,"
                + "640.0,500.0,,,201,31,27,3.7,62,2,0.4,8.7,4.2,,0.750,82.550", line);
    }

    @Test
    void whatIsNotKnownIsEmpty() throws IOException {
        String line = lines().get(2);
        assertTrue(line.endsWith(",601234.500,3012325.250,93.000,,,0.500000,,0.000000,,,,,,,0.000,,,,,,,,,,,,,,,,,,,,,"), line);
    }

    @Test
    void linesEndWithLfAndNumbersHaveAPointOnEveryMachine() throws IOException {
        Locale machine = Locale.getDefault();
        Path file = folder.resolve("sites.csv");
        SitesCsv.write(file, Samples.plan(), Samples.sites());
        byte[] here = Files.readAllBytes(file);
        try {
            Locale.setDefault(Locale.GERMANY);
            SitesCsv.write(file, Samples.plan(), Samples.sites());
        } finally {
            Locale.setDefault(machine);
        }
        String text = Files.readString(file);
        assertEquals(new String(here, StandardCharsets.UTF_8), text);
        assertEquals(-1, text.indexOf('\r'));
        assertTrue(text.endsWith("\n"));
    }

    /** The library that reads our own layers takes the file for what it says. */
    @Test
    void anotherReaderFindsTheSameCells() throws IOException {
        lines();
        try (Reader in = Files.newBufferedReader(folder.resolve("sites.csv"))) {
            CSVRecord first = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).build().parse(in).iterator().next();
            assertEquals("'=S-01, \"<A&B>\"", first.get("site"));
            assertEquals("812.346", first.get("distance_shipping_lanes_m"));
            assertEquals("27.243000", first.get("release_latitude_deg"));
            assertEquals("", first.get("standing_note"));
        }
    }

    /** Text must not move a site by more than 0.1 mm. */
    @Test
    void positionSurvivesAsText() {
        Random random = new Random(7);
        double worstM = 0;
        for (int i = 0; i < 10_000; i++) {
            double lat = Math.toDegrees(Math.asin(2 * random.nextDouble() - 1));
            double lon = 360 * random.nextDouble() - 180;
            worstM = Math.max(worstM, Geodesic.WGS84.Inverse(lat, lon, Double.parseDouble(Decimals.text(lat, Decimals.SITE_DEG)),
                    Double.parseDouble(Decimals.text(lon, Decimals.SITE_DEG))).s12);
        }
        assertTrue(worstM < 1e-4, "moved by " + worstM + " m");
    }

    @Test
    void numbersHaveNoMinusBeforeZeroAndNoExponent() {
        assertEquals("0.000", Decimals.text(-0.0, 3));
        assertEquals("0.000", Decimals.text(-0.0004, 3));
        assertEquals("0.000000001", Decimals.text(1e-9, 9));
        assertEquals("12345678901.0", Decimals.text(12345678901.0, 1));
    }
}
