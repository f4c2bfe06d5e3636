package org.seacairn.geodesy;

import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.algorithm.RayCrossingCounter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryCollection;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.polygonize.Polygonizer;

/**
 * What a buffer is drawn about, on one continuous run of longitudes: a polygon counts as its boundary
 * and the area within.
 *
 * @param paths densified lines and rings; a path of one vertex is a point
 * @param areas valid polygons
 * @param middle where the sources lie about; only a good place to look from
 */
record BufferSources(List<Coordinate[]> paths, List<Geometry> areas, Coordinate middle) {

    /** @throws org.seacairn.InputException from {@link GeodesicEdges#densify} */
    static BufferSources of(List<Geometry> lonLat, Geodesic geodesic, double maxPieceM) {
        BufferSources sources = new BufferSources(new ArrayList<>(), new ArrayList<>(), middleOf(lonLat));
        for (Geometry geometry : lonLat) {
            sources.add(GeodesicEdges.densify(geometry, geodesic, maxPieceM));
        }
        return sources;
    }

    private void add(Geometry densified) {
        if (densified instanceof GeometryCollection) {
            for (int i = 0; i < densified.getNumGeometries(); i++) {
                add(densified.getGeometryN(i));
            }
            return;
        }
        if (densified.isEmpty()) {
            return;
        }
        double turnsDeg = 360 * Math.rint((middle.x - densified.getEnvelopeInternal().centre().x) / 360);
        if (turnsDeg != 0) {
            densified.apply((Coordinate c) -> c.x += turnsDeg);
            densified.geometryChanged();
        }
        if (densified instanceof Polygon polygon) {
            addPath(polygon.getExteriorRing());
            for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
                addPath(polygon.getInteriorRingN(i));
            }
            areas.add(polygon.isValid() ? polygon : oddlyEnclosed(polygon));
        } else if (densified instanceof LineString || densified instanceof Point) {
            addPath(densified);
        }
    }

    private void addPath(Geometry path) {
        paths.add(CoordinateArrays.removeRepeatedPoints(path.getCoordinates()));
    }

    /** What an odd number of the polygon's rings goes around; rings may cross themselves and each other. */
    private static Geometry oddlyEnclosed(Polygon polygon) {
        Polygonizer faces = new Polygonizer();
        // The union of lines breaks them wherever they meet.
        faces.add(polygon.getBoundary().union());
        List<Geometry> odd = new ArrayList<>();
        for (Object face : faces.getPolygons()) {
            Coordinate inside = ((Polygon) face).getInteriorPoint().getCoordinate();
            boolean isOdd = isWithin(inside, polygon.getExteriorRing());
            for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
                isOdd ^= isWithin(inside, polygon.getInteriorRingN(i));
            }
            if (isOdd) {
                odd.add((Polygon) face);
            }
        }
        return polygon.getFactory().buildGeometry(odd);
    }

    private static boolean isWithin(Coordinate place, LineString ring) {
        return RayCrossingCounter.locatePointInRing(place, ring.getCoordinateSequence()) == Location.INTERIOR;
    }

    /** The direction of the sum of all vertices seen from the centre of the Earth. */
    private static Coordinate middleOf(List<Geometry> lonLat) {
        double[] sum = new double[3];
        for (Geometry geometry : lonLat) {
            for (Coordinate vertex : geometry.getCoordinates()) {
                double lambda = Math.toRadians(vertex.x);
                double phi = Math.toRadians(vertex.y);
                sum[0] += Math.cos(phi) * Math.cos(lambda);
                sum[1] += Math.cos(phi) * Math.sin(lambda);
                sum[2] += Math.sin(phi);
            }
        }
        return new Coordinate(Math.toDegrees(Math.atan2(sum[1], sum[0])),
                Math.toDegrees(Math.atan2(sum[2], Math.hypot(sum[0], sum[1]))));
    }
}
