package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.WayPoint;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GpxWriterTest {
    @TempDir Path folder;

    private Path written() {
        Path file = folder.resolve("sites.gpx");
        GpxWriter.write(file, "Off <Nowhere>\u0001", Samples.sites(), List.of());
        return file;
    }

    @Test
    void waypointsKeepNineDecimalsNameAndOrder() throws IOException {
        Path file = written();
        GPX gpx = GPX.read(file);
        assertEquals("Seacairn", gpx.getCreator());
        assertEquals("1.1", gpx.getVersion());
        assertEquals("Off <Nowhere>", gpx.getMetadata().orElseThrow().getName().orElseThrow());
        List<WayPoint> points = gpx.getWayPoints();
        assertEquals(2, points.size());
        assertEquals("=S-01, \"<A&B>\"", points.get(0).getName().orElseThrow());
        assertEquals("Depth 92.4 m, score 0.812", points.get(0).getDescription().orElseThrow());
        assertTrue(Files.readString(file).contains("<wpt lat=\"27.243666667\" lon=\"-79.123456789\">"), Files.readString(file));
    }

    @Test
    void namespaceIsThatOfGpx11() throws IOException {
        // https://www.topografix.com/GPX/1/1/ (from memory)
        assertTrue(Files.readString(written()).contains("xmlns=\"http://www.topografix.com/GPX/1/1\""));
    }

    @Test
    void itHoldsNoTimeAndNoElevation() throws IOException {
        String xml = Files.readString(written());
        assertFalse(xml.contains("<time"), xml);
        assertFalse(xml.contains("<ele"), xml);
    }

    @Test
    void bytesDoNotFollowTheMachine() throws IOException {
        String here = Files.readString(written());
        Locale locale = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertEquals(here, Files.readString(written()));
        } finally {
            Locale.setDefault(locale);
        }
        assertFalse(here.contains("\r"));
    }
}
