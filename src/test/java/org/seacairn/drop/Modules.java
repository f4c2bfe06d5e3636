package org.seacairn.drop;

import java.util.OptionalDouble;
import java.util.Random;
import org.seacairn.plan.ModuleBody;
import org.seacairn.plan.ModuleBody.AddedMass;
import org.seacairn.plan.ModuleBody.Base;
import org.seacairn.plan.ModuleBody.Drag;
import org.seacairn.plan.ModuleBody.Pole;
import org.seacairn.plan.ModuleBody.Shape;

/** Modules of the tests. */
final class Modules {
    static final Drag USUAL_DRAG =
            new Drag(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), 0);
    static final AddedMass USUAL_ADDED = new AddedMass(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    private Modules() {}

    static final double SAMPLE_HEIGHT_M = 25 * 0.3048;

    /** The module of the sample layers. */
    static ModuleBody sample() {
        return body(new Base(Shape.SQUARE, 2.4384, 2.4384, 0.6096, 17_000 * 0.45359237, 112.6 * 0.028316846592, 0.12),
                new Pole(0.219, 23 * 0.3048, 660 * 0.45359237, 0.038));
    }

    /** The sample's volumes and outlines with other masses. */
    static ModuleBody sample(double baseKg, double poleKg) {
        Base b = sample().base();
        Pole p = sample().pole();
        return body(new Base(b.shape(), b.widthM(), b.lengthM(), b.heightM(), baseKg, b.volumeM3(), b.openShare()),
                new Pole(p.diameterM(), p.lengthM(), poleKg, p.volumeM3()));
    }

    static ModuleBody body(Base base, Pole pole) {
        return new ModuleBody(base, pole, USUAL_DRAG, USUAL_ADDED, OptionalDouble.empty(), 0);
    }

    /** A square block under a pole too thin to matter, with these coefficients along its axis and across. */
    static SinkingBody block(double widthM, double massKg, double volumeM3, double cdAxial, double addedAxialM3,
            double cdLateral, double addedLateralM3) {
        Base base = new Base(Shape.SQUARE, widthM, widthM, 1, massKg, volumeM3, 0);
        Pole pole = new Pole(1e-9, 1, 0, 0);
        double plateM3 = Math.PI / 4 * Math.pow(widthM, 3);
        double barM3 = Math.PI / 4 * widthM;
        return SinkingBody.of(new ModuleBody(base, pole,
                new Drag(OptionalDouble.of(cdAxial), OptionalDouble.of(cdLateral), OptionalDouble.of(0), OptionalDouble.of(0), 0),
                new AddedMass(OptionalDouble.of(addedAxialM3 / plateM3),
                        OptionalDouble.of(addedLateralM3 / barM3), OptionalDouble.of(0)),
                OptionalDouble.empty(), 0), 2);
    }

    /** From a slab with a stick to a tower, on a logarithmic scale; it sinks, base heavier than pole. */
    static ModuleBody random(Random random) {
        Shape shape = Shape.values()[random.nextInt(3)];
        double widthM = 1 + 3 * random.nextDouble();
        double lengthM = shape == Shape.RECTANGLE ? widthM * (1 + 2 * random.nextDouble()) : widthM;
        double heightM = 0.3 * Math.pow(5, random.nextDouble());
        double openShare = random.nextInt(3) == 0 ? 0 : 0.4 * random.nextDouble();
        double planM2 = widthM * lengthM * (shape == Shape.ROUND ? Math.PI / 4 : 1);
        double baseM3 = planM2 * heightM * (1 - openShare) * (0.7 + 0.3 * random.nextDouble());
        double diameterM = 0.1 * Math.pow(5, random.nextDouble());
        double poleLengthM = 2 + 8 * random.nextDouble();
        double poleM3 = Math.PI / 4 * diameterM * diameterM * poleLengthM * (0.1 + 0.9 * random.nextDouble());
        double baseKg = baseM3 * (1800 + 1500 * random.nextDouble());
        double poleKg = Math.min(0.9 * baseKg, poleM3 * 5000);
        return baseKg + poleKg < 1100 * (baseM3 + poleM3) ? random(random)
                : body(new Base(shape, widthM, lengthM, heightM, baseKg, baseM3, openShare),
                        new Pole(diameterM, poleLengthM, poleKg, poleM3));
    }

    static double heightM(ModuleBody body) {
        return body.base().heightM() + body.pole().lengthM();
    }
}
