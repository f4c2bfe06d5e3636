package org.seacairn.place;

import java.util.Locale;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.linearref.LengthIndexedLine;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.GeodesicEdges;
import org.seacairn.grid.GridGeometry;

/**
 * The line that a chain follows from one stone to another.
 *
 * @param onMap vertices in the working CRS, from the first stone on, at most about a kilometre apart
 * @param alongM ground metres from the start to each vertex, geodesic by geodesic
 * @param stonesApartM geodesic distance between the nearest points of the two stones
 */
public record Axis(Stone from, Stone to, Coordinate[] onMap, double[] alongM, double stonesApartM) {
    /** Stones nearer to each other than this have no line between them. */
    private static final double LEAST_LENGTH_M = 0.01;

    /**
     * The geodesic between the nearest points of two stones.
     *
     * @throws InputException if the stones meet
     */
    public static Axis between(Stone from, Stone to, GridGeometry grid) {
        LineString line = nearest(from, to, grid);
        if (length(line, grid) < LEAST_LENGTH_M) {
            throw new InputException("\"" + from.name() + "\" and \"" + to.name()
                    + "\" meet: there is no gap between them to fill; name two stones that lie apart");
        }
        return of(from, to, line, grid);
    }

    /**
     * The part of a drift line between the points nearest to the two stones, turned so that it runs from
     * the first to the second.
     *
     * @param label of the line, for messages
     * @param lonLat longitude and latitude in degrees on the working CRS's own datum
     * @throws InputException if both stones are nearest to the same point of the line
     */
    public static Axis along(String label, LineString lonLat, Stone from, Stone to, GridGeometry grid) {
        Geometry dense = GeodesicEdges.densify(lonLat, grid.crs().geodesic(), GeodesicEdges.PIECE_M);
        Geometry onMap = grid.crs().geographic().to(grid.crs()).apply(dense);
        LengthIndexedLine line = new LengthIndexedLine(onMap);
        double start = foot(onMap, line, from);
        double end = foot(onMap, line, to);
        if (Math.abs(end - start) < LEAST_LENGTH_M) {
            throw new InputException(String.format(Locale.ROOT, "%s: \"%s\" and \"%s\" are both nearest to the same point"
                    + " of the line; use a line that runs from the one to the other", label, from.name(), to.name()));
        }
        LineString part = (LineString) grid.crs().to(grid.crs().geographic()).apply(line.extractLine(start, end));
        return of(from, to, part, grid);
    }

    private static double foot(Geometry onMap, LengthIndexedLine line, Stone stone) {
        Coordinate near = stone.nearestTo(onMap);
        return line.project(near);
    }

    private static Axis of(Stone from, Stone to, LineString lonLat, GridGeometry grid) {
        Geodesic geodesic = grid.crs().geodesic();
        Geometry dense = GeodesicEdges.densify(lonLat, geodesic, GeodesicEdges.PIECE_M);
        Coordinate[] points = dense.getCoordinates();
        double[] alongM = new double[points.length];
        for (int i = 1; i < points.length; i++) {
            alongM[i] = alongM[i - 1] + distance(geodesic, points[i - 1], points[i]);
        }
        Coordinate[] onMap = grid.crs().geographic().to(grid.crs()).apply(dense).getCoordinates();
        return new Axis(from, to, onMap, alongM, length(nearest(from, to, grid), grid));
    }

    /** The two nearest points of the stones, longitude and latitude. */
    private static LineString nearest(Stone from, Stone to, GridGeometry grid) {
        CoordinateTransform toLonLat = grid.crs().to(grid.crs().geographic());
        Coordinate a = from.nearestTo(to.onMap());
        Coordinate b = to.nearestTo(from.onMap());
        return new GeometryFactory().createLineString(new Coordinate[] {toLonLat.apply(a.x, a.y), toLonLat.apply(b.x, b.y)});
    }

    private static double length(LineString twoPoints, GridGeometry grid) {
        return distance(grid.crs().geodesic(), twoPoints.getCoordinateN(0), twoPoints.getCoordinateN(1));
    }

    private static double distance(Geodesic geodesic, Coordinate a, Coordinate b) {
        return geodesic.Inverse(a.y, a.x, b.y, b.x, GeodesicMask.DISTANCE).s12;
    }

    /** Ground length in metres. */
    public double lengthM() {
        return alongM[alongM.length - 1];
    }
}
