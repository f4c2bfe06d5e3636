package org.seacairn.geodesy;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;
import org.locationtech.jts.geom.Coordinate;

/** The places whose geodesic distance from the nearest source is exactly the stated one. */
final class DistanceCurve {
    /** What counts as on the curve; a tenth of the millimetre that is aimed at. */
    private static final double SETTLED_M = 1e-4;
    /** A corner takes a handful of moves; where so many do not find it, there is none. */
    private static final int MAX_MOVES = 60;
    /** Sine of the least turn of the ray by which a new nearest source is told from the next piece of the same. */
    private static final double CORNER = 0.02;
    /** Of the distance; two sources on opposite sides have their corner far along, if anywhere. */
    private static final double FURTHEST_SLIDE = 0.05;

    private final SourceEdges sources;
    private final Geodesic geodesic;
    private final double distanceM;
    /** Within this of any place that may come up there is a source. */
    private final double reachM;

    DistanceCurve(SourceEdges sources, Geodesic geodesic, double distanceM) {
        this.sources = sources;
        this.geodesic = geodesic;
        this.distanceM = distanceM;
        this.reachM = 1 + 1.05 * distanceM;
    }

    double distanceM() {
        return distanceM;
    }

    /** The place moved onto the curve, or null: there is none near by, so that the corner does not exist. */
    Coordinate settle(Coordinate rough) {
        Coordinate place = rough;
        double formerAwayDeg = Double.NaN;
        for (int i = 0; i < MAX_MOVES; i++) {
            SourceEdges.Foot foot = sources.nearest(place, reachM);
            if (foot == null) {
                return null;
            }
            double shortM = distanceM - foot.distanceM();
            if (Math.abs(shortM) <= SETTLED_M) {
                return place;
            }
            double turn = Math.toRadians(foot.awayDeg() - formerAwayDeg);
            if (Math.abs(Math.sin(turn)) > CORNER || Math.cos(turn) < 0) {
                // Another source is nearest now: keep the distance from the former one, slide along it.
                double furthestM = FURTHEST_SLIDE * distanceM;
                double slideM = Math.max(-furthestM, Math.min(furthestM, shortM / Math.sin(turn)));
                place = moved(place, formerAwayDeg + 90, slideM);
            } else {
                place = moved(place, foot.awayDeg(), shortM);
            }
            formerAwayDeg = foot.awayDeg();
        }
        return null;
    }

    private Coordinate moved(Coordinate from, double azimuthDeg, double byM) {
        GeodesicData to = geodesic.Direct(from.y, from.x, azimuthDeg, byM,
                GeodesicMask.LATITUDE | GeodesicMask.LONGITUDE | GeodesicMask.LONG_UNROLL);
        return new Coordinate(to.lon2, to.lat2);
    }

    /** How far a place is off the curve, in metres; infinite: far from all sources. */
    double offM(Coordinate place) {
        SourceEdges.Foot foot = sources.nearest(place, reachM);
        return foot == null ? Double.POSITIVE_INFINITY : Math.abs(foot.distanceM() - distanceM);
    }

    /** How far a straight edge in longitude and latitude is off at its worst quarter; infinite likewise. */
    double offM(Coordinate a, Coordinate b) {
        double worstM = 0;
        for (int quarter = 1; quarter <= 3; quarter++) {
            double atM = sources.roughlyM(between(a, b, quarter / 4.0), reachM);
            worstM = Math.max(worstM, Math.abs(atM - distanceM));
        }
        return worstM;
    }

    static Coordinate between(Coordinate a, Coordinate b, double share) {
        return new Coordinate(a.x + share * (b.x - a.x), a.y + share * (b.y - a.y));
    }
}
