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
    /** Over this far the strain of a map is taken as linear; UTM's curvature costs 1e-7 over it. */
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
     * How lengths on the map become lengths on the ground about one place: a linear map there, and a
     * strain that grows linearly away from it.
     *
     * @param eastX ground metres east for one map metre in x
     * @param eastY ground metres east for one map metre in y
     * @param northX ground metres north for one map metre in x
     * @param northY ground metres north for one map metre in y
     * @param strain the growth of ground lengths with distance from the place
     */
    public record Frame(double x, double y, double eastX, double eastY, double northX, double northY, Strain strain) {

        /** Ground metres for a map metre, the geometric mean over directions. */
        public double mean() {
            return Math.sqrt(Math.abs(determinant()));
        }

        private double determinant() {
            return eastX * northY - eastY * northX;
        }

        /** Ground metres east of the place. */
        public double east(double mapX, double mapY) {
            return eastX * (mapX - x) + eastY * (mapY - y);
        }

        /** Ground metres north of the place. */
        public double north(double mapX, double mapY) {
            return northX * (mapX - x) + northY * (mapY - y);
        }

        /** Ground length in metres from one map point to another, both within some tens of kilometres. */
        public double lengthM(double x0, double y0, double x1, double y1) {
            double e = east(x0, y0);
            double n = north(x0, y0);
            return Math.sqrt(strain.squared(e, n, east(x1, y1) - e, north(x1, y1) - n));
        }
    }

    /**
     * The symmetric strain of ground lengths, linear in ground metres east and north of a frame's place;
     * three components, each with its gradient per metre east and per metre north.
     */
    public record Strain(double eeE, double eeN, double enE, double enN, double nnE, double nnN) {

        /**
         * Squared ground length in square metres of a displacement (ve, vn) that starts at (e, n): the
         * strain is taken at its midpoint, which makes the error third order in the length.
         */
        public double squared(double e, double n, double ve, double vn) {
            double me = e + ve / 2;
            double mn = n + vn / 2;
            double ee = eeE * me + eeN * mn;
            double en = enE * me + enN * mn;
            double nn = nnE * me + nnN * mn;
            return ve * ve + vn * vn + 2 * (ee * ve * ve + 2 * en * ve * vn + nn * vn * vn);
        }
    }

    /** The frame about a map point. */
    public Frame at(double x, double y) {
        double[] j = jacobian(x, y);
        double g = GRADIENT_STEP_M;
        double[] alongX = strain(j, jacobian(x + g, y), jacobian(x - g, y));
        double[] alongY = strain(j, jacobian(x, y + g), jacobian(x, y - g));
        double det = j[0] * j[3] - j[1] * j[2];
        // A gradient per map metre becomes one per ground metre by the inverse transpose.
        double[] perEast = new double[3];
        double[] perNorth = new double[3];
        for (int i = 0; i < 3; i++) {
            perEast[i] = (alongX[i] * j[3] - alongY[i] * j[2]) / det;
            perNorth[i] = (alongY[i] * j[0] - alongX[i] * j[1]) / det;
        }
        return new Frame(x, y, j[0], j[1], j[2], j[3],
                new Strain(perEast[0], perNorth[0], perEast[1], perNorth[1], perEast[2], perNorth[2]));
    }

    /** Symmetric part, per map metre, of the relative change of the linear map between two places. */
    private static double[] strain(double[] j, double[] ahead, double[] behind) {
        double det = j[0] * j[3] - j[1] * j[2];
        double span = 2 * GRADIENT_STEP_M;
        double[] d = new double[4];
        for (int i = 0; i < 4; i++) {
            d[i] = (ahead[i] - behind[i]) / span;
        }
        // d times the inverse of j.
        double ee = (d[0] * j[3] - d[1] * j[2]) / det;
        double en = (d[1] * j[0] - d[0] * j[1]) / det;
        double ne = (d[2] * j[3] - d[3] * j[2]) / det;
        double nn = (d[3] * j[0] - d[2] * j[1]) / det;
        return new double[] {ee, (en + ne) / 2, nn};
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
