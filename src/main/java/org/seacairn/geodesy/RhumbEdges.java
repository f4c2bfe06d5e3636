package org.seacairn.geodesy;

import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.InputException;

/**
 * Edges that are rhumb lines (loxodromes): straight on a Mercator chart, of one true course throughout.
 *
 * <p>Each edge gets vertices on its rhumb line, so close together that the geodesics between them stay
 * within 0.5 mm of it; from then on the layer is like any other of the house. Where the two kinds of line
 * agree that well, along meridians, along the equator and on short edges, no vertex is added.
 *
 * <p>Along a rhumb line the longitude is linear in the isometric latitude
 * &psi; = atanh(sin &phi;) - e atanh(e sin &phi;) (Snyder 1987, Map Projections: A Working Manual, equations
 * 7-7 and 7-8: the northing of a Mercator chart). Its geodesic curvature is sin &alpha; tan &phi; / N: a geodesic of that
 * course turns by so much a metre (Clairaut), and a rhumb line does not turn.
 */
public final class RhumbEdges {
    /** Height of the arc between a piece and its geodesic; a fifth is kept back, for the formula is that of short pieces. */
    private static final double ARC_M = 0.0004;
    /** The ends of wider pieces are too near antipodes for that formula, even on the equator. */
    private static final double WIDEST_PIECE_DEG = 60;
    /** How fast the arc may grow with the distance from where it matters. */
    private static final double ARC_SHARE = 1e-6;
    /** Longer stretches of an edge do not get one step for all. */
    private static final double STRETCH_M = 100_000;
    private static final double LEAST_METRES_PER_DEGREE = 110_000;
    private static final Envelope WORLD = new Envelope(-180, 180, -90, 90);

    private final double radiusM;
    private final double flattening;
    private final double eccentricity;
    private final Envelope exactWithin;

    private RhumbEdges(Geodesic ellipsoid, Envelope exactWithin) {
        this.radiusM = ellipsoid.EquatorialRadius();
        this.flattening = ellipsoid.Flattening();
        this.eccentricity = Math.sqrt(flattening * (2 - flattening));
        this.exactWithin = exactWithin;
    }

    /**
     * Adds vertices along each edge; longitudes run on as {@link GeodesicEdges} says, the shorter way round.
     * Every vertex stays as it is (save whole turns of longitude), and an edge gets the same points, bit
     * for bit, whichever way it is walked. Between equal latitudes all points have that latitude.
     *
     * @param lonLat longitude and latitude in degrees; a z value is dropped
     * @param ellipsoid the ellipsoid that they are on
     * @throws InputException if a coordinate is no place on Earth, an edge touches a pole or a polygon goes
     *     around one
     */
    public static Geometry densify(Geometry lonLat, Geodesic ellipsoid) {
        return densify(lonLat, ellipsoid, WORLD);
    }

    /**
     * As {@link #densify(Geometry, Geodesic)}, but outside a box of longitudes and latitudes the geodesics may
     * stray further: by a millionth of the distance to it. A world's cables would take millions of vertices.
     */
    public static Geometry densify(Geometry lonLat, Geodesic ellipsoid, Envelope exactWithin) {
        return EdgeWalk.draw(lonLat, new RhumbEdges(ellipsoid, exactWithin)::edge);
    }

    private List<Coordinate> edge(Coordinate a, Coordinate b) {
        if (Math.abs(a.y) == 90 || Math.abs(b.y) == 90) {
            throw new InputException("the edge from longitude " + a.x + ", latitude " + a.y + " to longitude " + b.x
                    + ", latitude " + b.y + " touches a pole, where a rhumb line has no course; end the layer short of the"
                    + " pole, or leave out \"edges: rhumb-line\"");
        }
        double eastDeg = Math.IEEEremainder(b.x - a.x, 360);
        eastDeg = eastDeg == -180 ? 180 : eastDeg;
        double northDeg = b.y - a.y;
        Course course = new Course(a, eastDeg, northDeg, isometricRise(a.y, northDeg));
        List<Coordinate> edge = new ArrayList<>();
        edge.add(a);
        append(edge, course, 0, 1);
        edge.set(edge.size() - 1, new Coordinate(a.x + eastDeg, b.y));
        return edge;
    }

    /** The whole of an edge: where it starts, and how far it goes east, north and in isometric latitude. */
    private record Course(Coordinate start, double eastDeg, double northDeg, double rise) {
        double latitudeDeg(double share) {
            return start.y + northDeg * share;
        }

        /** Length in the plane of longitude and isometric latitude, in radians. */
        double chartLength() {
            return Math.hypot(Math.toRadians(eastDeg), rise);
        }

        double sine() {
            return chartLength() == 0 ? 0 : Math.abs(Math.toRadians(eastDeg)) / chartLength();
        }
    }

    /** Appends the points of a stretch of an edge, from one share of its rise in latitude to another. */
    private void append(List<Coordinate> edge, Course course, double from, double to) {
        double mostDeg = Math.max(Math.abs(course.latitudeDeg(from)), Math.abs(course.latitudeDeg(to)));
        double lengthM = lengthM(course) * (to - from);
        double awayM = awayM(at(course, from), at(course, to), mostDeg);
        // A geodesic of this course turns by so much a metre; none of the ellipsoid's radii across the meridian is smaller.
        double curvaturePerM = course.sine() * Math.tan(Math.toRadians(mostDeg)) / radiusM;
        double byArc = lengthM * Math.sqrt(curvaturePerM / (8 * Math.max(ARC_M, ARC_SHARE * awayM)));
        double byWidth = Math.abs(course.eastDeg) * (to - from) / WIDEST_PIECE_DEG;
        double pieces = Math.max(1, Math.ceil(Math.max(byArc, byWidth)));
        double half = (from + to) / 2;
        // Towards a pole the line turns ever faster from its geodesics, and far from the box less is asked.
        boolean uneven = Math.abs(course.northDeg) * (to - from) > 90 - mostDeg || lengthM > Math.max(STRETCH_M, awayM);
        if (pieces > 1 && uneven && half > from && half < to) {
            append(edge, course, from, half);
            append(edge, course, half, to);
            return;
        }
        for (int i = 1; i <= pieces; i++) {
            edge.add(at(course, from + (to - from) * i / pieces));
        }
    }

    private Coordinate at(Course course, double share) {
        double eastShare = course.rise == 0 ? share
                : isometricRise(course.start.y, course.northDeg * share) / course.rise;
        return new Coordinate(course.start.x + course.eastDeg * eastShare, course.latitudeDeg(share));
    }

    /** At least the length of an edge; more by 0.7 % at most, for the ellipsoid's largest radius of curvature is the pole's. */
    private double lengthM(Course course) {
        double latitudePerRise = course.rise == 0 ? Math.cos(Math.toRadians(course.start.y))
                : Math.toRadians(course.northDeg) / course.rise;
        return radiusM / (1 - flattening) * latitudePerRise * course.chartLength();
    }

    /** At most the distance from a stretch, which stays in the box of its ends, to where edges must be exact. */
    private double awayM(Coordinate a, Coordinate b, double mostDeg) {
        double north = Math.max(exactWithin.getMinY() - Math.max(a.y, b.y), Math.min(a.y, b.y) - exactWithin.getMaxY());
        double apartDeg = Math.abs(Math.IEEEremainder((a.x + b.x) / 2 - exactWithin.centre().x, 360))
                - (Math.abs(a.x - b.x) + exactWithin.getWidth()) / 2;
        // To a meridian that is so far off in longitude; beyond a quarter turn the pole is its nearest point.
        double sine = Math.cos(Math.toRadians(mostDeg)) * Math.sin(Math.toRadians(Math.max(0, Math.min(90, apartDeg))));
        return LEAST_METRES_PER_DEGREE * Math.max(0, Math.max(north, Math.toDegrees(Math.asin(sine))));
    }

    /**
     * The difference of two isometric latitudes. Written by the half difference of the latitudes and their mean, so that
     * it keeps all its digits however near they are: atanh x - atanh y = atanh((x - y) / (1 - x y)). Across the
     * equator it is taken in two, for from pole to pole that quotient is 1 to the last digit.
     */
    private double isometricRise(double latitudeDeg, double northDeg) {
        double toDeg = latitudeDeg + northDeg;
        if (latitudeDeg * toDeg < 0) {
            return isometricRise(0, toDeg) - isometricRise(0, latitudeDeg);
        }
        double from = Math.toRadians(latitudeDeg);
        double half = Math.toRadians(northDeg) / 2;
        double sinHalf = Math.sin(half);
        double cosMean = Math.cos(from + half);
        double sines = Math.sin(from) * Math.sin(from + 2 * half);
        double spherical = 2 * atanh(sinHalf / cosMean);
        return spherical - eccentricity
                * atanh(eccentricity * 2 * cosMean * sinHalf / (1 - eccentricity * eccentricity * sines));
    }

    private static double atanh(double x) {
        return 0.5 * Math.log1p(2 * x / (1 - x));
    }
}
