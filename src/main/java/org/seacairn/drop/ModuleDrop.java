package org.seacairn.drop;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import net.sf.geographiclib.Geodesic;
import org.seacairn.plan.ModuleBody;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.BottomClass;
import org.seacairn.plan.SitingPlan.Current;
import org.seacairn.plan.SitingPlan.CurrentLevel;
import org.seacairn.plan.SitingPlan.CurrentProfile;

/**
 * How a plan's module sinks through its current, where it lands and how it stands, at any depth down to the deepest that
 * the plan allows and its current is known to. Every descent is computed once. Immutable after construction; safe for
 * several threads at once.
 */
public final class ModuleDrop {
    /** Nothing leaves a deck exactly upright. */
    private static final double LEAST_TILT_DEG = 1;

    private final SitingPlan plan;
    private final SinkingBody body;
    private final double deepestM;
    private final List<Sunk> profiles = new ArrayList<>();
    private final Scatter scatter;
    private final ByDepth tiltDeg;
    private final ByDepth currentMomentNm;

    /** The descents through one profile: as stated, in a faster current, and with more drag. */
    private record Sunk(CurrentProfile profile, Flow flow, Descent stated, Descent faster, Descent dragged, Attitude attitude) {}

    private ModuleDrop(SitingPlan plan, ModuleBody parts, Current current) {
        this.plan = plan;
        this.body = SinkingBody.of(parts, plan.module().heightM());
        double knownM = current.profiles().stream().map(Flow::of).mapToDouble(Flow::deepestM).min().orElseThrow();
        this.deepestM = Math.min(plan.limits().deepestM().orElse(knownM), knownM);
        this.scatter = parts.scatterDeg().isPresent() ? new Scatter(parts.scatterDeg().getAsDouble())
                : Scatter.ofMass(body.massKg());
        SinkingBody dragged = body.withDragScaled(1 + parts.drag().uncertainty());
        for (CurrentProfile profile : current.profiles()) {
            Flow flow = Flow.of(profile);
            Flow faster = flow.scaled(1 + current.speedUncertaintyShare()).faster(current.speedUncertaintyMPerS());
            profiles.add(new Sunk(profile, flow, Descent.of(body, flow, deepestM), Descent.of(body, faster, deepestM),
                    Descent.of(dragged, flow, deepestM), attitude(flow, parts.releaseTiltDeg())));
        }
        this.tiltDeg = ByDepth.of(deepestM, depthM -> worst(sunk -> sunk.attitude.worstTiltDegNear(depthM)));
        this.currentMomentNm = ByDepth.of(deepestM, this::momentNm);
    }

    /** Empty unless the plan states of what the module is made, and a current that is known below the surface. */
    public static Optional<ModuleDrop> of(SitingPlan plan) {
        return plan.module().body().flatMap(parts -> plan.current()
                .filter(current -> current.profiles().stream().allMatch(p -> Flow.of(p).deepestM() > 0))
                .map(current -> new ModuleDrop(plan, parts, current)));
    }

    /** The same in a current that is faster by as much at every depth, in every profile. */
    public ModuleDrop inFasterCurrent(double byMPerS) {
        return in(current().profiles(), level -> level.speedMPerS() + byMPerS);
    }

    /** The same in the first profile alone. */
    ModuleDrop firstProfileOnly() {
        return in(current().profiles().subList(0, 1), CurrentLevel::speedMPerS);
    }

    /**
     * Whether the first profile can be scaled by its speed at the surface: where that is less than half the fastest below it,
     * what is scaled up to a strong current at the surface would be none that there is.
     */
    boolean scalesWithSurface() {
        double fastestMPerS = current().profiles().get(0).levels().stream().mapToDouble(CurrentLevel::speedMPerS).max().orElseThrow();
        double surfaceMPerS = profiles.get(0).flow.speedMPerS(0);
        return surfaceMPerS > 0 && surfaceMPerS >= fastestMPerS / 2;
    }

    /** The same in the first profile alone, every level of it scaled so that the uppermost has that speed. */
    ModuleDrop scaledToSurface(double speedMPerS) {
        double factor = speedMPerS == 0 ? 0 : speedMPerS / profiles.get(0).flow.speedMPerS(0);
        return in(current().profiles().subList(0, 1), level -> level.speedMPerS() * factor);
    }

    private ModuleDrop in(List<CurrentProfile> changed, ToDoubleFunction<CurrentLevel> speedMPerS) {
        return new ModuleDrop(plan, body.parts(), new Current(Optional.empty(), changed.stream().map(profile -> new CurrentProfile(profile.name(),
                profile.levels().stream().map(level -> new CurrentLevel(level.depthM(), speedMPerS.applyAsDouble(level), level.towardDeg()))
                        .toList())).toList(), current().speedUncertaintyMPerS(), current().speedUncertaintyShare(),
                current().directionUncertaintyDeg()));
    }

    private Current current() {
        return plan.current().orElseThrow();
    }

    SitingPlan plan() {
        return plan;
    }

    /** Released all but upright, a module that will not stay so falls over by rounding alone, at a depth of chance; then a degree decides. */
    private Attitude attitude(Flow flow, double releaseTiltDeg) {
        if (releaseTiltDeg < LEAST_TILT_DEG) {
            Attitude nudged = Attitude.of(body, flow, LEAST_TILT_DEG, deepestM);
            if (!nudged.rightsItself()) {
                return nudged;
            }
        }
        return Attitude.of(body, flow, releaseTiltDeg, deepestM);
    }

    public SinkingBody body() {
        return body;
    }

    public Scatter scatter() {
        return scatter;
    }

    /** To where depths can be asked for. */
    public double deepestM() {
        return deepestM;
    }

    /** Names of the current's profiles, in the plan's order. */
    public List<String> profiles() {
        return profiles.stream().map(sunk -> sunk.profile.name()).toList();
    }

    public Flow flow(int profile) {
        return profiles.get(profile).flow;
    }

    public Attitude attitude(int profile) {
        return profiles.get(profile).attitude;
    }

    /** @param depthM from 0 to {@link #deepestM()} */
    public Touchdown touchdown(int profile, double depthM) {
        return profiles.get(profile).stated.at(depthM);
    }

    /** What the landing radius is made of in one profile. */
    public LandingParts landing(int profile, double depthM) {
        Sunk sunk = profiles.get(profile);
        Touchdown stated = sunk.stated.at(depthM);
        double turned = 2 * stated.driftM() * Math.sin(Math.toRadians(current().directionUncertaintyDeg()) / 2);
        return new LandingParts(scatter.radius95M(depthM), Math.hypot(apartM(stated, sunk.faster.at(depthM)), turned),
                apartM(stated, sunk.dragged.at(depthM)), plan.bargeUncertaintyM());
    }

    private static double apartM(Touchdown a, Touchdown b) {
        return Math.hypot(a.driftEastM() - b.driftEastM(), a.driftNorthM() - b.driftNorthM());
    }

    /** That of the profile with the largest radius. */
    public LandingParts landing(double depthM) {
        return IntStream.range(0, profiles.size()).mapToObj(i -> landing(i, depthM))
                .max(Comparator.comparingDouble(LandingParts::radiusM)).orElseThrow();
    }

    /** Release points for a target, one for each profile in the plan's order. */
    public List<PlannedDrop> drops(double longitudeDeg, double latitudeDeg, double depthM, Geodesic geodesic) {
        List<PlannedDrop> drops = new ArrayList<>();
        for (int i = 0; i < profiles.size(); i++) {
            drops.add(PlannedDrop.of(profiles.get(i).profile.name(), longitudeDeg, latitudeDeg, touchdown(i, depthM),
                    landing(i, depthM), geodesic));
        }
        return List.copyOf(drops);
    }

    /** Tilt against the vertical that the module may come down with: near that depth, in the worst profile. */
    public double tiltDeg(double depthM) {
        return tiltDeg.at(depthM);
    }

    /**
     * How far the module may come down from where its upright descent leads, by gliding while it leans; the worst profile. No
     * part of the landing radius, whose scatter stands for it.
     */
    public double glideM(double depthM) {
        return worst(sunk -> sunk.attitude.glideM(depthM));
    }

    /** Moment of the current about the underside of a module that stands at that depth, in the worst profile. */
    private double momentNm(double depthM) {
        ModuleBody parts = body.parts();
        CurrentMoment moment = new CurrentMoment(body.baseLateralDragAreaM2(), parts.base().heightM(),
                body.poleLateralDragAreaM2(), body.heightM() - parts.pole().lengthM(), body.heightM(), body.water().densityKgPerM3());
        return worst(sunk -> moment.aboutUndersideNm(heightM -> sunk.flow.speedMPerS(depthM - heightM),
                sunk.profile.levels().stream().mapToDouble(level -> depthM - level.depthM()).toArray()));
    }

    private double worst(ToDoubleFunction<Sunk> measure) {
        return profiles.stream().mapToDouble(measure).max().orElseThrow();
    }

    private Overturning overturning(double depthM) {
        double g = body.water().gravityMPerS2();
        return new Overturning(body.submergedWeightN(), body.massKg() * g * body.centreOfMassM(),
                body.water().densityKgPerM3() * body.volumeM3() * g * body.centreOfBuoyancyM(),
                body.parts().base().widthM() / 2, currentMomentNm.at(depthM));
    }

    /** Factor of safety against overturning; NaN for a slope or a depth of NaN. */
    public double stability(double depthM, double slopeDeg) {
        return Double.isNaN(depthM) ? depthM : overturning(depthM).factor(slopeDeg, tiltDeg(depthM));
    }

    /** The slope up to which the module keeps a factor of safety against overturning; NaN if it does not on level ground. */
    public double steepestSlopeDeg(double depthM, double factor) {
        return overturning(depthM).steepestSlopeDeg(factor, tiltDeg(depthM));
    }

    /** Into a bottom of that class; NaN where it states no strength. */
    public Embedment embedment(double depthM, Optional<BottomClass> bottom) {
        ModuleBody.Base base = body.parts().base();
        OptionalDouble strengthPa = bottom.map(BottomClass::shearStrengthPa).orElse(OptionalDouble.empty());
        double gradient = bottom.map(BottomClass::strengthGradientPaPerM).orElse(OptionalDouble.empty()).orElse(0);
        return Embedment.of(new Bearing(base.widthM(), base.lengthM(), body.solidPlanAreaM2(), strengthPa.orElse(Double.NaN), gradient),
                touchdown(0, depthM).impactEnergyJ(), body.submergedWeightN());
    }

    /**
     * @param slopeDeg of the bottom; NaN where it is not known
     * @param bottom its class, or empty: not mapped
     */
    public Standing standing(double depthM, double slopeDeg, Optional<BottomClass> bottom) {
        Touchdown touchdown = touchdown(0, depthM);
        Embedment embedment = embedment(depthM, bottom);
        return new Standing(touchdown.sinkSpeedMPerS(), touchdown.impactEnergyJ(), tiltDeg(depthM), embedment,
                embedment.reliefM(body.heightM()), stability(depthM, slopeDeg));
    }

    /** Landing radius by depth, never less than at a lesser depth. */
    ByDepth landingRadiusM() {
        return ByDepth.of(deepestM, depthM -> landing(depthM).radiusM()).neverFalling();
    }

    /** {@link #steepestSlopeDeg} by depth. */
    public ByDepth steepestSlopeDeg(double factor) {
        return ByDepth.of(deepestM, depthM -> steepestSlopeDeg(depthM, factor));
    }

    /** Embedment in metres by depth, never less than at a lesser depth. */
    public ByDepth embedmentM(BottomClass bottom) {
        return ByDepth.of(deepestM, depthM -> embedment(depthM, Optional.of(bottom)).depthM()).neverFalling();
    }
}
