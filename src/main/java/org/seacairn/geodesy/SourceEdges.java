package org.seacairn.geodesy;

import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * The points and short geodesic pieces that a buffer is measured from, and the nearest of them to any
 * place. Which piece is nearest is decided on straight chords in space: up to 10 km the order of
 * chords is the order of geodesics to well under a millimetre, and a piece of 1 km lies within 20 mm
 * of its chord, across the direction that counts. The distance itself is then GeographicLib's.
 *
 * <p>The index is a plane through the middle of the sources: distances on it are never longer than in
 * space, so that a search on it misses nothing.
 */
final class SourceEdges {
    /** Foot of the shortest geodesic on the sources; azimuth at the place asked for, away from them. */
    record Foot(double distanceM, double awayDeg) {}

    private record Piece(Coordinate a, Coordinate b, double[] start, double[] chord, double chordSquare) {
        /** Share of the chord, 0..1, at which it is nearest to a place in space. */
        double shareNearest(double[] place) {
            return chordSquare == 0 ? 0 : Math.max(0, Math.min(1, dot(minus(place, start), chord) / chordSquare));
        }

        double distanceSquare(double[] place) {
            double share = shareNearest(place);
            double x = place[0] - start[0] - share * chord[0];
            double y = place[1] - start[1] - share * chord[1];
            double z = place[2] - start[2] - share * chord[2];
            return x * x + y * y + z * z;
        }
    }

    private final Geodesic geodesic;
    private final STRtree index = new STRtree();
    private final double[] east;
    private final double[] north;

    /**
     * @param paths vertices in longitude and latitude; neighbours at most about a kilometre apart; a
     *     path of one vertex is a point
     * @param middle a place amid them
     */
    SourceEdges(List<Coordinate[]> paths, Coordinate middle, Geodesic geodesic) {
        this.geodesic = geodesic;
        double lambda = Math.toRadians(middle.x);
        double phi = Math.toRadians(middle.y);
        east = new double[] {-Math.sin(lambda), Math.cos(lambda), 0};
        north = new double[] {-Math.sin(phi) * Math.cos(lambda), -Math.sin(phi) * Math.sin(lambda), Math.cos(phi)};
        for (Coordinate[] path : paths) {
            for (int i = 0; i == 0 || i < path.length - 1; i++) {
                insert(path[i], path[Math.min(i + 1, path.length - 1)]);
            }
        }
        index.build();
    }

    private void insert(Coordinate a, Coordinate b) {
        double[] start = inSpace(a);
        double[] end = inSpace(b);
        double[] chord = minus(end, start);
        Envelope onPlane = onPlane(start);
        onPlane.expandToInclude(onPlane(end));
        index.insert(onPlane, new Piece(a, b, start, chord, dot(chord, chord)));
    }

    /**
     * The foot on the sources, provided that they come within a distance of the place.
     *
     * @return null if nothing lies so near
     */
    Foot nearest(Coordinate lonLat, double withinM) {
        double[] place = inSpace(lonLat);
        Hit hit = hit(place, withinM);
        return hit.piece == null ? null : foot(hit.piece, hit.piece.shareNearest(place), lonLat);
    }

    /**
     * Geodesic distance from the chord alone: right to a millimetre up to 10 km, and quick; infinite if
     * nothing lies within the distance.
     */
    double roughlyM(Coordinate lonLat, double withinM) {
        Hit hit = hit(inSpace(lonLat), withinM);
        double chordM = Math.sqrt(hit.square);
        double radiusM = geodesic.EquatorialRadius();
        return hit.piece == null ? Double.POSITIVE_INFINITY
                : chordM * (1 + chordM * chordM / (24 * radiusM * radiusM));
    }

    private Hit hit(double[] place, double withinM) {
        Envelope window = onPlane(place);
        window.expandBy(withinM);
        Hit hit = new Hit();
        hit.square = withinM * withinM;
        index.query(window, item -> {
            double square = ((Piece) item).distanceSquare(place);
            if (square <= hit.square) {
                hit.square = square;
                hit.piece = (Piece) item;
            }
        });
        return hit;
    }

    private static final class Hit {
        private Piece piece;
        private double square;
    }

    private Foot foot(Piece piece, double share, Coordinate lonLat) {
        Coordinate foot = share == 0 ? piece.a : share == 1 ? piece.b : along(piece, share);
        GeodesicData ray = geodesic.Inverse(foot.y, foot.x, lonLat.y, lonLat.x,
                GeodesicMask.DISTANCE | GeodesicMask.AZIMUTH);
        return new Foot(ray.s12, ray.azi2);
    }

    private Coordinate along(Piece piece, double share) {
        GeodesicData edge = geodesic.Inverse(piece.a.y, piece.a.x, piece.b.y, piece.b.x,
                GeodesicMask.DISTANCE | GeodesicMask.AZIMUTH);
        GeodesicData point = geodesic.Direct(piece.a.y, piece.a.x, edge.azi1, edge.s12 * share,
                GeodesicMask.LATITUDE | GeodesicMask.LONGITUDE);
        return new Coordinate(point.lon2, point.lat2);
    }

    private Envelope onPlane(double[] place) {
        return new Envelope(new Coordinate(dot(place, east), dot(place, north)));
    }

    private double[] inSpace(Coordinate lonLat) {
        double phi = Math.toRadians(lonLat.y);
        double lambda = Math.toRadians(lonLat.x);
        double f = geodesic.Flattening();
        double e2 = f * (2 - f);
        double n = geodesic.EquatorialRadius() / Math.sqrt(1 - e2 * Math.sin(phi) * Math.sin(phi));
        return new double[] {
            n * Math.cos(phi) * Math.cos(lambda), n * Math.cos(phi) * Math.sin(lambda), n * (1 - e2) * Math.sin(phi)};
    }

    private static double[] minus(double[] a, double[] b) {
        return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
