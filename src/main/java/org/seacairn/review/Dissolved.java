package org.seacairn.review;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.seacairn.geodesy.GeodesicEdges;
import org.seacairn.layer.Feature;

/**
 * Polygons with the borders between neighbours taken away. A polygon that meets no other stays as it is,
 * vertex for vertex; those that meet are densified along their geodesics to {@value #PIECE_M} m and united.
 * Gaps between neighbours up to {@value #GAP_M} m wide are closed: rounding opens them.
 */
final class Dissolved {
    private static final double GAP_M = 1e-4;
    /** A straight line in degrees then stays within half a millimetre of the geodesic up to latitude 68, and a millimetre up to 79. */
    private static final double PIECE_M = 100;
    private static final double METRES_PER_DEGREE = 111_000;
    /** Corners that were rounded by growing come back to within a micrometre. */
    private static final int QUADRANT_SEGMENTS = 16;

    private Dissolved() {}

    /**
     * @param features longitude and latitude; what is no polygon is left out
     * @return polygons without attributes, numbered from 0
     */
    static List<Feature> of(List<Feature> features, Geodesic geodesic) {
        List<Polygon> polygons = new ArrayList<>();
        for (Feature feature : features) {
            polygons.addAll(parts(feature.geometry()));
        }
        List<Polygon> dissolved = new ArrayList<>();
        for (List<Polygon> group : groups(polygons)) {
            if (group.size() == 1) {
                dissolved.add(group.get(0));
            } else {
                dissolved.addAll(parts(united(group, geodesic)));
            }
        }
        List<Feature> numbered = new ArrayList<>();
        dissolved.forEach(p -> numbered.add(new Feature(numbered.size(), p, Map.of())));
        return numbered;
    }

    private static List<Polygon> parts(Geometry geometry) {
        List<Polygon> parts = new ArrayList<>();
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            Geometry part = geometry.getGeometryN(i);
            if (part instanceof Polygon polygon) {
                parts.add(polygon);
            } else if (part.getNumGeometries() > 1) {
                parts.addAll(parts(part));
            }
        }
        return parts;
    }

    /** Polygons whose boxes meet, with those that theirs meet, and so on, in the order of their first. */
    private static List<List<Polygon>> groups(List<Polygon> polygons) {
        STRtree index = new STRtree();
        List<Envelope> boxes = new ArrayList<>();
        for (int i = 0; i < polygons.size(); i++) {
            boxes.add(box(polygons.get(i)));
            index.insert(boxes.get(i), i);
        }
        List<List<Polygon>> groups = new ArrayList<>();
        Set<Integer> taken = new HashSet<>();
        for (int first = 0; first < polygons.size(); first++) {
            if (!taken.add(first)) {
                continue;
            }
            List<Integer> members = new ArrayList<>(List.of(first));
            for (int next = 0; next < members.size(); next++) {
                for (Object met : index.query(boxes.get(members.get(next)))) {
                    if (taken.add((Integer) met)) {
                        members.add((Integer) met);
                    }
                }
            }
            groups.add(members.stream().sorted().map(polygons::get).toList());
        }
        return groups;
    }

    /** The box, with room for edges that bulge out of that of their vertices, and over the antimeridian. */
    private static Envelope box(Polygon polygon) {
        Envelope box = new Envelope(polygon.getEnvelopeInternal());
        double widthRad = Math.toRadians(box.getWidth());
        // Enough at every latitude below 89 degrees, where a degree of longitude is short.
        box.expandBy(200 * GAP_M / METRES_PER_DEGREE, 2 * GAP_M / METRES_PER_DEGREE + Math.toDegrees(widthRad * widthRad / 8));
        // Where longitudes of neighbours may be a whole turn apart, all that is near the turn is one group.
        if (box.getMaxX() >= 180 || box.getMinX() <= -180) {
            return new Envelope(-540, 540, box.getMinY(), box.getMaxY());
        }
        return box;
    }

    private static Geometry united(List<Polygon> group, Geodesic geodesic) {
        double middleDeg = group.get(0).getEnvelopeInternal().centre().x;
        double latitudeDeg = group.get(0).getEnvelopeInternal().centre().y;
        // Degrees of longitude shortened, so that a gap is as wide either way.
        double shortening = Math.max(0.01, Math.cos(Math.toRadians(latitudeDeg)));
        List<Geometry> images = new ArrayList<>();
        double halfGapDeg = GAP_M / 2 / METRES_PER_DEGREE;
        for (Polygon polygon : group) {
            Geometry dense = GeodesicEdges.densify(polygon, geodesic, PIECE_M);
            double turn = 360 * Math.rint((dense.getEnvelopeInternal().centre().x - middleDeg) / 360);
            images.add(AffineTransformation.translationInstance(-turn - middleDeg, -latitudeDeg).scale(shortening, 1)
                    .transform(dense));
        }
        Geometry union = OverlayNGRobust.union(images);
        Geometry closed = union.buffer(halfGapDeg, QUADRANT_SEGMENTS).buffer(-halfGapDeg, QUADRANT_SEGMENTS);
        return AffineTransformation.scaleInstance(1 / shortening, 1).translate(middleDeg, latitudeDeg).transform(closed);
    }
}
