package org.seacairn.review;

import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.index.strtree.STRtree;
import org.seacairn.criterion.ChartedDepth;

/** The polygons of charted depth areas, found by place. Immutable, so that threads may share it. */
final class ChartedAreas {
    /** Boxes wider than this are not judged by their corners. */
    private static final double WIDE_DEG = 60;
    private static final double METRES_PER_DEGREE = 110_000;

    private final STRtree boxes = new STRtree();

    /**
     * One polygon of an area.
     *
     * @param place among all, in the order of the layer
     * @param alone whether its area has no other
     */
    record Charted(GeodesicArea polygon, ChartedDepth.Area area, int place, boolean alone) {
        ChartedDepth depth() {
            return area.depth();
        }
    }

    /** @param areas longitude and latitude */
    ChartedAreas(List<ChartedDepth.Area> areas, Geodesic geodesic) {
        int place = 0;
        for (int i = 0; i < areas.size(); i++) {
            List<?> polygons = PolygonExtracter.getPolygons(areas.get(i).feature().geometry());
            for (Object polygon : polygons) {
                boxes.insert(box((Polygon) polygon),
                        new Charted(new GeodesicArea(i, (Polygon) polygon, geodesic), areas.get(i), place++, polygons.size() == 1));
            }
        }
        boxes.build();
    }

    /** What surely holds a polygon whose edges are geodesics. */
    private static Envelope box(Polygon polygon) {
        Envelope box = new Envelope(polygon.getEnvelopeInternal());
        if (box.getWidth() > WIDE_DEG) {
            return new Envelope(-1e3, 1e3, -90, 90);
        }
        box.expandBy(0, Cover.bulgeDeg(box));
        return box;
    }

    /** The polygons that hold a place: the shoalest, which counts, first; of equal ones in the order of the layer. */
    List<Charted> holding(double lonDeg, double latDeg) {
        return near(new Envelope(lonDeg, lonDeg, latDeg, latDeg), 0).stream().filter(c -> c.polygon.contains(lonDeg, latDeg))
                .sorted(Comparator.comparing(Charted::depth, ChartedDepth.SHOALEST_FIRST)).toList();
    }

    /** Every polygon that may come within a distance of a box, and some that do not, in the order of the layer. */
    List<Charted> near(Envelope lonLat, double distanceM) {
        Envelope about = new Envelope(lonLat);
        if (distanceM > 0) {
            double degrees = distanceM * 1.05 / METRES_PER_DEGREE;
            double shortest = Math.cos(Math.toRadians(Math.min(89, Math.max(Math.abs(about.getMinY()), Math.abs(about.getMaxY())) + degrees)));
            about.expandBy(degrees / shortest, degrees);
        }
        // A wide box is found at every turn.
        Set<Charted> found = Collections.newSetFromMap(new IdentityHashMap<>());
        for (int turn = -360; turn <= 360; turn += 360) {
            boxes.query(new Envelope(about.getMinX() + turn, about.getMaxX() + turn, about.getMinY(), about.getMaxY()),
                    item -> found.add((Charted) item));
        }
        return found.stream().sorted(Comparator.comparing(Charted::place)).toList();
    }
}
