package org.seacairn.drop;

/** A descent in small Runge-Kutta steps, all six equations, the force law written out of the parts of the module. */
final class PlainSinking {
    private final SinkingBody body;
    private final Flow flow;
    private double[] y = new double[6];
    private double seconds;

    PlainSinking(SinkingBody body, Flow flow) {
        this.body = body;
        this.flow = flow;
    }

    private double[] rate(double[] y) {
        double deepest = Math.min(y[2], flow.deepestM());
        double re = y[3] - flow.eastMPerS(deepest);
        double rn = y[4] - flow.northMPerS(deepest);
        double sideways = 1025 * (body.baseLateralDragAreaM2() + body.poleLateralDragAreaM2()) / 2 * Math.sqrt(re * re + rn * rn);
        double along = 1025 * body.axialDragAreaM2() / 2 * y[5] * Math.abs(y[5]);
        double m = body.parts().base().massKg() + body.parts().pole().massKg();
        double weight = (m - 1025 * (body.parts().base().volumeM3() + body.parts().pole().volumeM3())) * 9.81;
        double across = m + body.lateralAddedMassKg();
        return new double[] {y[3], y[4], y[5], -sideways * re / across, -sideways * rn / across,
            (weight - along) / (m + body.axialAddedMassKg())};
    }

    void step(double h) {
        double[] a = rate(y);
        double[] b = rate(plus(y, a, h / 2));
        double[] c = rate(plus(y, b, h / 2));
        double[] d = rate(plus(y, c, h));
        double[] next = y.clone();
        for (int i = 0; i < 6; i++) {
            next[i] += h / 6 * (a[i] + 2 * b[i] + 2 * c[i] + d[i]);
        }
        y = next;
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

    double east() {
        return y[0];
    }

    double north() {
        return y[1];
    }

    double z() {
        return y[2];
    }

    double speedEast() {
        return y[3];
    }

    double speedNorth() {
        return y[4];
    }

    double sinking() {
        return y[5];
    }
}
