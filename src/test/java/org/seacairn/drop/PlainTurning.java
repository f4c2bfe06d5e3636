package org.seacairn.drop;

import org.seacairn.plan.ModuleBody;
import org.seacairn.plan.ModuleBody.Base;
import org.seacairn.plan.ModuleBody.Pole;
import org.seacairn.plan.ModuleBody.Shape;

/**
 * A module that sinks and turns, by Lagrange's equations in earth axes: the mass matrix M(tilt) of forward, down and tilt is summed up from
 * the parts, its slope taken by differences, M q'' + M' turn q' - 1/2 (0, 0, q'.M'.q') = Q with q' relative to the water,
 * in small Runge-Kutta steps. The pole and the plate are cut into many even strips.
 */
final class PlainTurning {
    private static final int STRIPS = 200;
    private static final double RHO = 1025;

    private final SinkingBody body;
    private final Flow flow;
    private final double towardDeg;
    private final boolean baseMunk;
    private final Base base;
    private final Pole pole;
    /** x, z, tilt and their rates. */
    private double[] y = new double[6];
    private double seconds;

    PlainTurning(SinkingBody body, Flow flow, double towardDeg, boolean baseMunk, double tiltDeg) {
        this.body = body;
        this.flow = flow;
        this.towardDeg = towardDeg;
        this.baseMunk = baseMunk;
        ModuleBody parts = body.parts();
        base = parts.base();
        pole = parts.pole();
        y[2] = Math.toRadians(tiltDeg);
    }

    private double u(double depth) {
        double d = Math.min(depth, flow.deepestM());
        double toward = Math.toRadians(towardDeg);
        return flow.eastMPerS(d) * Math.sin(toward) + flow.northMPerS(d) * Math.cos(toward);
    }

    /** Adds mass times the square of one component of the velocity of the point at height s. */
    private static void add(double[][] m, double mass, double s, double tilt, double nx, double nz) {
        double[] j = {nx, nz, s * (Math.cos(tilt) * nx + Math.sin(tilt) * nz)};
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                m[i][k] += mass * j[i] * j[k];
            }
        }
    }

    private double[][] mass(double tilt) {
        double[][] m = new double[3][3];
        double sin = Math.sin(tilt);
        double cos = Math.cos(tilt);
        double w = base.widthM();
        boolean round = base.shape() == Shape.ROUND;
        double middle = base.heightM() / 2;
        add(m, base.massKg(), middle, tilt, 1, 0);
        add(m, base.massKg(), middle, tilt, 0, 1);
        m[2][2] += base.massKg() * (round ? w * w / 16 + Math.pow(base.heightM(), 2) / 12
                : (w * w + Math.pow(base.heightM(), 2)) / 12);
        add(m, baseAcross(), middle, tilt, cos, sin);
        add(m, body.axialAddedMassKg(), 0, tilt, sin, -cos);
        double discRadius = round ? w / 2 : Math.sqrt(w * w / Math.PI);
        m[2][2] += AddedMassCoefficients.perforation(base.openShare()) * 16 * RHO * Math.pow(discRadius, 5) / 45 * base.lengthM() / w;
        for (int i = 0; i < STRIPS; i++) {
            double s = strip(i);
            add(m, pole.massKg() / STRIPS, s, tilt, 1, 0);
            add(m, pole.massKg() / STRIPS, s, tilt, 0, 1);
            add(m, (body.lateralAddedMassKg() - baseAcross()) / STRIPS, s, tilt, cos, sin);
        }
        return m;
    }

    private double baseAcross() {
        return RHO * body.added().baseLateralM3();
    }

    private double strip(int i) {
        return body.heightM() - pole.lengthM() + (i + 0.5) * pole.lengthM() / STRIPS;
    }

    /** Adds the generalized force of drag along (nx, nz) on the point at height s and offset o across. */
    private void drag(double[] q, double[] y, double area, double s, double o, double nx, double nz) {
        double sin = Math.sin(y[2]);
        double cos = Math.cos(y[2]);
        double armX = s * cos - o * sin;
        double armZ = s * sin + o * cos;
        double vx = y[3] + y[5] * armX - u(y[1] - s * cos + o * sin);
        double vz = y[4] + y[5] * armZ;
        double speed = vx * nx + vz * nz;
        double force = -RHO / 2 * area * Math.abs(speed) * speed;
        q[0] += force * nx;
        q[1] += force * nz;
        q[2] += force * (nx * armX + nz * armZ);
    }

    private double[] rate(double[] y) {
        double sin = Math.sin(y[2]);
        double cos = Math.cos(y[2]);
        double[] q = new double[3];
        q[1] = body.submergedWeightN();
        q[2] = 9.81 * sin * (body.massKg() * body.centreOfMassM() - RHO * body.volumeM3() * body.centreOfBuoyancyM());
        double w = base.widthM();
        double areas = 0;
        for (int i = 0; i < STRIPS; i++) {
            areas += chord(i, w);
        }
        for (int i = 0; i < STRIPS; i++) {
            drag(q, y, body.drag().baseAxial().product() * chord(i, w) / areas, 0, ((i + 0.5) / STRIPS - 0.5) * w, sin, -cos);
            drag(q, y, body.poleLateralDragAreaM2() / STRIPS, strip(i), 0, cos, sin);
        }
        drag(q, y, body.baseLateralDragAreaM2(), base.heightM() / 2, 0, cos, sin);
        drag(q, y, body.drag().poleAxial().product(), body.heightM() - pole.lengthM() / 2, 0, sin, -cos);

        double[] v = {y[3] - u(y[1]), y[4], y[5]};
        if (!baseMunk) {
            double axial = body.axialAddedMassKg() - RHO * body.added().waterInPoleM3();
            double along = v[0] * sin - v[1] * cos;
            double across = v[0] * cos + v[1] * sin + v[2] * base.heightM() / 2;
            q[2] -= (axial - baseAcross()) * along * across;
        }
        double d = 1e-5;
        double[][] up = mass(y[2] + d);
        double[][] down = mass(y[2] - d);
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                double slope = (up[i][k] - down[i][k]) / (2 * d);
                q[i] -= slope * v[2] * v[k];
                q[2] += slope * v[i] * v[k] / 2;
            }
        }
        double[] a = solve(mass(y[2]), q);
        return new double[] {y[3], y[4], y[5], a[0], a[1], a[2]};
    }

    private double chord(int i, double w) {
        double o = ((i + 0.5) / STRIPS - 0.5) * w;
        return base.shape() == Shape.ROUND ? Math.sqrt(w * w / 4 - o * o) : 1;
    }

    private static double[] solve(double[][] m, double[] q) {
        for (int i = 0; i < 3; i++) {
            for (int k = i + 1; k < 3; k++) {
                double f = m[k][i] / m[i][i];
                for (int c = i; c < 3; c++) {
                    m[k][c] -= f * m[i][c];
                }
                q[k] -= f * q[i];
            }
        }
        double[] a = new double[3];
        for (int i = 2; i >= 0; i--) {
            double sum = q[i];
            for (int k = i + 1; k < 3; k++) {
                sum -= m[i][k] * a[k];
            }
            a[i] = sum / m[i][i];
        }
        return a;
    }

    void step(double h) {
        double[] a = rate(y);
        double[] b = rate(plus(y, a, h / 2));
        double[] c = rate(plus(y, b, h / 2));
        double[] d = rate(plus(y, c, h));
        for (int i = 0; i < 6; i++) {
            y[i] += h / 6 * (a[i] + 2 * b[i] + 2 * c[i] + d[i]);
        }
        seconds += h;
    }

    private static double[] plus(double[] y, double[] rate, double h) {
        double[] sum = y.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += h * rate[i];
        }
        return sum;
    }

    double seconds() {
        return seconds;
    }

    double forwardM() {
        return y[0];
    }

    double depthM() {
        return y[1];
    }

    double tiltDeg() {
        return Math.toDegrees(y[2]);
    }
}
