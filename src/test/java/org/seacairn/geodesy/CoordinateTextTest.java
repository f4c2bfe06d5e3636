package org.seacairn.geodesy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.InputException;

class CoordinateTextTest {
    private static final double EXACT = 1e-13;

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        // decimal degrees
        "27.25             | 27.25",
        "-27.25            | -27.25",
        "+27.25            | 27.25",
        "27.25 N           | 27.25",
        "27.25S            | -27.25",
        "s 27.25           | -27.25",
        "27.25° S          | -27.25",
        "27                | 27",
        "27.               | 27",
        ".5                | 0.5",
        "0                 | 0",
        "-0                | 0",
        "90 S              | -90",
        "1.5E-5            | 0.000015",
        "-8.75e-05         | -0.0000875",
        "−27.25            | -27.25",
        // degrees and decimal minutes: 14.620' = 0.2436667 degrees
        "27 14.620 N       | 27.24366666666667",
        "27° 14.620' N     | 27.24366666666667",
        "27°14.620′N       | 27.24366666666667",
        "N27-14.620        | 27.24366666666667",
        "N 27° 14.620'     | 27.24366666666667",
        "27:14.620S        | -27.24366666666667",
        "-27 14.620        | -27.24366666666667",
        "+27 14.620        | 27.24366666666667",
        "27\u00a014.620\u00a0N | 27.24366666666667",
        "27º14.620’ N      | 27.24366666666667",
        // degrees, minutes, seconds: 14' 37.2\" is the same
        "27 14 37.2 N      | 27.24366666666667",
        "27°14'37.2\"N     | 27.24366666666667",
        "27° 14′ 37.2″ S   | -27.24366666666667",
        "27°14'37.2''N     | 27.24366666666667",
        "27:14:37.2 N      | 27.24366666666667",
        "n27-14-37.2       | 27.24366666666667",
        "27 00 00 N        | 27",
        // The sign holds for the minutes too: a published line came out 71 km short because
        // -33 26' was taken as -33 + 26' (Vincenty's test line a).
        "-33 26 00         | -33.43333333333333",
        "-0 30             | -0.5",
        "-0 00 36          | -0.01",
        "0 30 S            | -0.5",
    })
    void readsLatitude(String text, double degrees) {
        assertEquals(degrees, CoordinateText.parseLatitude(text), EXACT, text);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "-87.25            | -87.25",
        "87.25 W           | -87.25",
        "W 87.25           | -87.25",
        "W87°15.000'       | -87.25",
        "087 15.000 W      | -87.25",
        "272.75            | 272.75",
        "360               | 360",
        "180 E             | 180",
        "180 00.000 W      | -180",
        "003 20 35.507 E   | 3.3431963888888889",
    })
    void readsLongitude(String text, double degrees) {
        assertEquals(degrees, CoordinateText.parseLongitude(text), EXACT, text);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "!!                | is no latitude",
        "north             | is no latitude",
        "N                 | is no latitude",
        "27,25             | is no latitude",
        "27.25.1           | is no latitude",
        "271.5.3 N         | is no latitude",
        "27 14 37 2 N      | is no latitude",
        "27\"14' N         | is no latitude",
        "27' N             | is no latitude",
        "27 14\" N         | is no latitude",
        "27 -14 N          | is no latitude",
        "--27              | is no latitude",
        "NaN               | is no latitude",
        "Infinity          | is no latitude",
        "0x1B              | is no latitude",
        "2.7E1             | is no latitude",
        "27.25f            | is no latitude",
        "٢٧.٢٥             | is no latitude",
        "N 27.25 N         | has two hemispheres",
        "-27.25 S          | has both a sign and a hemisphere",
        "S -27.25          | has both a sign and a hemisphere",
        "+27 14.620 N      | has both a sign and a hemisphere",
        "27 14.620         | has minutes but neither hemisphere nor sign; write N or S",
        "27 14 37.2        | has minutes but neither hemisphere nor sign; write N or S",
        "27 60.000 N       | has 60.000 minutes",
        "27 59 60 N        | has 60 seconds",
        "27 75 10 N        | has 75 minutes",
        "27.5 14.62 N      | has decimals before its last number",
        "27 14.5 37 N      | has decimals before its last number",
        "27.25 W           | is no latitude because of its W",
        "27 14.620 E       | is no latitude because of its E",
        "90.0001           | lies outside ±90 degrees",
        "-90.0001          | lies outside ±90 degrees",
        "90 00.001 N       | lies outside ±90 degrees",
        "2714.620 N        | lies outside ±90 degrees",
        "3263000           | lies outside ±90 degrees",
    })
    void refusesGarbageLatitude(String text, String message) {
        InputException e = assertThrows(InputException.class, () -> CoordinateText.parseLatitude(text), text);
        assertTrue(e.getMessage().startsWith("\"" + text + "\" " + message), e.getMessage());
        assertTrue(e.getMessage().contains("; "), e.getMessage());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "87 N              | is no longitude because of its N",
        "87 15.0 S         | is no longitude because of its S",
        "-180.001          | lies outside ±180 degrees",
        "200 E             | lies outside ±180 degrees",
        "+200              | lies outside ±180 degrees",
        "360.5             | lies outside ±180 degrees",
        "87 15.0           | has minutes but neither hemisphere nor sign; write E or W",
    })
    void refusesGarbageLongitude(String text, String message) {
        InputException e = assertThrows(InputException.class, () -> CoordinateText.parseLongitude(text), text);
        assertTrue(e.getMessage().startsWith("\"" + text + "\" " + message), e.getMessage());
    }

    @Test
    void shortensWhatItQuotes() {
        InputException e = assertThrows(InputException.class, () -> CoordinateText.parseLatitude("x".repeat(1_000_000)));
        assertTrue(e.getMessage().length() < 150, e.getMessage());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "27.243666666667   | 27 14.6200 N",
        "-27.243666666667  | 27 14.6200 S",
        "27.07700000       | 27 04.6200 N",
        "0                 | 0 00.0000 N",
        "-0.0              | 0 00.0000 N",
        "-0.0000001        | 0 00.0000 N",
        "-0.5              | 0 30.0000 S",
        "27.99999999       | 28 00.0000 N",
        "27.9999990        | 27 59.9999 N",
        "89.99999999       | 90 00.0000 N",
        "-90               | 90 00.0000 S",
    })
    void writesLatitude(double degrees, String text) {
        assertEquals(text, CoordinateText.formatLatitudeDdm(degrees));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "-87.20576         | 87 12.3456 W",
        "7.5               | 7 30.0000 E",
        "-180              | 180 00.0000 W",
        "179.99999999      | 180 00.0000 E",
    })
    void writesLongitude(double degrees, String text) {
        assertEquals(text, CoordinateText.formatLongitudeDdm(degrees));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 90.0000001, -91})
    void doesNotWriteWhatIsNoLatitude(double degrees) {
        assertThrows(IllegalArgumentException.class, () -> CoordinateText.formatLatitudeDdm(degrees));
    }

    @Test
    void whatIsWrittenReadsBackToHalfADigit() {
        double halfDigit = 0.5e-4 / 60 + EXACT;
        long seed = 20260114;
        Random random = new Random(seed);
        for (int i = 0; i < 20_000; i++) {
            double latitude = 180 * random.nextDouble() - 90;
            double longitude = 360 * random.nextDouble() - 180;
            String place = "seed " + seed + ", draw " + i;
            String latitudeText = CoordinateText.formatLatitudeDdm(latitude);
            String longitudeText = CoordinateText.formatLongitudeDdm(longitude);
            assertEquals(latitude, CoordinateText.parseLatitude(latitudeText), halfDigit, place);
            assertEquals(longitude, CoordinateText.parseLongitude(longitudeText), halfDigit, place);
            // Written again it is the same text: outputs that are read back do not creep.
            assertEquals(latitudeText, CoordinateText.formatLatitudeDdm(CoordinateText.parseLatitude(latitudeText)), place);
        }
    }
}
