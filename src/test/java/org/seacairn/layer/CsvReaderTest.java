package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.LayerFile;

class CsvReaderTest {
    @TempDir
    Path folder;

    private Path write(String text) throws IOException {
        return Files.writeString(folder.resolve("reefs.csv"), text);
    }

    private VectorLayer read(String text) throws IOException {
        return VectorLayers.read(Sources.plain(write(text)));
    }

    private static Coordinate first(VectorLayer layer) {
        return layer.features().get(0).geometry().getCoordinate();
    }

    @Test
    void readsPointsWithTheirColumnsAsText() throws IOException {
        VectorLayer layer = read("name,longitude,latitude,depth_m\nOld pier,-87.25,29.5,007\n\"Tug, \"\"Ann\"\"\",-87.5,29.25,\n");
        assertEquals(new Coordinate(-87.25, 29.5), first(layer));
        assertEquals("{name=Old pier, longitude=-87.25, latitude=29.5, depth_m=007}", layer.features().get(0).attributes().toString());
        assertEquals("{name=Tug, \"Ann\", longitude=-87.5, latitude=29.25, depth_m=null}", layer.features().get(1).attributes().toString());
        assertEquals(List.of(1L, 2L), layer.features().stream().map(Feature::id).toList());
        assertEquals(Crs.WGS84, layer.crs());
        assertEquals(List.of("its longitudes and latitudes are taken as WGS 84, since a CSV file states no CRS"), layer.notes());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "longitude,latitude        | -87.25,29.5",
        "LATITUDE,LONGITUDE        | 29.5,-87.25",
        "lon,lat                   | -87.25,29.5",
        "Lat.,Long.                | 29.5,-87.25",
        "lng,lat                   | -87.25,29.5",
        "Longitude (deg),Latitude (deg) | -87.25,29.5",
        "longitude_ddm,latitude_ddm | 87 15.000 W,29 30.000 N",
        "lat_dms,lon_dms           | \"29°30'00\"\"N\",\"87°15'00\"\"W\"",
        "lat,lon                   | 29°30'00.0\"N,87°15'00\"W",
        "x,y                       | -87.25,29.5",
        "x,y,longitude,latitude    | 5,6,-87.25,29.5",
        "longitude_ddm,latitude_ddm,longitude_deg,latitude_deg | 1 0.0 E,1 0.0 N,-87.25,29.5",
        "easting_m,northing_m,longitude_deg,latitude_deg | 5,6,-87.25,29.5",
        " \"lon\" , \"lat\"        | \"-87.25\" , \"29.5\"",
        "lon,lat,,                 | -87.25,29.5,,",
        "lon;lat                   | -87,25;29,5",
        "name;lon;lat              | Kai, groß;-87.25;29.5",
        "lon;lat                   | 87° 15,000' W;29° 30,000' N",
        "lon\tlat                  | -87,25\t29.5",
        "lon,lat                   | 272.75,29.5",
        "Länge;Breite              | -87,25;29,5",
        "Geogr. Laenge [°];Geogr. Breite [°] | -87,25;29,5",
        "LÄNGENGRAD;BREITENGRAD    | 87° 15,000' W;29° 30,000' N",
        "longitud,latitud          | -87.25,29.5",
        "Longitud (GMS),Latitud (GMS) | 87 15 00 W,29 30 00 N",
        "Longitude (°),Latitude (°) | -87.25,29.5",
        "longitudine,latitudine    | -87.25,29.5",
        "lengtegraad,breedtegraad  | -87.25,29.5",
        "Lengdegrad,Breddegrad     | -87.25,29.5",
        "Længdegrad;Breddegrad     | -87,25;29,5",
        "Längdgrad;Breddgrad       | -87,25;29,5",
        "decimalLatitude,decimalLongitude | 29.5,-87.25",
        "GPS lat,GPSLon            | 29.5,-87.25",
        "LatitudeDDM,LongitudeDDM  | 29 30.0 N,87 15.0 W",
        "WGS84 Latitude (DD),WGS84 Longitude (DD) | 29.5,-87.25",
        "Latitude (N),Longitude (E) | 29.5,-87.25",
        "Latitude,Lon (deg)        | 29.5,-87.25",
        "POINT_X,POINT_Y           | -87.25,29.5",
        "Länge,Breite,longitude,latitude | 40,8,-87.25,29.5",
        "Länge (m),Breite (m),lon,lat | 40,8,-87.25,29.5",
        "lat_min,lat_max,lat,lon   | 29,30,29.5,-87.25",
        "sep=;\\nlon;lat           | -87,25;29,5",
        "sep=,\\nlon,lat           | -87.25,29.5",
    })
    void findsLongitudeAndLatitude(String header, String row) throws IOException {
        VectorLayer layer = read(header.strip().translateEscapes() + "\n" + row + "\n");
        assertEquals(-87.25, first(layer).x, 1e-12);
        assertEquals(29.5, first(layer).y, 1e-12);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "easting,northing          | 583960.25,3263000.5",
        "Northing (m),Easting (m)  | 3263000.5,583960.25",
        "x,y                       | 583960.25,3263000.5",
        "x_m,y_m                   | 5.8396025E5,3263000.5",
        "longitude,latitude,easting_m,northing_m | -87.25,29.5,583960.25,3263000.5",
        "easting;northing          | 583960,25;3263000,5",
        "Rechtswert;Hochwert       | 583960,25;3263000,5",
        "Ostwert (m);Nordwert (m)  | 583960,25;3263000,5",
        "este;norte                | 583960,25;3263000,5",
        "Est [m],Nord [m]          | 583960.25,3263000.5",
        "øst;nord                  | 583960,25;3263000,5",
        "UTM East,UTM North        | 583960.25,3263000.5",
        "Länge,Breite,Rechtswert,Hochwert | 40,8,583960.25,3263000.5",
    })
    void findsEastingAndNorthingWhereThePlanStatesTheirCrs(String header, String row) throws IOException {
        VectorLayer layer = VectorLayers.read(Sources.withCrs(write(header + "\n" + row + "\n"), "EPSG:32617"));
        assertEquals(new Coordinate(583960.25, 3263000.5), first(layer));
        assertEquals(List.of(), layer.notes());
    }

    @ParameterizedTest
    @CsvSource({"Ost,Nord", "ost,NORD"})
    void takesTheColumnsThatThePlanNames(String x, String y) throws IOException {
        Path file = write("Nord,Ost,longitude,latitude\n3263000,583960,1,2\n");
        assertEquals(new Coordinate(583960, 3263000), first(VectorLayers.read(Sources.withColumns(file, "EPSG:32617", x, y))));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', nullValues = "-", value = {
        "name,depth        | -          | -     | -    | no columns of longitude and latitude, or easting and northing, among \"name\", \"depth\"; give them these names in a header line, or name the columns with \"x-column\" and \"y-column\"",
        "-87.25,29.5       | -          | -     | -    | no columns of longitude and latitude",
        "longitude,y       | -          | -     | -    | no columns of longitude and latitude",
        "easting,northing  | -          | -     | -    | its column \"easting\" is no longitude, and a CSV file states no CRS; state its projected \"crs\", for example EPSG:32617, or, if it holds degrees, EPSG:4326 and name",
        "East,North        | EPSG:4326  | -     | -    | its column \"East\" is no longitude, and its \"crs\" is stated as EPSG:4326",
        "lon,lat           | EPSG:32617 | -     | -    | its columns \"lon\" and \"lat\" are degrees while its \"crs\" is stated as EPSG:32617",
        "lon,lat,longitud  | -          | longitut | lat | has no column \"longitut\" (did you mean \"longitud\"?); name one from \"lon\", \"lat\", \"longitud\"",
        "lon,lat           | -          | lon   | -    | only one of \"x-column\" and \"y-column\" is given; give both or neither",
        "Easting,Northing  | -          | Easting | Northing | its column \"Easting\" is no longitude, and a CSV file states no CRS",
        "lat_deg,lat_min,N/S,lon_deg | -    | -     | -    | its column \"lat_min\" looks like minutes or hemisphere kept apart from their degrees; join them in one value",
        "lat_deg,lon_deg,N/S | -        | -     | -    | its column \"N/S\" looks like minutes or hemisphere kept apart",
        "lat,latRef,lon    | -          | -     | -    | its column \"latRef\" looks like minutes or hemisphere kept apart",
        "Breite,Breite Minuten,Länge | -    | -     | -    | its column \"Breite Minuten\" looks like minutes or hemisphere kept apart",
        "Latitude,Longitude (W),z | -   | -     | -    | its column \"Longitude (W)\" tells the hemisphere in its name and not in its values; write it after each value",
        "start lon,start lat | -        | -     | -    | no columns of longitude and latitude",
        "longitude,northing | -         | -     | -    | no columns of longitude and latitude",
        "lon,lat,lon       | -          | -     | -    | two columns are named \"lon\"; rename one of them",
    })
    void refusesAHeaderThatLeavesDoubt(String header, String crs, String x, String y, String message) throws IOException {
        String text = Refusals.of(Sources.withColumns(write("\n" + header.strip() + "\n1,2,3\n"), crs, x, y));
        assertTrue(text.startsWith("reefs.csv, line 2: " + message), text);
    }

    @Test
    void tellsTheFirstOfManyColumns() throws IOException {
        String header = "a,b,c,d,e,f,g,h,i,j,k,l," + "m".repeat(100) + ",n";
        assertTrue(Refusals.of(Sources.plain(write(header + "\n1\n"))).contains("\"k\", \"l\" and 2 more; give them these names"));
    }

    /** Whoever names the columns has looked at them. */
    @Test
    void takesNamedColumnsBesideMinutesAndHemispheres() throws IOException {
        Path file = write("lat_deg,lat_min,N/S,lon_deg\n29.5,30,N,-87.25\n");
        assertEquals(new Coordinate(-87.25, 29.5), first(VectorLayers.read(Sources.withColumns(file, null, "lon_deg", "lat_deg"))));
    }

    /** What {@code export.CsvTable} writes so that no spreadsheet runs it is read as it was; nothing else loses its apostrophe. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "=A1            | =A1", "\"'=A1,2\"   | =A1,2", "\"'+reef\"    | +reef", "\"'@x\"       | @x", "\"'-\"        | -",
        "\"'\tx\"      | !\tx!", "'t Hoekje      | 't Hoekje", "\"''=x\"      | ''=x", "'              | '", "A '=B          | A '=B",
    })
    void readsNamesAsTheyWereBeforeTheyWereGuarded(String cell, String name) throws IOException {
        VectorLayer layer = read("name,lon,lat,\"'=n\"\n" + cell.translateEscapes() + ",\"'-87 15.0\",29.5,x\n");
        assertEquals(name.translateEscapes(), layer.features().get(0).attributes().get("name"));
        assertEquals("x", layer.features().get(0).attributes().get("=n"));
        assertEquals(new Coordinate(-87.25, 29.5), first(layer));
    }

    @Test
    void reportsAllBadRowsAtOnceWithLineAndColumn() throws IOException {
        Path file = write("name,longitude,latitude\n"
                + "good,-87.25,29.5\n"
                + "\"two\nlines\",-87.25,ninety\n"
                + "\n"
                + "no hemisphere,87 15.0,29.5\n"
                + "half,,29.5\n"
                + "short,-87.25\n"
                + "long,-87.25,29.5,7\n"
                + "swapped,29.5,-97.25\n"
                + "metres,583960,3263000\n");
        InputException e = assertThrows(InputException.class, () -> VectorLayers.read(Sources.plain(file)));
        Refusals.requireUsable(e);
        assertEquals(List.of(
                "reefs.csv, line 3, column \"latitude\": \"ninety\" is no latitude; write it as 27.2437, 27 14.620 N or 27 14 37.2 N",
                "reefs.csv, line 6, column \"longitude\": \"87 15.0\" has minutes but neither hemisphere nor sign; write E or W after it",
                "reefs.csv, line 7, column \"longitude\": \"\" is no longitude; write it as 27.2437, 27 14.620 E or 27 14 37.2 E",
                "reefs.csv, line 8: has 2 values where the header has 3; complete the row, or quote values that hold the delimiter",
                "reefs.csv, line 9: has 4 values where the header has 3; complete the row, or quote values that hold the delimiter",
                "reefs.csv, line 10, column \"latitude\": \"-97.25\" lies outside ±90 degrees; check the latitude, and that it is in degrees"
                        + " and not in metres; it reads well the other way round, so longitude and latitude look swapped",
                "reefs.csv, line 11, column \"longitude\": \"583960\" lies outside ±180 degrees; check the longitude, and that it is in"
                        + " degrees and not in metres"), e.problems());
    }

    @Test
    void tellsTwentyBadRowsAndCountsTheRest() throws IOException {
        Path file = write("lon,lat\n" + "x,y\n".repeat(25));
        InputException e = assertThrows(InputException.class, () -> VectorLayers.read(Sources.plain(file)));
        assertEquals(21, e.problems().size());
        assertEquals("reefs.csv: and 5 more rows like these", e.problems().get(20));
    }

    @Test
    void tellsAValueOfSeveralLinesInOne() throws IOException {
        assertEquals("reefs.csv, line 2, column \"longitude\": \"87 29.5 d,, .25\" is no longitude; write it as 27.2437, 27 14.620 E or 27 14 37.2 E",
                Refusals.of(Sources.plain(write("longitude,latitude\n\"87 29.5\nd,,\n.25\",29.5\n"))));
    }

    @Test
    void refusesNumbersThatAreNone() throws IOException {
        Path file = write("easting,northing\n\"583,960\",1\nNaN,1\n1e400,1\n0x10,1\n1f,1\n,1\n");
        InputException e = assertThrows(InputException.class, () -> VectorLayers.read(Sources.withCrs(file, "EPSG:32617")));
        assertEquals(6, e.problems().size(), e.getMessage());
        assertEquals("reefs.csv, line 2, column \"easting\": \"583,960\" is no number; write it like 583960.25", e.problems().get(0));
    }

    @Test
    void countsRowsWithoutCoordinates() throws IOException {
        VectorLayer layer = read("name,lon,lat\na,,\nb, ,\t\nc,1,2\n,,\n\n");
        assertEquals(3, layer.featuresWithoutGeometry());
        assertEquals(3L, layer.features().get(0).id());
    }

    @Test
    void wrapsLongitudesAbove180AndSaysSo() throws IOException {
        VectorLayer layer = read("lon,lat\n180,1\n180.5,1\n360,1\n");
        assertEquals(List.of(180.0, -179.5, 0.0), layer.features().stream().map(f -> f.geometry().getCoordinate().x).toList());
        assertTrue(layer.notes().contains("2 longitudes above 180 are taken less 360"), layer.notes().toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "UTF-8        | 0 | ", "UTF-8 | 1 | ", "UTF-16LE | 1 | ", "UTF-16BE | 1 | ",
        "UTF-16LE     | 0 | it has no byte order mark and is taken as UTF-16LE", "UTF-16BE | 0 | it has no byte order mark and is taken as UTF-16BE",
        "windows-1252 | 0 | its text is no UTF-8 and is taken as windows-1252",
    })
    void readsTextInItsCharacterSet(String charset, int mark, String note) throws IOException {
        String text = "nom\tlongitude\tlatitude\nÉpave\t87° 15′ W\t29,5\n";
        byte[] bytes = ((mark == 1 ? "\ufeff" : "") + (charset.startsWith("win") ? text.replace("′", "'") : text)).getBytes(Charset.forName(charset));
        Path file = Files.write(folder.resolve("reefs.TXT"), bytes);
        VectorLayer layer = VectorLayers.read(Sources.plain(file));
        assertEquals("Épave", layer.features().get(0).attributes().get("nom"));
        assertEquals(new Coordinate(-87.25, 29.5), first(layer));
        assertEquals(note != null, layer.notes().size() == 2);
        assertTrue(note == null || layer.notes().contains(note), layer.notes().toString());
    }

    @ParameterizedTest
    @CsvSource({"\\r\\n", "\\n", "\\r"})
    void countsLinesOfEveryKind(String end) throws IOException {
        Path file = write("lon,lat\n1,2\n3,x".replace("\n", end.translateEscapes()));
        assertTrue(Refusals.of(Sources.plain(file)).startsWith("reefs.csv, line 3, column \"lat\": \"x\" is no latitude"));
    }

    @Test
    void refusesQuotesThatDoNotMatch() throws IOException {
        String remedy = ": its quotes do not match; put a value in quotes and write a quote inside it twice";
        assertEquals("reefs.csv, line 3" + remedy, Refusals.of(Sources.plain(write("lon,lat\n1,2\n\"3,4\n"))));
        assertEquals("reefs.csv, line 2" + remedy, Refusals.of(Sources.plain(write("lon,lat\n\"1\"1,2\n"))));
    }

    @Test
    void refusesFilesThatAreNoText() throws IOException {
        Path workbook = Files.write(folder.resolve("reefs.csv"), new byte[] {'P', 'K', 3, 4, 20, 0, 6, 0});
        assertEquals("reefs.csv, character 6: is a zero byte, so this is no text file; export it as CSV", Refusals.of(Sources.plain(workbook)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "\\n\\n        | line 1: holds only empty lines",
        "\"\"\\n       | line 1: holds no column name",
        "lon,lat       | layer \"trial\" (line 12 of the plan): holds no feature; ",
        "lon,lat\\n,\\n | layer \"trial\" (line 12 of the plan): holds no feature with a geometry (1 without); ",
    })
    void refusesFilesWithoutRows(String text, String message) throws IOException {
        LayerFile source = Sources.plain(write(text.translateEscapes()));
        assertTrue(Refusals.of(source).startsWith("reefs.csv, " + message), Refusals.of(source));
    }

    @Test
    void readsTheSameFromUtf8AsFromItsBytes() throws IOException {
        Path file = Files.write(folder.resolve("reefs.csv"), "name,lon,lat\nŁódź,1,2\n".getBytes(StandardCharsets.UTF_8));
        assertEquals("Łódź", VectorLayers.read(Sources.plain(file)).features().get(0).attributes().get("name"));
    }
}
