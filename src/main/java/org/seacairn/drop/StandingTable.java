package org.seacairn.drop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.BottomClass;

/**
 * What a module can stand: its landing at several depths, on every bottom that the plan allows, in the plan's first
 * current profile as stated and scaled to several speeds at the surface.
 */
public final class StandingTable {
    private static final double KNOT_M_PER_S = 1852.0 / 3600;
    private static final int MOST_DEPTHS = 10;
    /** Without a limit in the plan: where it would just tip. */
    private static final double JUST_STANDS = 1;

    private StandingTable() {}

    /**
     * @param bottom name of the class, or empty text: none is planned
     * @param surfaceCurrentMPerS speed of the uppermost level
     * @param asStated whether the current is the plan's own, not scaled
     * @param steepestDeg slope up to which it keeps the factor asked for; NaN: not even on level ground
     */
    public record Row(double depthM, String bottom, double surfaceCurrentMPerS, boolean asStated, Touchdown touchdown,
            double landingRadiusM, double tiltDeg, Embedment embedment, double reliefM, double steepestDeg) {}

    /** The factor of safety against overturning that the steepest slopes are for. */
    public static double factor(SitingPlan plan) {
        return plan.limits().stability().orElse(JUST_STANDS);
    }

    /** By bottom, then current, then depth. */
    public static List<Row> of(SitingPlan plan, ModuleDrop drop) {
        List<Optional<BottomClass>> bottoms = new ArrayList<>();
        plan.bottom().ifPresent(b -> b.classes().stream().filter(c -> c.suitability().isPresent()).forEach(c -> bottoms.add(Optional.of(c))));
        if (bottoms.isEmpty()) {
            bottoms.add(Optional.empty());
        }
        double statedMPerS = drop.flow(0).speedMPerS(0);
        List<ModuleDrop> currents = new ArrayList<>();
        List<Double> speeds = new ArrayList<>();
        for (double kn = 0; kn <= 4; kn++) {
            double speed = kn * KNOT_M_PER_S;
            if (speed == 0 || drop.scalesWithSurface()) {
                currents.add(drop.scaledToSurface(speed));
                speeds.add(speed);
            }
        }
        currents.add(drop.firstProfileOnly());
        speeds.add(statedMPerS);
        List<Row> rows = new ArrayList<>();
        for (Optional<BottomClass> bottom : bottoms) {
            for (int c = 0; c < currents.size(); c++) {
                for (double depthM : depths(plan, drop)) {
                    rows.add(row(plan, currents.get(c), depthM, bottom, speeds.get(c), c == currents.size() - 1));
                }
            }
        }
        return List.copyOf(rows);
    }

    private static Row row(SitingPlan plan, ModuleDrop drop, double depthM, Optional<BottomClass> bottom, double speedMPerS, boolean asStated) {
        Embedment embedment = drop.embedment(depthM, bottom);
        return new Row(depthM, bottom.map(BottomClass::name).orElse(""), speedMPerS, asStated, drop.touchdown(0, depthM),
                drop.landing(0, depthM).radiusM(), drop.tiltDeg(depthM), embedment, embedment.reliefM(drop.body().heightM()),
                drop.steepestSlopeDeg(depthM, factor(plan)));
    }

    /** Round depths between the shallowest and the deepest that a plan allows, with both ends. */
    public static double[] depths(SitingPlan plan, ModuleDrop drop) {
        return depths(plan.limits().shallowestM().orElse(0), drop.deepestM());
    }

    static double[] depths(double shallowestM, double deepestM) {
        double from = Math.min(shallowestM, deepestM);
        double step = 1;
        for (int i = 0; (deepestM - from) / step > MOST_DEPTHS - 2; i++) {
            step *= i % 3 == 1 ? 2.5 : 2;
        }
        double first = (Math.floor(from / step) + 1) * step;
        double last = deepestM;
        double by = step;
        return DoubleStream.concat(DoubleStream.of(from), DoubleStream.concat(
                DoubleStream.iterate(first, d -> d < last, d -> d + by), DoubleStream.of(deepestM))).distinct().toArray();
    }
}
