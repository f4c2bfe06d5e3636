package org.seacairn.geodesy;

import java.util.List;
import java.util.Locale;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.seacairn.InputException;

/**
 * The area within a geodesic distance of geometries, on the ellipsoid.
 *
 * <p>Edges are geodesics ({@link GeodesicEdges}). The sources are buffered in local planes, which is
 * right to centimetres; then each vertex is moved until its geodesic distance is the stated one, edges
 * that stray are split, and the result is measured again.
 *
 * <p>Every vertex is within 0.1 mm of the distance, and an edge strays by about a thousandth of the
 * distance, 0.1 m from 100 m on; what would be more than 0.1 m or ten times as much is an error and
 * not a result. The result is valid and dissolved, and holes that the distance closes are closed; a gap or
 * neck narrower than an edge may stray can be open or closed. A polygon that crosses itself covers what
 * an odd number of its rings goes around.
 *
 * <p>Across the antimeridian longitudes run on, past 180 or below -180, about the middle of the
 * sources: the polygons are not cut there, since a cut would add vertices at no distance in particular.
 */
public final class GeodesicBuffer {
    /** Nearer than this no buffer is drawn. */
    public static final double LEAST_DISTANCE_M = 0.1;
    /** Farther than this no buffer is drawn. */
    public static final double MOST_DISTANCE_M = 200_000;
    /** What the result must keep to; what is aimed at is far less. */
    private static final double VERTEX_LIMIT_M = 0.1;
    /** Likewise, in edge tolerances. */
    private static final double EDGE_LIMIT = 10;
    private static final double MAX_EDGE_TOLERANCE_M = 0.1;
    private static final double MAX_EDGE_TOLERANCE_SHARE = 1e-3;
    private static final double MIN_PIECE_M = 100;
    private static final double METRES_PER_DEGREE_LEAST = 110_000;
    /** Nearer to a pole than this, longitude and latitude are no plane to unite polygons in. */
    private static final double MAX_LATITUDE_DEG = 89;
    /** Each further round repairs what moving vertices has broken; one round is the rule. */
    private static final int MAX_ROUNDS = 6;

    private final GeometryFactory factory = new GeometryFactory();
    private final Geodesic geodesic;
    private final double distanceM;
    private final double edgeToleranceM;

    private GeodesicBuffer(Geodesic geodesic, double distanceM) {
        this.geodesic = geodesic;
        this.distanceM = distanceM;
        this.edgeToleranceM = Math.min(MAX_EDGE_TOLERANCE_M, MAX_EDGE_TOLERANCE_SHARE * distanceM);
    }

    /**
     * The dissolved buffer of all geometries together.
     *
     * @param lonLat points, lines, polygons and collections of them, longitude and latitude in degrees;
     *     none, or only empty ones, give an empty polygon
     * @param distanceM in metres, 0.1 to 200,000
     * @return valid Polygon or MultiPolygon, longitude and latitude in degrees
     * @throws org.seacairn.InputException if a geometry is nearer to a pole than about a degree, or
     *     {@link GeodesicEdges#densify} refuses it
     * @throws IllegalStateException if the result misses the distance or is not valid
     */
    public static Geometry of(List<Geometry> lonLat, Geodesic geodesic, double distanceM) {
        if (!(distanceM >= LEAST_DISTANCE_M && distanceM <= MOST_DISTANCE_M)) {
            throw new IllegalArgumentException("a buffer of " + distanceM + " m; 0.1 to 200000 m can be drawn");
        }
        return new GeodesicBuffer(geodesic, distanceM).of(lonLat);
    }

    private Geometry of(List<Geometry> lonLat) {
        double pieceM = pieceM(furthestFromEquatorDeg(lonLat));
        BufferSources sources = BufferSources.of(lonLat, geodesic, pieceM);
        if (sources.paths().isEmpty()) {
            return factory.createPolygon();
        }
        Geometry rough = new RoughBuffer(geodesic, distanceM, edgeToleranceM, pieceM, factory).about(sources);
        SourceEdges edges = new SourceEdges(sources.paths(), sources.middle(), geodesic);
        DistanceCurve curve = new DistanceCurve(edges, geodesic, distanceM);
        Geometry buffer = settled(rough, new BufferOutline(curve, edgeToleranceM));
        verify(buffer, sources.paths(), curve);
        return buffer;
    }

    private double furthestFromEquatorDeg(List<Geometry> lonLat) {
        double furthestDeg = 0;
        for (Geometry geometry : lonLat) {
            Envelope extent = geometry.getEnvelopeInternal();
            if (!extent.isNull()) {
                furthestDeg = Math.max(furthestDeg, Math.max(-extent.getMinY(), extent.getMaxY()));
            }
        }
        double reachedDeg = furthestDeg + distanceM / METRES_PER_DEGREE_LEAST;
        if (reachedDeg > MAX_LATITUDE_DEG) {
            throw new InputException(String.format(Locale.ROOT, "a buffer of %.0f m reaches latitude %.1f; "
                    + "buffers are drawn up to %.0f degrees; cut the layer there", distanceM, reachedDeg, MAX_LATITUDE_DEG));
        }
        return reachedDeg;
    }

    /** The longest edge that, straight in longitude and latitude, bows by no more than the edge tolerance. */
    private double pieceM(double latitudeDeg) {
        // A parallel bends away from the geodesic by L² tan(latitude) / 8R.
        double bowingM = Math.sqrt(8 * geodesic.EquatorialRadius() * edgeToleranceM / Math.tan(Math.toRadians(latitudeDeg)));
        return Math.max(MIN_PIECE_M, Math.min(GeodesicEdges.PIECE_M, bowingM));
    }

    private Geometry settled(Geometry rough, BufferOutline outline) {
        Geometry buffer = outline.settle(rough);
        for (int round = 1; round < MAX_ROUNDS && !buffer.isValid(); round++) {
            buffer = outline.settle(OverlayNGRobust.union(GeometryFixer.fix(buffer)));
        }
        return buffer;
    }

    /**
     * If the outline keeps the distance all along and every source is inside, then no place nearer than
     * the distance is outside: the way to it from its source would have to cross the outline.
     */
    private void verify(Geometry buffer, List<Coordinate[]> paths, DistanceCurve curve) {
        if (!buffer.isValid()) {
            throw failure("is not valid", buffer.getCoordinate());
        }
        for (Object ring : LinearComponentExtracter.getLines(buffer)) {
            Coordinate[] vertices = ((LineString) ring).getCoordinates();
            for (int i = 1; i < vertices.length; i++) {
                if (!(curve.offM(vertices[i]) <= VERTEX_LIMIT_M)) {
                    throw failure("has a vertex " + curve.offM(vertices[i]) + " m off", vertices[i]);
                }
                if (!(curve.offM(vertices[i - 1], vertices[i]) <= EDGE_LIMIT * edgeToleranceM)) {
                    throw failure("has an edge that strays", vertices[i]);
                }
            }
        }
        IndexedPointInAreaLocator area = new IndexedPointInAreaLocator(buffer);
        for (Coordinate[] path : paths) {
            if (area.locate(path[0]) != Location.INTERIOR) {
                throw failure("leaves out a source", path[0]);
            }
        }
    }

    private IllegalStateException failure(String what, Coordinate at) {
        return new IllegalStateException("the buffer of " + distanceM + " m " + what
                + (at == null ? "" : " at longitude " + at.x + ", latitude " + at.y));
    }
}
