package org.seacairn.geodesy;

import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicLine;
import net.sf.geographiclib.GeodesicMask;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.InputException;

/**
 * The edges of a layer, drawn where the house says they run.
 *
 * <p><b>Convention of the house:</b> an edge between two vertices of any layer is the geodesic
 * between them on the ellipsoid of the working CRS, whatever the layer's own CRS. Vertices are taken
 * to longitude and latitude first; what lies between them is then the same curve for everyone. Of a
 * layer whose plan says otherwise, {@link RhumbEdges} first makes vertices that this holds for.
 *
 * <p>Densifying replaces each edge by points of its geodesic so close together that a straight line
 * between neighbours, drawn in a projection, stays on it. In a transverse Mercator projection a piece of
 * length L at a distance x from the central meridian bows by L²·x / (8R²): for 1000 m at most
 * 1.04 mm at the border of a UTM zone on the equator, under 1 mm beyond 15 degrees of latitude.
 *
 * <p>Longitudes run on continuously along each line and ring: an edge over the antimeridian goes the
 * shorter way and the vertices beyond it lie past 180 or before -180. Holes follow the shell of their
 * polygon; the parts of a collection each stay where their first vertex is. An edge from a longitude to
 * that longitude plus or minus 360 is no edge at all.
 */
public final class GeodesicEdges {
    /** The longest piece in general use, in metres. */
    public static final double PIECE_M = 1000;

    private final Geodesic geodesic;
    private final double maxPieceM;

    private GeodesicEdges(Geodesic geodesic, double maxPieceM) {
        this.geodesic = geodesic;
        this.maxPieceM = maxPieceM;
    }

    /**
     * Adds points along each edge. Every vertex stays as it is (save whole turns of longitude), and
     * an edge gets the same points, bit for bit, whichever way it is walked, so that neighbours which
     * shared an edge still share it.
     *
     * @param lonLat longitude and latitude in degrees; a z value is dropped
     * @param maxPieceM no piece is longer than this, in metres
     * @throws InputException if a coordinate is no place on Earth or a polygon goes around a pole
     */
    public static Geometry densify(Geometry lonLat, Geodesic geodesic, double maxPieceM) {
        if (!(maxPieceM > 0)) {
            throw new IllegalArgumentException("a piece of " + maxPieceM + " m");
        }
        return EdgeWalk.draw(lonLat, new GeodesicEdges(geodesic, maxPieceM)::edge);
    }

    /** Both ends and the points between, longitudes running on from that of {@code a}. */
    private List<Coordinate> edge(Coordinate a, Coordinate b) {
        GeodesicLine line = geodesic.InverseLine(a.y, a.x, b.y, b.x,
                GeodesicMask.LATITUDE | GeodesicMask.LONGITUDE | GeodesicMask.DISTANCE_IN);
        double lengthM = line.Distance();
        int pieces = Math.max(1, Math.toIntExact((long) Math.ceil(lengthM / maxPieceM)));
        List<Coordinate> edge = new ArrayList<>(pieces + 1);
        edge.add(a);
        for (int i = 1; i < pieces; i++) {
            edge.add(at(line, lengthM * i / pieces));
        }
        edge.add(at(line, lengthM));
        return edge;
    }

    private static Coordinate at(GeodesicLine line, double alongM) {
        GeodesicData point = line.Position(alongM,
                GeodesicMask.LATITUDE | GeodesicMask.LONGITUDE | GeodesicMask.LONG_UNROLL);
        return new Coordinate(point.lon2, point.lat2);
    }
}
