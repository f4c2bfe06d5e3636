package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.InputException;

/**
 * Files with random damage are read or refused with a message that can be used; nothing else ever happens. More with
 * {@code -Dseacairn.damaged.draws=20000}; others with {@code -Dseacairn.damaged.seed=}.
 */
class DamagedFilesTest {
    private static final long SEED = Long.getLong("seacairn.damaged.seed", 20260117);
    private static final int DRAWS = Integer.getInteger("seacairn.damaged.draws", 150);
    private static final long MOST_NANOS = 10_000_000_000L;
    private static final int[] AWKWARD = {0, 1, -1, 0x7fffffff, 0x80000000, 0x40000000, 1_000_000, 65_536};
    private static final String[] PIECES = {"NaN", "1e999", "-", "\"", "<", "&", "]]>", "<!DOCTYPE a>", "[[[", "{", "}", ",", "\n", "999999999", "\u0000"};

    private static final String KML = "<?xml version='1.0'?><kml xmlns='http://www.opengis.net/kml/2.2'><Document><Placemark><name>\u00c9pave</name>\n"
            + "<ExtendedData><Data name='a'><value>1</value></Data></ExtendedData><MultiGeometry><Point><coordinates>1,2</coordinates></Point>\n"
            + "<Polygon><outerBoundaryIs><LinearRing><coordinates>0,0 9,0 9,9 0,0</coordinates></LinearRing></outerBoundaryIs>"
            + "</Polygon></MultiGeometry></Placemark></Document></kml>";

    @TempDir
    Path folder;

    @Test
    void shapefile() throws IOException {
        ShapefileFixture shapes = new ShapefileFixture(5)
                .parts(5, new double[] {0, 0, 0, 9, 9, 9, 9, 0, 0, 0}, new double[] {1, 1, 2, 1, 2, 2, 1, 1})
                .nullShape().parts(15, new double[] {0, 0, 0, 9, 9, 9, 9, 0, 0, 0}).multiPoint(8, 1, 2, 3, 4).parts(3, new double[] {0, 0, 1, 1});
        ShapefileFixture.write(folder, "a.shp", shapes.main());
        ShapefileFixture.write(folder, "a.dbf", ShapefileFixture.table(0x57, StandardCharsets.ISO_8859_1, new String[] {"a", "1"},
                new String[] {"*b", "2.5"}, new String[] {"c", ""}, new String[] {"d", "-4"}, new String[] {"e", "5"}));
        Files.writeString(folder.resolve("a.cpg"), "UTF-8");
        Files.writeString(folder.resolve("a.prj"), "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],"
                + "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]");
        damage("a.shp", List.of("a.shp", "a.dbf", "a.cpg", "a.prj"));
    }

    @Test
    void geoPackage() throws Exception {
        try (GeoPackageFixture fixture = new GeoPackageFixture(folder.resolve("a.gpkg"))) {
            fixture.run("PRAGMA page_size = 512").run("VACUUM").crs(4326, "EPSG", 4326, "").table("t", 4326);
            for (int i = 0; i < 20; i++) {
                fixture.row("t", i, GeoPackageFixture.blob("POLYGON ((0 0, 9 0, 9 9, 0 0), (2 1, 3 1, 3 2, 2 1))"), "name " + i);
            }
        }
        damage("a.gpkg", List.of("a.gpkg"));
    }

    @Test
    void flatGeobuf() throws IOException {
        Files.write(folder.resolve("a.fgb"), FlatGeobufFixture.everyKind());
        damage("a.fgb", List.of("a.fgb"));
    }

    @Test
    void flatGeobufWithAnIndex() throws IOException {
        Files.write(folder.resolve("a.fgb"), FlatGeobufReaderTest.BY_GDAL);
        damage("a.fgb", List.of("a.fgb"));
    }

    @Test
    void geoJson() throws IOException {
        Files.writeString(folder.resolve("a.geojson"), ("{'type':'FeatureCollection','crs':{'type':'name','properties':{'name':'OGC:CRS84'}},'features':["
                + "{'type':'Feature','geometry':{'type':'MultiPolygon','coordinates':[[[[0,0],[9,0],[9,9],[0,0]]]]},'properties':{'a':[1,{'b':2}]}},"
                + "{'type':'Feature','geometry':{'type':'GeometryCollection','geometries':[{'type':'Point','coordinates':[1.5,-2e0]}]},'properties':null}]}")
                .replace('\'', '"'));
        damage("a.geojson", List.of("a.geojson"));
    }

    @Test
    void csv() throws IOException {
        Files.writeString(folder.resolve("a.csv"), "name,longitude,latitude\r\n\"a \"\"b\"\"\",87 15.000 W,29°30'00\"N\r\nc,-87.25,29.5\r\nd,,\r\n");
        damage("a.csv", List.of("a.csv"));
    }

    @Test
    void gpx() throws IOException {
        Files.writeString(folder.resolve("a.gpx"), "<?xml version='1.0' encoding='UTF-8'?><gpx xmlns='http://www.topografix.com/GPX/1/1' version='1.1'>\n"
                + "<wpt lat='29.5' lon='-87.25'><name>\u00c9pave &amp; &#65;</name></wpt>\n<rte><rtept lat='1' lon='2'/></rte>\n"
                + "<trk><trkseg><trkpt lat='1' lon='2'/><trkpt lat='1' lon='3'/></trkseg></trk></gpx>");
        damage("a.gpx", List.of("a.gpx"));
    }

    @Test
    void kml() throws IOException {
        Files.writeString(folder.resolve("a.kml"), KML);
        damage("a.kml", List.of("a.kml"));
    }

    @Test
    void kmz() throws IOException {
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(folder.resolve("a.kmz")))) {
            zip.putNextEntry(new ZipEntry("doc.kml"));
            zip.write(KML.getBytes(StandardCharsets.UTF_8));
        }
        damage("a.kmz", List.of("a.kmz"));
    }

    private void damage(String main, List<String> names) throws IOException {
        Path file = folder.resolve(main);
        VectorLayers.read(Sources.plain(file));
        Random random = new Random(SEED);
        int refused = 0;
        for (int draw = 0; draw < DRAWS; draw++) {
            Path victim = folder.resolve(names.get(random.nextInt(names.size())));
            byte[] whole = Files.readAllBytes(victim);
            Files.write(victim, damaged(whole, random));
            long start = System.nanoTime();
            try {
                VectorLayer layer = VectorLayers.read(Sources.plain(file));
                GeometryCheck.of(GeometryRepair.asPlanned(Sources.repaired(file), layer).layer());
            } catch (InputException e) {
                refused++;
                Refusals.requireUsable(e);
            } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
                fail(main + ", seed " + SEED + ", draw " + draw + ", in " + victim.getFileName(), e);
            }
            long nanos = System.nanoTime() - start;
            assertTrue(nanos < MOST_NANOS, main + ", seed " + SEED + ", draw " + draw + " took " + nanos / 1_000_000 + " ms");
            Files.write(victim, whole);
        }
        assertTrue(refused > DRAWS / 10, main + ": only " + refused + " refused, so the damage does no harm and tests nothing");
    }

    private static byte[] damaged(byte[] whole, Random random) {
        byte[] bytes = random.nextInt(5) == 0 ? Arrays.copyOf(whole, random.nextInt(whole.length)) : whole.clone();
        // Mostly near the front, where lengths and types are.
        int reach = random.nextBoolean() ? bytes.length : Math.min(bytes.length, 300);
        for (int i = random.nextInt(6); i >= 0 && reach > 8; i--) {
            int at = random.nextInt(reach);
            switch (random.nextInt(5)) {
                case 0 -> bytes[at] = (byte) random.nextInt(256);
                case 1 -> bytes[at] = (byte) (random.nextBoolean() ? 0 : 0xff);
                case 2 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
                // Where lengths and addresses stand.
                case 3 -> ByteBuffer.wrap(bytes).order(random.nextBoolean() ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN)
                        .putInt(Math.min(at, bytes.length - 4), AWKWARD[random.nextInt(AWKWARD.length)]);
                default -> {
                    byte[] piece = PIECES[random.nextInt(PIECES.length)].getBytes(StandardCharsets.UTF_8);
                    System.arraycopy(piece, 0, bytes, at, Math.min(piece.length, bytes.length - at));
                }
            }
        }
        return bytes;
    }
}
