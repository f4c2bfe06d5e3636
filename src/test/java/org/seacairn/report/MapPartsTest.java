package org.seacairn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javax.imageio.ImageIO;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;

class MapPartsTest {
    private static final GridGeometry GRID = new GridGeometry(Crs.ofEpsg(32617), 650_000, 3_260_000, 20, 500, 400);
    private static final MapPlane PLANE = new MapPlane(GRID);

    @Test
    void thePlaneTakesPlacesThereAndBack() {
        Coordinate lonLat = PLANE.lonLat(321.5, 123.25);
        Coordinate at = PLANE.at(lonLat.x, lonLat.y);
        assertEquals(321.5, at.x, 1e-6);
        assertEquals(123.25, at.y, 1e-6);
        assertEquals(800, PLANE.height());
    }

    /** The judge is the geodesic on the ellipsoid, over a tenth of the map at its middle. */
    @Test
    void theScaleIsThatOfTheGround() {
        Coordinate a = PLANE.lonLat(450, 400);
        Coordinate b = PLANE.lonLat(550, 400);
        assertEquals(Geodesic.WGS84.Inverse(a.y, a.x, b.y, b.x).s12, 100 * PLANE.groundMetresPerUnit(), 0.01);
    }

    /** The judge is the convergence of a transverse Mercator map, tan c = tan(lon - lon0) sin(lat), on the sphere (Snyder 1987, section 8); from memory. */
    @Test
    void theArrowTurnsByTheConvergence() {
        Coordinate middle = PLANE.lonLat(500, 400);
        double convergence = Math.toDegrees(Math.atan(Math.tan(Math.toRadians(middle.x + 81)) * Math.sin(Math.toRadians(middle.y))));
        // East of the central meridian true north lies to the left.
        assertEquals(-convergence, new NorthArrow(PLANE).angleDeg(), 0.005);
    }

    @ParameterizedTest
    @CsvSource({"0.99, 0.5", "1, 1", "4.9, 2", "5, 5", "0.2, 0.2", "73, 50", "0.0501, 0.05"})
    void barsAreRound(double most, double expected) {
        assertEquals(expected, ScaleBar.round(most), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"17460, true, false, 29°06′ N", "-17463, true, true, 29°06.3′ S", "0, true, false, 0°00′", "-47600, false, true, 79°20.0′ W",
        "108000, false, false, 180°00′", "108010, false, false, 179°59′ W", "599, false, true, 0°59.9′ E"})
    void figuresAreDegreesAndMinutes(long tenths, boolean latitude, boolean withTenths, String expected) {
        assertEquals(expected, Graticule.label(tenths, latitude, withTenths));
    }

    @ParameterizedTest
    @CsvSource({"LINESTRING(0 0;100.04 0;100.04 50.26), M0 0l100 0l0 50.3", "LINESTRING(1 1;-99 -0.04), M1 1l-100-1",
        "POLYGON((0 0;100 0;0 100;0 0)), M0 0l100 0l-100 100z", "'MULTILINESTRING((0 0;50 0),(90 0;90 9))', M0 0l50 0M90 0l0 9",
        "LINESTRING(0.004 0;1.236 0), M0 0l1.24 0"})
    void pathsAreRelativeAndDoNotDrift(String wkt, String expected) throws ParseException {
        assertEquals(expected, PathText.of(new WKTReader().read(wkt.replace(";", ","))));
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 0", "-0.04, 1, 0", "-0.06, 1, -0.1", "1000, 2, 1000", "12.3456, 2, 12.35", "0.05, 2, 0.05"})
    void numbersHaveNoIdleZeros(double value, int decimals, String expected) {
        assertEquals(expected, PathText.number(value, decimals));
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 13, 63, 256})
    void aPictureComesBackPixelForPixel(int colours) throws Exception {
        Random random = new Random(4);
        int[] argb = random.ints(colours).map(c -> c | 0x01000000).toArray();
        argb[0] = 0;
        int[] entries = random.ints(17 * 9, 0, colours).toArray();
        String uri = PalettePng.dataUri(17, 9, argb, i -> entries[i]);
        byte[] png = Base64.getDecoder().decode(uri.substring("data:image/png;base64,".length()));
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
        for (int i = 0; i < entries.length; i++) {
            assertEquals(argb[entries[i]], image.getRGB(i % 17, i / 17));
        }
    }

    private static Symbolizer.Text look() {
        Symbolizer.Paint black = new Symbolizer.Paint(0, 1);
        return new Symbolizer.Text("site", new Symbolizer.Font("sans-serif", 11, false, false), black, Optional.empty(),
                new Symbolizer.Placement.AtPoint(0, 0.5, 8, 0));
    }

    @Test
    void textsCoverNeitherEachOtherNorMarksNorTheEdge() {
        Random random = new Random(9);
        LabelPlaces places = new LabelPlaces(PLANE);
        List<MapLabel> labels = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            MapLabel label = MapLabel.of("S" + i, random.nextInt(1001), random.nextInt(801), 0, look());
            labels.add(label);
            places.mark(new Coordinate(label.x(), label.y()), 9);
        }
        labels.forEach(places::place);
        List<Envelope> boxes = new ArrayList<>();
        for (MapLabel label : labels) {
            places.spot(label).ifPresent(spot -> {
                Envelope box = label.box(spot, 1.1);
                assertTrue(new Envelope(0, 1000, 0, 800).contains(box));
                assertTrue(boxes.stream().noneMatch(box::intersects));
                labels.forEach(other -> assertTrue(other.x() == label.x() && other.y() == label.y() || !box.contains(other.x(), other.y())));
                boxes.add(box);
            });
        }
        assertTrue(boxes.size() > 50, boxes.size() + " shown");
        assertFalse(places.spot(MapLabel.of("never placed", 5, 5, 0, look())).isPresent());
    }

    @Test
    void aSmallOutlineKeepsItsForm() {
        var circle = new GeometryFactory().createPoint(new Coordinate(300, 300)).buffer(1.5, 32);
        assertTrue(PLANE.inSight(circle).getNumPoints() > 20);
    }
}
