package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;

class LandingsCsvTest {
    private static final String HEADER = "name,planned_longitude,planned_latitude,surveyed_longitude,surveyed_latitude,depth_m\n";

    @TempDir
    Path folder;

    private List<LandingsCsv.Row> read(String text) throws IOException {
        return LandingsCsv.read(Files.writeString(folder.resolve("drops.csv"), text));
    }

    private InputException refusal(String text) {
        InputException e = assertThrows(InputException.class, () -> read(text));
        Refusals.requireUsable(e);
        return e;
    }

    @Test
    void readsDropsInTheirOrder() throws IOException {
        List<LandingsCsv.Row> rows = read(HEADER + "Cairn 1,-40.25,31.5,-40.2501,31.5002,98.5\n,-40.26,31.5,-40.2601,31.5002,\n");
        assertEquals(List.of(
                new LandingsCsv.Row("Cairn 1", -40.25, 31.5, -40.2501, 31.5002, OptionalDouble.of(98.5)),
                new LandingsCsv.Row("line 3", -40.26, 31.5, -40.2601, 31.5002, OptionalDouble.empty())), rows);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "planned_longitude,planned_latitude,surveyed_longitude,surveyed_latitude | -40.25,31.5,-40.2501,31.5002",
        "Planned Lon,Planned Lat,Surveyed Lon,Surveyed Lat | -40.25,31.5,-40.2501,31.5002",
        "surveyed latitude (deg),surveyed longitude (deg),planned latitude (deg),planned longitude (deg) | 31.5002,-40.2501,31.5,-40.25",
        "planned_lon_ddm,planned_lat_ddm,surveyed_lon_ddm,surveyed_lat_ddm | 40 15.000 W,31 30.000 N,40 15.006 W,31 30.012 N",
        "plannedLongitude;plannedLatitude;surveyedLongitude;surveyedLatitude;crew | -40,25;31,5;-40,2501;31,5002;Kai, groß",
        "sep=;\\nplanned_longitude;planned_latitude;surveyed_longitude;surveyed_latitude | -40,25;31,5;-40,2501;31,5002",
        "planned_longitude,planned_latitude,surveyed_longitude,surveyed_latitude,surveyed_date | 319.75,31.5,319.7499,31.5002,2 May",
    })
    void findsItsColumnsAndReadsEveryForm(String header, String row) throws IOException {
        for (String charset : List.of("UTF-8", "UTF-16", "windows-1252")) {
            Path file = Files.write(folder.resolve("drops.txt"), (header.strip().translateEscapes() + "\n" + row + "\n").getBytes(Charset.forName(charset)));
            LandingsCsv.Row read = LandingsCsv.read(file).get(0);
            assertEquals(-40.25, read.plannedLongitudeDeg(), 1e-9);
            assertEquals(31.5, read.plannedLatitudeDeg(), 1e-9);
            assertEquals(-40.2501, read.surveyedLongitudeDeg(), 1e-9);
            assertEquals(31.5002, read.surveyedLatitudeDeg(), 1e-9);
            assertEquals(OptionalDouble.empty(), read.depthM());
        }
    }

    @ParameterizedTest
    @CsvSource({"depth_m,100,100", "Depth (ft),400,121.92", "depth_fathom,50,91.44", "DEPTH_M,100,100"})
    void readsDepthsInTheirUnit(String column, String depth, double depthM) throws IOException {
        assertEquals(depthM, read(HEADER.replace("depth_m", column) + "a,1,2,1,2," + depth + "\n").get(0).depthM().orElseThrow(), 1e-9);
    }

    @Test
    void reportsAllBadRowsAtOnceWithLineAndColumn() {
        assertEquals(List.of(
                "drops.csv, line 3, column \"planned_longitude\": \"forty\" is no longitude; write it as 27.2437, 27 14.620 E or 27 14 37.2 E",
                "drops.csv, line 3, column \"depth_m\": \"deep\" is no depth of a bottom; write a number above 0, positive down and no deeper than 11000 m, or leave it empty",
                "drops.csv, line 4, column \"surveyed_latitude\": \"95\" lies outside ±90 degrees; check the latitude, and that it is in degrees and not in metres",
                "drops.csv, line 5: the surveyed place lies 8303.3 km from the planned one, more than 5 km; check for swapped columns, signs and digits",
                "drops.csv, line 6: the surveyed place lies 9.5 km from the planned one, more than 5 km; check for swapped columns, signs and digits",
                "drops.csv, line 7, column \"depth_m\": \"0\" is no depth of a bottom; write a number above 0, positive down and no deeper than 11000 m, or leave it empty",
                "drops.csv, line 8, column \"depth_m\": \"-90\" is no depth of a bottom; write a number above 0, positive down and no deeper than 11000 m, or leave it empty",
                "drops.csv, line 9: has 5 values where the header has 6; complete the row, or quote values that hold the delimiter",
                "drops.csv, line 10, column \"surveyed_longitude\": \"\" is no longitude; write it as 27.2437, 27 14.620 E or 27 14 37.2 E"),
                refusal(HEADER + "good,-40.25,31.5,-40.2501,31.5002,98.5\n"
                        + "text,forty,31.5,-40.2501,31.5002,deep\n"
                        + "range,-40.25,31.5,-40.2501,95,98.5\n"
                        + "swapped,-40.25,31.5,31.5002,-0.2501,98.5\n"
                        + "digit,-40.25,31.5,-40.3501,31.5002,98.5\n"
                        + "zero,-40.25,31.5,-40.2501,31.5002,0\n"
                        + "up,-40.25,31.5,-40.2501,31.5002,-90\n"
                        + "short,-40.25,31.5,-40.2501,31.5002\n"
                        + "lost,-40.25,31.5,,31.5002,\n").problems());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "longitude,latitude | line 1: no columns \"planned_longitude\" and \"planned_latitude\"; write a header such as name,planned_longitude",
        "planned_longitude,planned_latitude | line 1: no columns \"surveyed_longitude\" and \"surveyed_latitude\"; write",
        "planned_longitude,planned_latitude,surveyed_longitude | line 1: no columns \"surveyed_longitude\" and \"surveyed_latitude\"; write",
        "planned_longitude,planned_latitude,surveyed_longitude,surveyed_latitude,depth | line 1: its column \"depth\" names no unit of length; name it depth_m, depth_ft or depth_fathom",
        "planned_longitude,planned_latitude,surveyed_longitude,surveyed_latitude,depth_kn | line 1: its column \"depth_kn\" names no unit of length",
        "planned_longitude,planned_latitude,surveyed_longitude,surveyed_latitude,depth_m,depth_ft | line 1: columns \"depth_m\" and \"depth_ft\" both hold depths; keep one of them",
        "planned_lat_deg,planned_lat_min,planned_lon_deg | line 1: its column \"planned_lat_min\" looks like minutes or hemisphere kept apart",
        "planned_longitude,planned_latitude,surveyed_longitude,surveyed_latitude | line 1: has no row below its header; give a row for each drop",
        "name,name | line 1: two columns are named \"name\"; rename one of them",
        "\\n \\n | line 1: holds only empty lines; export it again with a header line",
    })
    void refusesAFileThatLeavesDoubt(String text, String message) {
        String met = refusal(text.translateEscapes()).getMessage();
        assertTrue(met.startsWith("drops.csv, " + message), met);
    }

    @Test
    void refusesFilesThatAreNone() {
        assertEquals("drops.csv, landings: is empty (0 bytes); export it again", refusal("").getMessage());
        InputException e = assertThrows(InputException.class, () -> LandingsCsv.read(folder.resolve("none.csv")));
        assertEquals("none.csv, landings: there is no such file; check its name and folder", e.getMessage());
        e = assertThrows(InputException.class, () -> LandingsCsv.read(folder));
        assertEquals(folder.getFileName() + ", landings: is a folder and not a file; name the file in it", e.getMessage());
    }
}
