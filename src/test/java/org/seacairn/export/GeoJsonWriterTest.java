package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;

class GeoJsonWriterTest {
    @TempDir Path folder;

    private String written(FeatureTable<?> table) throws IOException {
        Path file = folder.resolve("a.geojson");
        GeoJsonWriter.write(file, table);
        try (JsonParser json = new JsonFactory().createParser(file.toFile())) {
            while (json.nextToken() != null) {
                json.getText();
            }
        }
        return Files.readString(file);
    }

    @Test
    void siteIsAPointOfNineDecimals() throws IOException {
        List<String> lines = written(FeatureTable.sites(Samples.plan(), Samples.sites())).lines().toList();
        assertEquals("{\"type\":\"FeatureCollection\",\"name\":\"sites\",\"features\":[", lines.get(0));
        assertTrue(lines.get(1).startsWith("{\"type\":\"Feature\",\"properties\":{\"rank\":1,\"site\":\"=S-01, \\\"<A&B>\\\"\","
                + "\"longitude_deg\":-79.123456789,\"latitude_deg\":27.243666667,"), lines.get(1));
        assertTrue(lines.get(1).contains("\"release_longitude_deg\":-79.124000,"), lines.get(1));
        assertTrue(lines.get(1).endsWith(
                "\"geometry\":{\"type\":\"Point\",\"coordinates\":[-79.123456789,27.243666667]}},"), lines.get(1));
        assertTrue(lines.get(2).contains("\"release_longitude_deg\":null,") && lines.get(2).contains("\"slope_deg\":null,\"bottom\":null,"), lines.get(2));
        assertEquals("]}", lines.get(3));
        assertEquals(4, lines.size());
    }

    // RFC 7946, section 3.1.6: exterior rings are counterclockwise, and interior rings are clockwise.
    @Test
    void ringsFollowTheRightHandRule() throws IOException {
        List<String> lines = written(FeatureTable.keepOffBuffers(Samples.buffers())).lines().toList();
        assertEquals(4, lines.size());
        assertTrue(lines.get(1).contains("\"properties\":{\"layer\":\"Shipping lanes\",\"distance_m\":500.000,"
                + "\"source\":\"a rule\",\"confirmed\":true}"), lines.get(1));
        assertEquals(List.of(true, false), counterclockwise(lines.get(1)), "a shell and its hole");
        assertEquals(List.of(true, true), counterclockwise(lines.get(2)), "two shells");
    }

    /** The sense of every ring of a MultiPolygon feature, in order. */
    private static List<Boolean> counterclockwise(String feature) throws IOException {
        List<Boolean> senses = new ArrayList<>();
        List<Coordinate> ring = new ArrayList<>();
        int depth = 0;
        try (JsonParser json = new JsonFactory().createParser(feature.substring(feature.indexOf("[[[[")))) {
            do {
                switch (json.nextToken()) {
                    case START_ARRAY -> depth++;
                    case END_ARRAY -> {
                        if (depth-- == 3) {
                            senses.add(Orientation.isCCW(ring.toArray(Coordinate[]::new)));
                            ring.clear();
                        }
                    }
                    default -> {
                        double x = json.getDoubleValue();
                        json.nextToken();
                        ring.add(new Coordinate(x, json.getDoubleValue()));
                    }
                }
            } while (depth > 0);
        }
        return senses;
    }

    @Test
    void outlineHasEightDecimals() throws IOException {
        assertTrue(written(FeatureTable.keepOffBuffers(Samples.buffers())).contains("[8.12345679,1.00000000]"));
    }

    @Test
    void noRowsIsAnEmptyCollection() throws IOException {
        assertEquals("{\"type\":\"FeatureCollection\",\"name\":\"sites\",\"features\":[\n\n]}\n",
                written(FeatureTable.sites(Samples.plan(), List.of())));
    }

    @Test
    void noCoordinateSystemIsNamed() throws IOException {
        // RFC 7946, section 4: always WGS 84; the crs member of 2008 is gone.
        assertFalse(written(FeatureTable.sites(Samples.plan(), Samples.sites())).contains("\"crs\""));
    }
}
