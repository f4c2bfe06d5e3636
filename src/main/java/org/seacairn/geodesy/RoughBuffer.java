package org.seacairn.geodesy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.densify.Densifier;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Draws a buffer in one azimuthal plane a tile and unites the tiles in longitude and latitude. Vertices
 * come out within centimetres of the distance; JTS leaves out the arc where a line turns by less than
 * 0.05 of a radian, so that its edges may run nearer by 1/800 of the distance.
 *
 * @param edgeToleranceM how far the edges of an arc may be inside it
 * @param pieceM no edge of the result is longer than this
 */
record RoughBuffer(
        Geodesic geodesic, double distanceM, double edgeToleranceM, double pieceM, GeometryFactory factory) {
    private static final double TILE_DEG = 0.5;
    /** A buffer of many pieces at once is slow where the pieces are shorter than the distance. */
    private static final int MAX_PIECES_AT_ONCE = 16;

    Geometry about(BufferSources sources) {
        List<Geometry> parts = new ArrayList<>(sources.areas());
        tiles(sources.paths()).forEach((plane, runs) -> parts.add(buffered(runs, plane)));
        return OverlayNGRobust.union(parts, factory);
    }

    /** The pieces of all paths by the tile in which they start, in runs of those that follow each other. */
    private Map<AzimuthalPlane, List<Geometry>> tiles(List<Coordinate[]> paths) {
        Map<AzimuthalPlane, List<Geometry>> tiles = new LinkedHashMap<>();
        for (Coordinate[] path : paths) {
            int last = path.length - 1;
            int from = 0;
            do {
                AzimuthalPlane plane = planeAt(path[from]);
                int to = Math.min(from + 1, last);
                while (to < last && to - from < MAX_PIECES_AT_ONCE && planeAt(path[to]).equals(plane)
                        // A closed run would be taken for a ring, and a ring that crosses itself is buffered wrongly.
                        && !path[to + 1].equals2D(path[from])) {
                    to++;
                }
                tiles.computeIfAbsent(plane, p -> new ArrayList<>()).add(run(path, from, to, plane));
                from = to;
            } while (from < last);
        }
        return tiles;
    }

    private Geometry run(Coordinate[] path, int from, int to, AzimuthalPlane plane) {
        Coordinate[] run = new Coordinate[to - from + 1];
        for (int i = from; i <= to; i++) {
            run[i - from] = plane.fromLonLat(path[i]);
        }
        return run.length == 1 ? factory.createPoint(run[0]) : factory.createLineString(run);
    }

    private AzimuthalPlane planeAt(Coordinate lonLat) {
        double latitudeDeg = (Math.floor(lonLat.y / TILE_DEG) + 0.5) * TILE_DEG;
        double widthDeg = TILE_DEG / Math.cos(Math.toRadians(latitudeDeg));
        return new AzimuthalPlane((Math.floor(lonLat.x / widthDeg) + 0.5) * widthDeg, latitudeDeg, geodesic);
    }

    private Geometry buffered(List<Geometry> runs, AzimuthalPlane plane) {
        // A little finer than needed, or half the edges of an arc would be split for a hair.
        double arc = 2 * Math.acos(1 - 0.9 * edgeToleranceM / distanceM);
        BufferParameters round = new BufferParameters((int) Math.ceil(Math.PI / 2 / arc));
        round.setSimplifyFactor(0);
        List<Geometry> parts = new ArrayList<>();
        for (Geometry run : runs) {
            parts.add(BufferOp.bufferOp(run, distanceM, round));
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
}
