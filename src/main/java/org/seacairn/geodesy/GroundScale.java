package org.seacairn.geodesy;

import net.sf.geographiclib.Geodesic;

/**
 * How displacements on a projected map become displacements on the ellipsoid.
 *
 * <p>The map's inverse is differentiated numerically (central differences over 200 m, error below
 * 1e-9), so that it serves every projection, conformal or not. Safe for several threads at once.
 */
public final class GroundScale {
    private static final double STEP_M = 100;
    /** Over this far the scale of a map is taken as linear; UTM's curvature costs 1e-7 over it. */
    private static final double GRADIENT_STEP_M = 2500;

    private final CoordinateTransform toLonLat;
    private final double a;
    private final double e2;

    /** @param projected a metric projected CRS */
    public GroundScale(Crs projected) {
        this.toLonLat = projected.to(projected.geographic());
        Geodesic geodesic = projected.geodesic();
        this.a = geodesic.EquatorialRadius();
        double f = geodesic.Flattening();
        this.e2 = f * (2 - f);
    }

    /**
     * The linear map from map displacements to ground displacements about one place.
     *
     * @param eastX ground metres east for one map metre in x
     * @param eastY ground metres east for one map metre in y
     * @param northX ground metres north for one map metre in x
     * @param northY ground metres north for one map metre in y
     * @param growthX relative growth of ground length for one map metre moved in x
     * @param growthY relative growth of ground length for one map metre moved in y
     */
    public record Frame(double x, double y, double eastX, double eastY, double northX, double northY,
            double growthX, double growthY) {

        /** Ground metres for a map metre, the geometric mean over directions. */
        public double mean() {
            return Math.sqrt(Math.abs(eastX * northY - eastY * northX));
        }

        /**
         * Ground length in metres from one map point to another, both within some tens of
         * kilometres of the frame's own place: the linear map taken at the midpoint.
         */
        public double lengthM(double x0, double y0, double x1, double y1) {
            double dx = x1 - x0;
            double dy = y1 - y0;
            double growth = 1 + growthX * ((x0 + x1) / 2 - x) + growthY * ((y0 + y1) / 2 - y);
            return Math.hypot(eastX * dx + eastY * dy, northX * dx + northY * dy) * growth;
        }
    }

    /** The frame about a map point. */
    public Frame at(double x, double y) {
        double[] j = jacobian(x, y);
        double g = GRADIENT_STEP_M;
        double mean = mean(j);
        double growthX = (mean(jacobian(x + g, y)) - mean(jacobian(x - g, y))) / (2 * g * mean);
        double growthY = (mean(jacobian(x, y + g)) - mean(jacobian(x, y - g))) / (2 * g * mean);
        return new Frame(x, y, j[0], j[1], j[2], j[3], growthX, growthY);
    }

    /**
     * The largest relative error of a length measured on the map about a point, over all directions:
     * 0.0004 where the map's scale is 0.9996.
     */
    public double scaleError(double x, double y) {
        double[] j = jacobian(x, y);
        // Singular values of the 2 x 2 matrix: ground metres for a map metre along its two axes.
        double sum = j[0] * j[0] + j[1] * j[1] + j[2] * j[2] + j[3] * j[3];
        double det = j[0] * j[3] - j[1] * j[2];
        double root = Math.sqrt(Math.max(0, sum * sum / 4 - det * det));
        double most = Math.sqrt(sum / 2 + root);
        double least = Math.abs(det) / most;
        return Math.max(Math.abs(1 / least - 1), Math.abs(1 / most - 1));
    }

    private static double mean(double[] j) {
        return Math.sqrt(Math.abs(j[0] * j[3] - j[1] * j[2]));
    }

    private double[] jacobian(double x, double y) {
        double[] p = {x - STEP_M, y, x + STEP_M, y, x, y - STEP_M, x, y + STEP_M, x, y};
        toLonLat.apply(p);
        double latitude = Math.toRadians(p[9]);
        double w2 = 1 - e2 * Math.sin(latitude) * Math.sin(latitude);
        // Radii of curvature in the prime vertical and the meridian, per degree (Snyder 1987, eq. 4-20, 4-19).
        double east = a / Math.sqrt(w2) * Math.cos(latitude) * Math.toRadians(1);
        double north = a * (1 - e2) / (w2 * Math.sqrt(w2)) * Math.toRadians(1);
        double span = 2 * STEP_M;
        return new double[] {
            east * turn(p[2] - p[0]) / span, east * turn(p[6] - p[4]) / span,
            north * (p[3] - p[1]) / span, north * (p[7] - p[5]) / span
        };
    }

    /** A difference of longitudes in degrees, brought into -180..180. */
    private static double turn(double degrees) {
        return degrees - 360 * Math.rint(degrees / 360);
    }
}
