package org.seacairn.geodesy;

import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
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

    private final double radiusM;
    private final double flattening;
    private final double eccentricity;

    private RhumbEdges(Geodesic ellipsoid) {
        this.radiusM = ellipsoid.EquatorialRadius();
        this.flattening = ellipsoid.Flattening();
        this.eccentricity = Math.sqrt(flattening * (2 - flattening));
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
        return EdgeWalk.draw(lonLat, new RhumbEdges(ellipsoid)::edge);
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
    }

    /** Appends the points of a stretch of an edge, from one share of its rise in latitude to another. */
    private void append(List<Coordinate> edge, Course course, double from, double to) {
        double mostDeg = Math.max(Math.abs(course.latitudeDeg(from)), Math.abs(course.latitudeDeg(to)));
        int pieces = pieces(course, from, to, mostDeg);
        double half = (from + to) / 2;
        if (pieces > 1 && Math.abs(course.northDeg) * (to - from) > 90 - mostDeg && half > from && half < to) {
            // Towards a pole the line turns ever faster from its geodesics: one step for all would be far too small.
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

    /** How many pieces of equal rise in latitude keep to the arc. */
    private int pieces(Course course, double from, double to, double mostDeg) {
        double east = Math.toRadians(course.eastDeg);
        double whole = Math.hypot(east, course.rise);
        if (whole == 0) {
            return 1;
        }
        // Latitude by isometric latitude, on the mean of the edge: what a length in the latter comes to on a sphere.
        double shrink = course.rise == 0 ? Math.cos(Math.toRadians(mostDeg)) : Math.toRadians(course.northDeg) / course.rise;
        // The ellipsoid's largest radius of curvature is the pole's; the smallest across a meridian the equator's.
        double lengthM = radiusM / (1 - flattening) * shrink * whole * (to - from);
        double curvaturePerM = Math.abs(east) / whole * Math.tan(Math.toRadians(mostDeg)) / radiusM;
        double byArc = lengthM * Math.sqrt(curvaturePerM / (8 * ARC_M));
        double byWidth = Math.abs(course.eastDeg) * (to - from) / WIDEST_PIECE_DEG;
        return (int) Math.max(1, Math.ceil(Math.max(byArc, byWidth)));
    }

    /**
     * The difference of two isometric latitudes. Written by the half difference of the latitudes and their mean, so that
     * it keeps all its digits however near they are: atanh x - atanh y = atanh((x - y) / (1 - x y)).
     */
    private double isometricRise(double latitudeDeg, double northDeg) {
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
