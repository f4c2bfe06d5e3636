package org.seacairn.drop;

import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;

/**
 * Equations of a module that sinks and turns in one vertical plane: a rigid body with added mass (Kirchhoff; Lamb,
 * Hydrodynamics, chapter VI) and quadratic drag on strips of base and pole.
 *
 * <p>The state is that of the middle of the base's underside: x forward, depth, their rates, tilt and its rate in
 * radians, positive where the pole leans forward; then the work done so far by drag and by the moment left out, both per kilogram
 * of the module. Along the axis (from base to pole) and across it (forward when upright), with a, l the velocity relative to the water
 * there, S and J the first and second moment of mass and lateral added mass about the underside:
 * <pre>
 * (m + Aa) dv/dt along                   = F along  + (Al - Aa) turn l + S turn^2
 * (m + Al) dv/dt across + S dturn/dt     = F across + (Al - Aa) turn a
 * S dv/dt across        + J dturn/dt     = N        + (Aa - Al) a l
 * </pre>
 * The current is steady and horizontal, so that it exerts no inertia force of its own. The base's share of the last moment (Munk) turns a
 * plate broadside to its motion; behind a real plate the flow separates and the moment is smaller. It can be left out.
 */
final class PlanarMotion implements FirstOrderDifferentialEquations {
    static final int X = 0;
    static final int DEPTH = 1;
    static final int SPEED_X = 2;
    static final int SINK = 3;
    static final int TILT = 4;
    static final int TURN = 5;
    /** Work of drag, negative in still water; J for each kg of the module. */
    static final int DRAG_WORK = 6;
    /** Work of the moment that was left out, as it acts on the remaining motion; J for each kg of the module. */
    static final int CUT_WORK = 7;
    static final int DIMENSION = 8;

    private final SinkingBody body;
    private final Flow flow;
    private final boolean baseMunk;
    private final double forwardEast;
    private final double forwardNorth;
    private final TurningInertia inertia;
    private final Strips plate;
    private final Strips pole;
    private final double halfRho;
    /** Moment of weight and buoyancy about the underside, for each unit of the tilt's sine. */
    private final double overturningNm;

    /**
     * @param towardDeg true direction of x
     * @param baseMunk whether the base's share of the Munk moment acts
     */
    PlanarMotion(SinkingBody body, Flow flow, double towardDeg, boolean baseMunk) {
        this.body = body;
        this.flow = flow;
        this.baseMunk = baseMunk;
        forwardEast = Math.sin(Math.toRadians(towardDeg));
        forwardNorth = Math.cos(Math.toRadians(towardDeg));
        inertia = TurningInertia.of(body);
        plate = Strips.ofPlate(body);
        pole = Strips.ofPole(body);
        double rho = body.water().densityKgPerM3();
        halfRho = rho / 2;
        overturningNm = body.water().gravityMPerS2()
                * (body.massKg() * body.centreOfMassM() - rho * body.volumeM3() * body.centreOfBuoyancyM());
    }

    @Override
    public int getDimension() {
        return DIMENSION;
    }

    @Override
    public void computeDerivatives(double timeS, double[] y, double[] rate) {
        double sin = Math.sin(y[TILT]);
        double cos = Math.cos(y[TILT]);
        double turn = y[TURN];
        // Over the ground, along the axis (sin, -cos) and across it (cos, sin); the water likewise has u sin and u cos.
        double groundAlong = y[SPEED_X] * sin - y[SINK] * cos;
        double groundAcross = y[SPEED_X] * cos + y[SINK] * sin;
        double water = water(y[DEPTH]);
        double along = groundAlong - water * sin;
        double across = groundAcross - water * cos;

        double forceAlong = -body.submergedWeightN() * cos;
        double forceAcross = body.submergedWeightN() * sin;
        double moment = overturningNm * sin;
        double dragPower = 0;
        for (int i = 0; i < plate.count(); i++) {
            double at = plate.atM()[i];
            double speed = groundAlong - turn * at - water(y[DEPTH] + at * sin) * sin;
            double force = drag(plate.dragAreaM2()[i], speed);
            forceAlong += force;
            moment -= force * at;
            dragPower += force * speed;
        }
        for (int i = 0; i < pole.count(); i++) {
            double at = pole.atM()[i];
            double speed = groundAcross + turn * at - water(y[DEPTH] - at * cos) * cos;
            double force = drag(pole.dragAreaM2()[i], speed);
            forceAcross += force;
            moment += force * at;
            dragPower += force * speed;
        }
        double edgeM = body.baseMiddleM();
        double edgeSpeed = groundAcross + turn * edgeM - water(y[DEPTH] - edgeM * cos) * cos;
        double edgeForce = drag(body.baseLateralDragAreaM2(), edgeSpeed);
        forceAcross += edgeForce;
        moment += edgeForce * edgeM;
        double tipSpeed = groundAlong - water(y[DEPTH] - body.poleMiddleM() * cos) * sin;
        double tipForce = drag(body.drag().poleAxial().product(), tipSpeed);
        forceAlong += tipForce;
        dragPower += edgeForce * edgeSpeed + tipForce * tipSpeed;

        double m = inertia.massKg();
        double first = inertia.firstKgM();
        double second = inertia.secondKgM2();
        double axialMore = inertia.axialKg() - inertia.lateralKg();
        double cut = baseMunk ? 0 : -inertia.baseMunkKg() * along * (across + turn * edgeM);
        forceAlong += first * turn * turn - axialMore * turn * across;
        forceAcross -= axialMore * turn * along;
        moment += axialMore * along * across + cut;
        double alongRate = forceAlong / (m + inertia.axialKg());
        double determinant = (m + inertia.lateralKg()) * second - first * first;
        double acrossRate = (second * forceAcross - first * moment) / determinant;

        rate[X] = y[SPEED_X];
        rate[DEPTH] = y[SINK];
        rate[SPEED_X] = alongRate * sin + acrossRate * cos;
        rate[SINK] = -alongRate * cos + acrossRate * sin;
        rate[TILT] = turn;
        rate[TURN] = ((m + inertia.lateralKg()) * moment - first * forceAcross) / determinant;
        rate[DRAG_WORK] = dragPower / m;
        rate[CUT_WORK] = cut * turn / m;
    }

    private double drag(double dragAreaM2, double speedMPerS) {
        return -halfRho * dragAreaM2 * Math.abs(speedMPerS) * speedMPerS;
    }

    /** The current's component forward; above the surface and below the last level the nearest known. */
    private double water(double depthM) {
        return flow.eastHeldMPerS(depthM) * forwardEast + flow.northHeldMPerS(depthM) * forwardNorth;
    }

    /** Kinetic energy of module and added mass in still water, in joules. */
    double kineticJ(double[] y) {
        double along = y[SPEED_X] * Math.sin(y[TILT]) - y[SINK] * Math.cos(y[TILT]);
        double across = y[SPEED_X] * Math.cos(y[TILT]) + y[SINK] * Math.sin(y[TILT]);
        return inertia.kineticJ(along, across, y[TURN]);
    }

    /** What weight and buoyancy can still do, up to a constant, in joules. */
    double potentialJ(double[] y) {
        return overturningNm * Math.cos(y[TILT]) - body.submergedWeightN() * y[DEPTH];
    }

    /** Work of drag and of the moment left out, in joules. */
    double workJ(double[] y) {
        return inertia.massKg() * (y[DRAG_WORK] + y[CUT_WORK]);
    }
}
