package org.seacairn.drop;

import static java.lang.Double.POSITIVE_INFINITY;

import java.util.OptionalDouble;
import org.seacairn.plan.ModuleBody;
import org.seacairn.plan.ModuleBody.Base;
import org.seacairn.plan.ModuleBody.Pole;
import org.seacairn.plan.ModuleBody.Shape;

/**
 * Drag coefficients of base and pole along the axis and across it, each on its own area: stated, or those of the
 * shape at high Reynolds number. Openings do not change a coefficient; the base's axial area is that of its solid.
 */
record DragCoefficients(Coefficient baseAxial, Coefficient baseLateral, Coefficient poleAxial, Coefficient poleLateral) {
    private static final String DATA_BOOK = "Aeronautical Engineer's Data Book, fig. 5.13";
    private static final String CYLINDER = DATA_BOOK + ", cylinder";

    /** The first row is the data book's square plate, so that a rectangle of equal sides is a square. */
    private static final RatioTable PLATE = new RatioTable(1, 1.17, 5, 1.20, 10, 1.50, POSITIVE_INFINITY, 1.90);
    private static final RatioTable CYLINDER_AXIAL = new RatioTable(1, 0.91, 2, 0.85, 4, 0.87, 7, 0.99);
    private static final RatioTable CYLINDER_LATERAL =
            new RatioTable(1, 0.63, 2, 0.68, 5, 0.74, 10, 0.82, 40, 0.98, POSITIVE_INFINITY, 1.20);
    private static final double CUBE_FACE_ON = 1.05;

    static DragCoefficients of(ModuleBody body) {
        Base base = body.base();
        Pole pole = body.pole();
        double slenderness = pole.lengthM() / pole.diameterM();
        return new DragCoefficients(
                drag("base, axial", body.drag().baseAxial(), PLATE.at(base.lengthM() / base.widthM()),
                        base.planM2() * (1 - base.openShare()), plateSource(base.shape())),
                drag("base, lateral", body.drag().baseLateral(), CUBE_FACE_ON,
                        base.lengthM() * base.heightM(), "Hoerner, cube face-on (from memory)"),
                drag("pole, axial", body.drag().poleAxial(), CYLINDER_AXIAL.at(slenderness),
                        Math.PI / 4 * pole.diameterM() * pole.diameterM(), CYLINDER + " end-on"),
                drag("pole, lateral", body.drag().poleLateral(), CYLINDER_LATERAL.at(slenderness),
                        pole.diameterM() * pole.lengthM(), CYLINDER + " broadside"));
    }

    DragCoefficients scaled(double factor) {
        return new DragCoefficients(scaled(baseAxial, factor), scaled(baseLateral, factor),
                scaled(poleAxial, factor), scaled(poleLateral, factor));
    }

    private static Coefficient scaled(Coefficient c, double factor) {
        return new Coefficient(c.name(), c.value() * factor, c.reference(), c.referenceUnit(), c.source());
    }

    private static Coefficient drag(String name, OptionalDouble stated, double usual, double areaM2, String source) {
        return new Coefficient(name + " drag", stated.orElse(usual), areaM2, "m2",
                stated.isPresent() ? Coefficient.STATED : source);
    }

    private static String plateSource(Shape shape) {
        return switch (shape) {
            case SQUARE -> DATA_BOOK + ", square plate";
            case ROUND -> "Hoerner, disc (second-hand)";
            case RECTANGLE -> "DNVGL-RP-N103, table B-2, rectangular plate (second-hand)";
        };
    }
}
