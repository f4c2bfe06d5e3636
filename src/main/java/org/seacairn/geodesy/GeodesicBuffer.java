package org.seacairn.geodesy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.densify.Densifier;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.seacairn.InputException;

/**
 * The area within a geodesic distance of geometries, on the ellipsoid.
 *
 * <p>Edges are geodesics ({@link GeodesicEdges}). The sources are drawn tile by tile in azimuthal
 * equidistant planes and buffered there, which is right to centimetres; the union is taken in longitude
 * and latitude; then each vertex is moved until its geodesic distance is the stated one, and edges are
 * split where their middle strays.
 *
 * <p>Every vertex of the result is within 0.1 m of the distance (in practice a
 * tenth of a millimetre), the middle of every edge within a thousandth of the distance and at most about
 * 0.1 m. The result is valid, dissolved, without the holes that the distance closes; a gap
 * or neck narrower than the edge tolerance may be open or closed. A polygon that crosses itself covers what an odd
 * number of its rings goes around.
 *
 * <p>Across the antimeridian longitudes run on, past 180 or below -180, about the middle of the
 * sources: the polygons are not cut there, since a cut would add vertices at no distance in particular.
 */
public final class GeodesicBuffer {
    private static final double MAX_EDGE_TOLERANCE_M = 0.1;
    private static final double MAX_EDGE_TOLERANCE_SHARE = 1e-3;
    private static final double MIN_PIECE_M = 100;
    private static final double METRES_PER_DEGREE_LEAST = 110_000;
    private static final int RUN = Integer.getInteger("run", 16);
    private static final double TILE_DEG = 0.5;
    /** Nearer to a pole than this, longitude and latitude are no plane to unite polygons in. */
    private static final double MAX_LATITUDE_DEG = 89;
    /** Each round repairs what moving the vertices of the last one broke; two are the rule. */
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
     * @param distanceM in metres, more than 0
     * @return valid Polygon or MultiPolygon, longitude and latitude in degrees
     * @throws org.seacairn.InputException if a geometry is nearer to a pole than about a degree, or
     *     {@link GeodesicEdges#densify} refuses it
     * @throws IllegalStateException if the result misses the distance or is not valid
     */
    public static Geometry of(List<Geometry> lonLat, Geodesic geodesic, double distanceM) {
        if (!(distanceM > 0) || Double.isInfinite(distanceM)) {
            throw new IllegalArgumentException("a buffer of " + distanceM + " m");
        }
        return new GeodesicBuffer(geodesic, distanceM).of(lonLat);
    }

    private Geometry of(List<Geometry> lonLat) {
        double pieceM = pieceM(furthestFromEquatorDeg(lonLat));
        BufferSources sources = BufferSources.of(lonLat, geodesic, pieceM);
        if (sources.paths().isEmpty()) {
            return factory.createPolygon();
        }
        List<Geometry> rough = new ArrayList<>(sources.areas());
        tiles(sources.paths()).forEach((plane, lines) -> rough.add(buffered(lines, plane, pieceM)));
        SourceEdges edges = new SourceEdges(sources.paths(), sources.middle(), geodesic);
        BufferOutline outline = new BufferOutline(edges, geodesic, distanceM, edgeToleranceM);
        Geometry buffer = settled(OverlayNGRobust.union(rough, factory), outline);
        outline.verify(buffer, sources.paths());
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

    /** The pieces of all paths by the tile in which they start, joined where they follow each other. */
    private Map<AzimuthalPlane, List<Geometry>> tiles(List<Coordinate[]> paths) {
        Map<AzimuthalPlane, List<Geometry>> tiles = new LinkedHashMap<>();
        for (Coordinate[] path : paths) {
            int from = 0;
            while (from == 0 || from < path.length - 1) {
                AzimuthalPlane plane = planeAt(path[from]);
                int to = Math.min(from + 1, path.length - 1);
                while (to < path.length - 1 && to - from < RUN && !path[to + 1].equals2D(path[from]) && planeAt(path[to]).equals(plane)) {
                    to++;
                }
                List<Coordinate> run = new ArrayList<>();
                for (int i = from; i <= to; i++) {
                    run.add(plane.fromLonLat(path[i]));
                }
                Coordinate[] line = run.toArray(new Coordinate[0]);
                tiles.computeIfAbsent(plane, p -> new ArrayList<>())
                        .add(line.length == 1 ? factory.createPoint(line[0]) : factory.createLineString(line));
                from = Math.max(to, 1);
            }
        }
        return tiles;
    }

    private AzimuthalPlane planeAt(Coordinate lonLat) {
        double latitudeDeg = (Math.floor(lonLat.y / TILE_DEG) + 0.5) * TILE_DEG;
        double widthDeg = TILE_DEG / Math.cos(Math.toRadians(latitudeDeg));
        return new AzimuthalPlane((Math.floor(lonLat.x / widthDeg) + 0.5) * widthDeg, latitudeDeg, geodesic);
    }

    private Geometry buffered(List<Geometry> lines, AzimuthalPlane plane, double pieceM) {
        // A little finer than needed, or half the edges of an arc would be split for a hair.
        double arc = 2 * Math.acos(1 - 0.9 * edgeToleranceM / distanceM);
        BufferParameters round = new BufferParameters((int) Math.ceil(Math.PI / 2 / arc));
        round.setSimplifyFactor(0);
        List<Geometry> parts = new ArrayList<>();
        for (Geometry line : lines) {
            parts.add(BufferOp.bufferOp(line, distanceM, round));
        }
        // One by one and then united: far quicker than together where many overlap.
        Geometry onPlane = OverlayNGRobust.union(parts, factory);
        Densifier densifier = new Densifier(onPlane);
        densifier.setDistanceTolerance(pieceM);
        densifier.setValidate(false);
        Geometry lonLat = densifier.getResultGeometry();
        lonLat.apply((Coordinate c) -> c.setCoordinate(plane.toLonLat(c)));
        lonLat.geometryChanged();
        return lonLat;
    }

    private Geometry settled(Geometry rough, BufferOutline outline) {
        Geometry buffer = outline.settle(rough);
        for (int round = 1; round < MAX_ROUNDS && !buffer.isValid(); round++) {
            buffer = outline.settle(OverlayNGRobust.union(GeometryFixer.fix(buffer)));
        }
        return buffer;
    }
}
