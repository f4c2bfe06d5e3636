package org.seacairn.score;

import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicLine;

/**
 * One point, line or polygon for the oracle, with geodesic edges cut to 500 m. Distances are those of an
 * azimuthal equidistant plane about the asking place itself, in which 500 m of a geodesic that passes
 * within 5 km are straight to 0.01 mm; a plane about the scene only says which edges to look at.
 */
final class PlainShape {
    private static final double CUT_M = 500;

    private final boolean areal;
    /** Rings or one line or one point, longitude and latitude; and the same on the plane about the scene. */
    private final List<double[][]> lonLat = new ArrayList<>();
    private final List<double[][]> plane = new ArrayList<>();

    /**
     * @param parts rings (closed), or one line, or one point
     * @param centre of the scene, longitude and latitude
     */
    PlainShape(boolean areal, List<double[][]> parts, double[] centre) {
        this.areal = areal;
        for (double[][] part : parts) {
            double[][] cut = cut(part);
            lonLat.add(cut);
            double[][] onPlane = new double[cut.length][];
            for (int i = 0; i < cut.length; i++) {
                onPlane[i] = PlainMap.from(centre, cut[i]);
            }
            plane.add(onPlane);
        }
    }

    private static double[][] cut(double[][] part) {
        List<double[]> cut = new ArrayList<>(List.of(part[0]));
        for (int i = 1; i < part.length; i++) {
            GeodesicLine edge = Geodesic.WGS84.InverseLine(part[i - 1][1], part[i - 1][0], part[i][1], part[i][0]);
            int pieces = (int) Math.ceil(edge.Distance() / CUT_M);
            for (int k = 1; k < pieces; k++) {
                var at = edge.Position(edge.Distance() * k / pieces);
                cut.add(new double[] {at.lon2, at.lat2});
            }
            cut.add(part[i]);
        }
        return cut.toArray(double[][]::new);
    }

    /** A place that asks: longitude and latitude, and the same on the plane about the scene. */
    record Place(double[] lonLat, double[] onPlane) {
        static Place of(double[] lonLat, double[] centre) {
            return new Place(lonLat, PlainMap.from(centre, lonLat));
        }
    }

    /** Whether the place lies in the polygon; never for lines and points. */
    boolean holds(Place place) {
        if (!areal) {
            return false;
        }
        double[] p = place.onPlane();
        boolean in = false;
        for (double[][] ring : plane) {
            for (int i = 1; i < ring.length; i++) {
                double[] a = ring[i - 1];
                double[] b = ring[i];
                if (a[1] > p[1] != b[1] > p[1] && p[0] < a[0] + (p[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])) {
                    in = !in;
                }
            }
        }
        return in;
    }

    /** Metres to the nearest point of the shape, 0 inside a polygon. */
    double distanceM(Place place) {
        return holds(place) ? 0 : edgeDistanceM(place);
    }

    /** Metres to the nearest point of the shape's vertices and edges. */
    double edgeDistanceM(Place place) {
        double[] p = place.onPlane();
        double roughM = Double.POSITIVE_INFINITY;
        for (double[][] part : plane) {
            for (int i = 0; i < part.length; i++) {
                roughM = Math.min(roughM, segmentM(p, part[Math.max(0, i - 1)], part[i]));
            }
        }
        double bestM = Double.POSITIVE_INFINITY;
        for (int k = 0; k < plane.size(); k++) {
            double[][] part = plane.get(k);
            for (int i = 0; i < part.length; i++) {
                if (segmentM(p, part[Math.max(0, i - 1)], part[i]) <= roughM * (1 + 1e-5) + 0.01) {
                    double[] a = PlainMap.from(place.lonLat(), lonLat.get(k)[Math.max(0, i - 1)]);
                    double[] b = PlainMap.from(place.lonLat(), lonLat.get(k)[i]);
                    bestM = Math.min(bestM, segmentM(new double[2], a, b));
                }
            }
        }
        return bestM;
    }

    private static double segmentM(double[] p, double[] a, double[] b) {
        double dx = b[0] - a[0];
        double dy = b[1] - a[1];
        double square = dx * dx + dy * dy;
        double t = square == 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square;
        t = Math.max(0, Math.min(1, t));
        return Math.hypot(a[0] + t * dx - p[0], a[1] + t * dy - p[1]);
    }
}
