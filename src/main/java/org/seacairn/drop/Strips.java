package org.seacairn.drop;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.seacairn.plan.ModuleBody.Base;
import org.seacairn.plan.ModuleBody.Pole;
import org.seacairn.plan.ModuleBody.Shape;

/**
 * A part of a module cut into strips, at the points of a Gauss rule: eight come within 0.02 degrees of tilt of two hundred
 * even ones ({@code AttitudeTest}).
 *
 * @param atM where each lies: across the plate from its middle, or along the axis from the underside
 * @param dragAreaM2 drag coefficient times area of each
 */
record Strips(double[] atM, double[] dragAreaM2) {
    private static final int COUNT = 8;

    /** The base, moving along the axis; its shorter side lies in the plane. */
    static Strips ofPlate(SinkingBody body) {
        Base base = body.parts().base();
        double radiusM = base.widthM() / 2;
        Strips strips = base.shape() == Shape.ROUND ? ofDisc(radiusM) : ofRectangle(-radiusM, radiusM);
        return strips.sharing(body.drag().baseAxial().product());
    }

    /** The pole, moving across the axis. */
    static Strips ofPole(SinkingBody body) {
        Pole pole = body.parts().pole();
        return ofRectangle(body.heightM() - pole.lengthM(), body.heightM()).sharing(body.poleLateralDragAreaM2());
    }

    /** Of even breadth: the Gauss-Legendre rule. */
    private static Strips ofRectangle(double fromM, double toM) {
        GaussIntegrator rule = new GaussIntegratorFactory().legendre(COUNT, fromM, toM);
        Strips strips = new Strips(new double[COUNT], new double[COUNT]);
        for (int i = 0; i < COUNT; i++) {
            strips.atM[i] = rule.getPoint(i);
            strips.dragAreaM2[i] = rule.getWeight(i);
        }
        return strips;
    }

    /** As broad as its chords: the Gauss-Chebyshev rule of the second kind. */
    private static Strips ofDisc(double radiusM) {
        Strips strips = new Strips(new double[COUNT], new double[COUNT]);
        for (int i = 0; i < COUNT; i++) {
            double angle = Math.PI * (i + 1) / (COUNT + 1);
            strips.atM[i] = radiusM * Math.cos(angle);
            strips.dragAreaM2[i] = Math.pow(Math.sin(angle), 2);
        }
        return strips;
    }

    private Strips sharing(double totalM2) {
        double sum = 0;
        for (double share : dragAreaM2) {
            sum += share;
        }
        for (int i = 0; i < COUNT; i++) {
            dragAreaM2[i] *= totalM2 / sum;
        }
        return this;
    }

    int count() {
        return COUNT;
    }
}
