package org.seacairn.cli;

import java.util.Arrays;
import java.util.List;

/**
 * Sinking, landing and standing of one module, written from the formulas alone: Runge-Kutta in small equal steps, sums over
 * thin slices, nothing shared with package drop. The module is {@link Body}, water {@link Profile}.
 */
final class PlainDrop {
    static final double RHO = 1025;
    static final double G = 9.81;
    private static final double STEP_S = 0.02;

    /**
     * Everything in SI units; base: {@code length} is the longer side, or the diameter.
     *
     * @param cd drag coefficients: base axial, base lateral, pole axial, pole lateral
     * @param ca added-mass coefficients: base axial, base lateral, pole lateral
     * @param scatterDeg NaN where the module states none
     */
    record Body(String shape, double height, double width, double length, double baseHeight, double baseMass, double baseVolume, double open,
            double diameter, double poleLength, double poleMass, double poleVolume, double[] cd, double[] ca, double dragUncertainty,
            double scatterDeg) {
        boolean round() {
            return shape.equals("round");
        }

        double mass() {
            return baseMass + poleMass;
        }

        double weightN() {
            return (mass() - RHO * (baseVolume + poleVolume)) * G;
        }

        double plan() {
            return width * length * (round() ? Math.PI / 4 : 1);
        }

        double poleOuter() {
            return Math.PI * diameter * diameter / 4 * poleLength;
        }

        double axialDrag() {
            return cd[0] * plan() * (1 - open) + cd[2] * Math.PI * diameter * diameter / 4;
        }

        double lateralDrag() {
            return cd[1] * length * baseHeight + cd[3] * diameter * poleLength;
        }

        private double perforation() {
            double p = 100 * open;
            return p <= 5 ? 1 : p < 34 ? 0.7 + 0.3 * Math.cos(Math.PI * (p - 5) / 34) : Math.exp((10 - p) / 28);
        }

        double axialMass() {
            double reference = round() ? 4 * Math.PI / 3 * Math.pow(width / 2, 3) : Math.PI / 4 * width * width * length;
            return mass() + RHO * (ca[0] * reference * perforation() + Math.max(0, poleOuter() - poleVolume));
        }

        double lateralMass() {
            double inOpenings = Math.max(0, Math.min(open * plan() * baseHeight, plan() * baseHeight - baseVolume));
            return mass() + RHO * (ca[1] * Math.PI / 4 * baseHeight * baseHeight * length + inOpenings
                    + ca[2] * poleOuter() + Math.max(0, poleOuter() - poleVolume));
        }

        /** Moment of weight less that of buoyancy about the underside at unit sine, in newton metres. */
        double uprightMoment() {
            double poleMiddle = height - poleLength / 2;
            return G * ((baseMass - RHO * baseVolume) * baseHeight / 2 + (poleMass - RHO * poleVolume) * poleMiddle);
        }

        /** With both drag areas larger by a share. */
        Body draggier(double share) {
            double[] more = Arrays.stream(cd).map(c -> c * (1 + share)).toArray();
            return new Body(shape, height, width, length, baseHeight, baseMass, baseVolume, open, diameter, poleLength, poleMass, poleVolume,
                    more, ca, dragUncertainty, scatterDeg);
        }
    }

    /** Levels of depth, speed and direction toward, from the surface down. */
    record Profile(String name, List<double[]> levels) {
        Profile changed(double addMPerS, double factor, double turnDeg) {
            return new Profile(name, levels.stream()
                    .map(l -> new double[] {l[0], Math.max(0, l[1] * factor + addMPerS), l[2] + turnDeg}).toList());
        }

        /** East and north. */
        double[] at(double depth) {
            double[] above = levels.get(0);
            for (double[] level : levels) {
                if (level[0] >= depth) {
                    double share = level[0] == above[0] ? 1 : Math.max(0, depth - above[0]) / (level[0] - above[0]);
                    double[] a = components(above);
                    double[] b = components(level);
                    return depth <= levels.get(0)[0] ? components(levels.get(0))
                            : new double[] {a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])};
                }
                above = level;
            }
            return components(above);
        }

        private static double[] components(double[] level) {
            return new double[] {level[1] * Math.sin(Math.toRadians(level[2])), level[1] * Math.cos(Math.toRadians(level[2]))};
        }
    }

    /** 95 %: speed as metres per second and as a share, direction, barge. */
    record Doubts(double speedMPerS, double speedShare, double directionDeg, double bargeM) {}

    /** A way down, in rows of time, east, north, depth, and their speeds. */
    static final class Track {
        private double[][] rows = new double[1024][];
        private int count;

        Track(Body body, Profile profile, double deepest) {
            double[] y = new double[6];
            add(0, y);
            for (int i = 1; y[2] < deepest; i++) {
                double[] k1 = rate(body, profile, y);
                double[] k2 = rate(body, profile, moved(y, k1, STEP_S / 2));
                double[] k3 = rate(body, profile, moved(y, k2, STEP_S / 2));
                double[] k4 = rate(body, profile, moved(y, k3, STEP_S));
                double[] next = new double[6];
                for (int j = 0; j < 6; j++) {
                    next[j] = y[j] + STEP_S / 6 * (k1[j] + 2 * k2[j] + 2 * k3[j] + k4[j]);
                }
                y = next;
                add(i * STEP_S, y);
            }
        }

        private void add(double t, double[] y) {
            if (count == rows.length) {
                rows = Arrays.copyOf(rows, 2 * count);
            }
            rows[count++] = new double[] {t, y[0], y[1], y[2], y[3], y[4], y[5]};
        }

        private static double[] moved(double[] y, double[] rate, double h) {
            double[] moved = new double[6];
            for (int j = 0; j < 6; j++) {
                moved[j] = y[j] + h * rate[j];
            }
            return moved;
        }

        private static double[] rate(Body b, Profile profile, double[] y) {
            double[] current = profile.at(y[2]);
            double east = y[3] - current[0];
            double north = y[4] - current[1];
            double across = RHO / 2 * b.lateralDrag() * Math.hypot(east, north) / b.lateralMass();
            return new double[] {y[3], y[4], y[5], -across * east, -across * north,
                (b.weightN() - RHO / 2 * b.axialDrag() * Math.abs(y[5]) * y[5]) / b.axialMass()};
        }

        /** Time, east, north, depth, speeds east, north and down. */
        double[] at(double depth) {
            int low = 0;
            int high = count - 1;
            while (high - low > 1) {
                int middle = (low + high) / 2;
                if (rows[middle][3] <= depth) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            double share = (depth - rows[low][3]) / (rows[high][3] - rows[low][3]);
            double[] found = new double[7];
            for (int j = 0; j < 7; j++) {
                found[j] = rows[low][j] + share * (rows[high][j] - rows[low][j]);
            }
            return found;
        }
    }

    private final Body body;
    private final Doubts doubts;
    final Profile profile;
    final Track track;
    private final Track faster;
    private final Track turned;
    private final Track draggier;

    PlainDrop(Body body, Profile profile, Doubts doubts, double deepest) {
        this.body = body;
        this.doubts = doubts;
        this.profile = profile;
        track = new Track(body, profile, deepest);
        faster = new Track(body, profile.changed(doubts.speedMPerS(), 1 + doubts.speedShare(), 0), deepest);
        turned = new Track(body, profile.changed(0, 1, doubts.directionDeg()), deepest);
        draggier = new Track(body.draggier(body.dragUncertainty()), profile, deepest);
    }

    /** Landing radius, then its parts: scatter, drift, drag, barge. */
    double[] radius(double depth) {
        double t = body.mass() / 1000;
        double alpha = Double.isNaN(body.scatterDeg()) ? t < 2 ? 15 : t <= 8 ? 9 : 5 : body.scatterDeg();
        double scatter = Math.sqrt(-2 * Math.log(0.05)) * depth * Math.tan(Math.toRadians(alpha));
        double drift = Math.hypot(apart(faster, depth), apart(turned, depth));
        double drag = apart(draggier, depth);
        return new double[] {Math.sqrt(scatter * scatter + drift * drift + drag * drag + doubts.bargeM() * doubts.bargeM()),
            scatter, drift, drag, doubts.bargeM()};
    }

    private double apart(Track other, double depth) {
        return Math.hypot(other.at(depth)[1] - track.at(depth)[1], other.at(depth)[2] - track.at(depth)[2]);
    }

    double energyJ(double depth) {
        double w = track.at(depth)[6];
        return body.axialMass() * w * w / 2;
    }

    private static double resistanceN(Body b, double strength, double gradient, double z) {
        double narrow = b.width();
        double ratio = b.round() ? 1 : b.width() / b.length();
        return 5 * (1 + 0.2 * Math.min(z / narrow, 2.5)) * (1 + 0.2 * ratio) * (strength + gradient * z) * b.plan() * (1 - b.open());
    }

    /** Depth of the underside in the mud, infinite where it does not stop, and the resistance there over the weight. */
    static double[] embedment(Body b, double energyJ, double strength, double gradient) {
        double work = 0;
        double weight = b.weightN();
        if (gradient == 0 && resistanceN(b, strength, 0, 2.5 * b.width()) <= weight) {
            // It may still be stopped before that if it is slow; an impact never is (E > 0 and Q <= W all the way).
            return new double[] {Double.POSITIVE_INFINITY, 0};
        }
        double z = 0;
        double q = resistanceN(b, strength, gradient, 0);
        double left = energyJ;
        while (true) {
            double h = Math.max(5e-4, 5e-4 * z);
            double next = resistanceN(b, strength, gradient, z + h);
            work += (q + next) / 2 * h;
            double then = energyJ + weight * (z + h) - work;
            if (then <= 0) {
                double at = z + h * left / (left - then);
                return new double[] {at, resistanceN(b, strength, gradient, at) / weight};
            }
            left = then;
            z += h;
            q = next;
        }
    }

    /** Moment of the current about the underside, in newton metres. */
    static double momentNm(Body b, Profile p, double depth) {
        double base = Math.pow(speed(p, depth - b.baseHeight() / 2), 2) * b.baseHeight() / 2 * b.cd()[1] * b.length() * b.baseHeight();
        double pole = 0;
        int slices = 200;
        double ds = b.poleLength() / slices;
        for (int i = 0; i < slices; i++) {
            double s = b.height() - b.poleLength() + (i + 0.5) * ds;
            pole += Math.pow(speed(p, depth - s), 2) * s * ds;
        }
        return RHO / 2 * (base + b.cd()[3] * b.diameter() * pole);
    }

    private static double speed(Profile p, double depth) {
        double[] current = p.at(depth);
        return Math.hypot(current[0], current[1]);
    }

    /** Factor of safety against overturning about the lower edge, on ground and with a tilt that together lean by an angle. */
    static double stability(Body b, double momentNm, double leanDeg) {
        double lean = Math.toRadians(leanDeg);
        double turning = b.uprightMoment() * Math.sin(lean) + momentNm;
        return leanDeg >= 90 ? 0 : turning <= 0 ? Double.POSITIVE_INFINITY : b.weightN() * b.width() / 2 * Math.cos(lean) / turning;
    }

    /** Steepest slope on which that factor is at least the one asked, NaN if not even on level ground. */
    static double steepestDeg(Body b, double momentNm, double tiltDeg, double asked) {
        double steepest = Double.NaN;
        for (double slope = 0; slope < 90; slope += 0.05) {
            if (stability(b, momentNm, slope + tiltDeg) < asked) {
                return steepest;
            }
            steepest = slope;
        }
        return steepest;
    }
}
