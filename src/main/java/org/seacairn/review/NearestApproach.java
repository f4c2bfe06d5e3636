package org.seacairn.review;

import java.util.Optional;
import net.sf.geographiclib.GeoMath;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.layer.Feature;

/**
 * Where a polygon comes nearest to a layer, on the ellipsoid: distance 0 where they meet. Two geodesic
 * edges that do not cross are nearest at an end of one of them (on a sphere two great circles are
 * farthest apart where both stand across the line between them), so vertices against edges, crossings
 * and containment are all there is to look at.
 *
 * @param azimuthDeg at the place, towards the feature, 0 to 360; NaN where they meet
 * @param placeLongitudeDeg the polygon's point that is nearest
 * @param longitudeDeg the layer's point that is nearest
 */
record NearestApproach(double distanceM, double azimuthDeg, double placeLongitudeDeg, double placeLatitudeDeg,
        double longitudeDeg, double latitudeDeg, Feature feature) {

    private static final int NONE = -1;

    /** @param polygon features that are polygons, which together are one */
    static NearestApproach of(EllipsoidalDistance polygon, EllipsoidalDistance layer) {
        return ofAllBut(NONE, polygon, layer).orElseThrow();
    }

    /** The nearest approach to a layer without one of its features; empty if it has no other. */
    static Optional<NearestApproach> ofAllBut(int feature, EllipsoidalDistance polygon, EllipsoidalDistance layer) {
        return meeting(polygon, layer, feature)
                .or(() -> Optional.ofNullable(new Search(polygon, layer, feature).run()));
    }

    private static NearestApproach at(Coordinate meeting, Feature feature) {
        double lonDeg = GeoMath.AngNormalize(meeting.x);
        return new NearestApproach(0, Double.NaN, lonDeg, meeting.y, lonDeg, meeting.y, feature);
    }

    /** Whether one holds a vertex of the other. */
    private static Optional<NearestApproach> meeting(EllipsoidalDistance polygon, EllipsoidalDistance layer, int but) {
        Coordinate centre = null;
        for (GeodesicArea part : polygon.areas()) {
            Coordinate vertex = part.polygon().getCoordinate();
            centre = centre == null ? vertex : centre;
            for (GeodesicArea area : layer.areas()) {
                if (area.feature() != but && area.contains(vertex.x, vertex.y)) {
                    return Optional.of(at(vertex, layer.features().get(area.feature())));
                }
            }
        }
        double[] reachM = {0};
        Vector from = Vector.of(centre.x, centre.y, polygon.geodesic());
        for (GeodesicArea part : polygon.areas()) {
            part.edges().forEach(e -> reachM[0] = Math.max(reachM[0], e.middle().minus(from).length() + e.radiusM(polygon.geodesic())));
        }
        NearestApproach[] found = new NearestApproach[1];
        layer.tree().within(centre.x, centre.y, reachM[0], piece -> {
            if (found[0] == null && piece.feature() != but && polygon.areas().stream().anyMatch(a -> a.contains(piece.longitudeDeg(), piece.latitudeDeg()))) {
                found[0] = at(new Coordinate(piece.longitudeDeg(), piece.latitudeDeg()), layer.features().get(piece.feature()));
            }
        });
        return Optional.ofNullable(found[0]);
    }

    /** Edges against edges. */
    private static final class Search {
        private final Geodesic geodesic;
        private final EllipsoidalDistance polygon;
        private final EllipsoidalDistance layer;
        private final int but;
        private NearestApproach best;

        Search(EllipsoidalDistance polygon, EllipsoidalDistance layer, int but) {
            this.but = but;
            this.geodesic = polygon.geodesic();
            this.polygon = polygon;
            this.layer = layer;
        }

        NearestApproach run() {
            polygon.tree().nearPairs(layer.tree(), (mine, other) -> {
                if (other.feature() != but) {
                    measure(mine, other);
                }
                return best == null ? Double.POSITIVE_INFINITY : best.distanceM > 0 ? best.distanceM : Double.NEGATIVE_INFINITY;
            });
            return best;
        }

        private void measure(GeodesicPiece mine, GeodesicPiece other) {
            if (mine.crosses(other, geodesic)) {
                best = at(mine.crossing(other, geodesic), layer.features().get(other.feature()));
                return;
            }
            fromMine(mine.longitudeDeg(), mine.latitudeDeg(), mine.start(), other);
            fromMine(mine.endLongitudeDeg(), mine.endLatitudeDeg(), mine.end(), other);
            fromOther(other.longitudeDeg(), other.latitudeDeg(), other.start(), mine, other);
            fromOther(other.endLongitudeDeg(), other.endLatitudeDeg(), other.end(), mine, other);
        }

        private void fromMine(double lonDeg, double latDeg, Vector vertex, GeodesicPiece other) {
            GeodesicPiece.Foot foot = other.foot(lonDeg, latDeg, vertex, geodesic);
            if (best == null || foot.distanceM() < best.distanceM) {
                best = new NearestApproach(foot.distanceM(), foot.bearingDeg(), GeoMath.AngNormalize(lonDeg), latDeg,
                        GeoMath.AngNormalize(foot.longitudeDeg()), foot.latitudeDeg(), layer.features().get(other.feature()));
            }
        }

        private void fromOther(double lonDeg, double latDeg, Vector vertex, GeodesicPiece mine, GeodesicPiece other) {
            GeodesicPiece.Foot foot = mine.foot(lonDeg, latDeg, vertex, geodesic);
            if (foot.distanceM() < best.distanceM) {
                double azimuthDeg = geodesic.Inverse(foot.latitudeDeg(), foot.longitudeDeg(), latDeg, lonDeg).azi1;
                best = new NearestApproach(foot.distanceM(), GeodesicPiece.bearingDeg(azimuthDeg),
                        GeoMath.AngNormalize(foot.longitudeDeg()), foot.latitudeDeg(), GeoMath.AngNormalize(lonDeg), latDeg,
                        layer.features().get(other.feature()));
            }
        }
    }
}
