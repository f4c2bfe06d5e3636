package org.seacairn.review;

import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Polygon;

/**
 * One polygon of a feature: what an odd number of its rings goes around. Immutable but for its edges'
 * tree, which is built when first asked for; threads may share it.
 *
 * @param feature place of the feature in its layer
 */
final class GeodesicArea {
    private final int feature;
    private final Polygon polygon;
    private final List<GeodesicRing> rings;
    private final List<GeodesicPiece> edges;
    private final Geodesic geodesic;
    private volatile SphereTree tree;

    GeodesicArea(int feature, Polygon polygon, Geodesic geodesic) {
        this.feature = feature;
        this.polygon = polygon;
        this.geodesic = geodesic;
        this.edges = new ArrayList<>();
        this.rings = new ArrayList<>();
        for (int i = -1; i < polygon.getNumInteriorRing(); i++) {
            List<GeodesicPiece> ring = GeodesicPiece.ofPath(
                    feature, i < 0 ? polygon.getExteriorRing() : polygon.getInteriorRingN(i), geodesic);
            edges.addAll(ring);
            if (ring.size() > 1) {
                rings.add(new GeodesicRing(ring, geodesic));
            }
        }
    }

    int feature() {
        return feature;
    }

    /** As it was given: longitude and latitude in degrees. */
    Polygon polygon() {
        return polygon;
    }

    List<GeodesicPiece> edges() {
        return edges;
    }

    boolean contains(double lonDeg, double latDeg) {
        boolean odd = false;
        for (GeodesicRing ring : rings) {
            odd ^= ring.goesAround(lonDeg, latDeg);
        }
        return odd;
    }

    /** The nearest point of the outline, from inside or outside. */
    GeodesicPiece.Foot nearestEdge(double lonDeg, double latDeg) {
        SphereTree built = tree;
        if (built == null) {
            built = new SphereTree(edges, geodesic);
            tree = built;
        }
        return built.nearest(lonDeg, latDeg).foot();
    }
}
