package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.plan.ModuleBody;
import org.seacairn.plan.ModuleBody.AddedMass;
import org.seacairn.plan.ModuleBody.Base;
import org.seacairn.plan.ModuleBody.Drag;
import org.seacairn.plan.ModuleBody.Pole;
import org.seacairn.plan.ModuleBody.Shape;

class SinkingBodyTest {
    private static final Pole POLE = new Pole(0.2, 6, 300, 0.04);

    /** By hand from the figures of the sample module: concrete 17,000 lb and 112.6 ft3, pole 660 lb and 0.038 m3. */
    @Test
    void weightsAndCentresOfTheSampleModule() {
        SinkingBody body = SinkingBody.of(Modules.sample(), Modules.SAMPLE_HEIGHT_M);
        assertEquals(8010.44, body.massKg(), 0.01);
        assertEquals(3.226477, body.volumeM3(), 1e-6);
        assertEquals(46_139.4, body.submergedWeightN(), 0.1);
        assertEquals((7711.07 * 0.3048 + 299.37 * 4.1148) / 8010.44, body.centreOfMassM(), 1e-5);
        assertEquals((3.188477 * 0.3048 + 0.038 * 4.1148) / 3.226477, body.centreOfBuoyancyM(), 1e-6);
        assertEquals(2.4384 * 2.4384 * 0.88, body.solidPlanAreaM2(), 1e-9);
        assertEquals(2.4384 * 0.6096, body.edgeAreaM2(), 1e-9);
    }

    /**
     * The worked example of a box of 6 t, 2.5 m3, 4 m2, drag coefficient 1.2, added mass that of its own volume. Derived
     * by hand from the closed form (no publication): W = (6000 - 1025 x 2.5) x 9.81.
     */
    @Test
    void terminalSpeedOfTheWorkedExample() {
        SinkingBody body = Modules.block(2, 6000, 2.5, 1.2, 2.5, 1, 1);
        assertEquals(33_721.875, body.submergedWeightN(), 1e-9);
        assertEquals(3.702442, body.terminalSpeedMPerS(), 5e-7);
        assertEquals(2562.5, body.axialAddedMassKg(), 1e-9);
        assertEquals(3.702442 / Math.sqrt(1.44), body.withDragScaled(1.44).terminalSpeedMPerS(), 5e-7);
    }

    @Test
    void otherWaterOtherWeight() {
        SinkingBody fresh = SinkingBody.of(Modules.sample(), Modules.SAMPLE_HEIGHT_M, new SeaWater(1000, 9.8));
        assertEquals((8010.44 - 3226.477) * 9.8, fresh.submergedWeightN(), 0.1);
    }

    @Test
    void aModuleThatFloatsIsRefused() {
        ModuleBody floats = Modules.sample(3000, 100);
        assertTrue(assertThrows(IllegalArgumentException.class, () -> SinkingBody.of(floats, 7.62))
                .getMessage().startsWith("the module floats: submerged weight -"));
    }

    /** Aeronautical Engineer's Data Book, fig. 5.13(b), cylinder end-on by length over diameter. */
    @ParameterizedTest
    @CsvSource({"0.5, 0.91", "1, 0.91", "2, 0.85", "4, 0.87", "7, 0.99", "40, 0.99"})
    void cylinderEndOn(double slenderness, double expected) {
        assertEquals(expected, withPole(slenderness).drag().poleAxial().value(), 1e-12);
    }

    /** The same figure, broadside. */
    @ParameterizedTest
    @CsvSource({"1, 0.63", "2, 0.68", "5, 0.74", "10, 0.82", "40, 0.98", "1e12, 1.20", "80, 1.09", "20, 0.90"})
    void cylinderBroadside(double slenderness, double expected) {
        assertEquals(expected, withPole(slenderness).drag().poleLateral().value(), 1e-9);
    }

    /** DNV-RP-C205, cylinder broadside on its own volume (from memory), without the water inside. */
    @ParameterizedTest
    @CsvSource({"1.2, 0.62", "2.5, 0.78", "5, 0.90", "9, 0.96", "1e12, 1.00"})
    void addedMassOfACylinder(double slenderness, double expected) {
        assertEquals(expected, withPole(slenderness).added().poleLateral().value(), 1e-9);
    }

    private static SinkingBody withPole(double slenderness) {
        Pole pole = new Pole(0.2, 0.2 * slenderness, 300, 0.001);
        return SinkingBody.of(Modules.body(Modules.sample().base(), pole), 0.5 + 0.2 * slenderness);
    }

    /**
     * Plates face-on: square 1.17 from the Aeronautical Engineer's Data Book, the longer ones from DNVGL-RP-N103 table B-2, added
     * mass from its table A-2 (both second-hand, as others' code tabulates them).
     */
    @ParameterizedTest
    @CsvSource({"1, 1.17, 0.579", "5, 1.20, 0.897", "10, 1.50, 0.947", "1e9, 1.90, 1.000"})
    void rectangularPlate(double lengthOverWidth, double cd, double ca) {
        double thin = 1e-12;
        Base base = new Base(Shape.RECTANGLE, 2, 2 * lengthOverWidth, thin, 8000, 1, 0);
        SinkingBody body = SinkingBody.of(Modules.body(base, POLE), 6);
        assertEquals(cd, body.drag().baseAxial().value(), 1e-6);
        assertEquals(ca, body.added().baseAxial().value(), 1e-5);
    }

    /** DNVGL-RP-N103 table A-1, endless bar (second-hand): side across the motion over side along it. */
    @ParameterizedTest
    @CsvSource({"0.05, 2.23", "0.1, 2.23", "0.2, 1.98", "0.5, 1.70", "1, 1.51", "2, 1.36", "5, 1.21"})
    void addedMassOfTheBaseAcrossTheAxis(double heightOverWidth, double expected) {
        Base base = new Base(Shape.SQUARE, 2, 2, 2 * heightOverWidth, 80_000, 1, 0);
        SinkingBody body = SinkingBody.of(Modules.body(base, POLE), 16);
        assertEquals(expected, body.added().baseLateral().value(), 1e-12);
        assertEquals(Math.PI / 4 * Math.pow(2 * heightOverWidth, 2) * 2, body.added().baseLateral().reference(), 1e-12);
    }

    /**
     * The rule for upright sides against another table of the same source: square prism along its axis, on its own
     * volume (DNV-RP-C205, from memory). They are a few per cent apart.
     */
    @ParameterizedTest
    @CsvSource({"1, 0.68", "2, 0.36", "3, 0.24", "4, 0.19"})
    void addedMassOfASquarePrism(double heightOverWidth, double expected) {
        Base base = new Base(Shape.SQUARE, 2, 2, 2 * heightOverWidth, 80_000, 8 * heightOverWidth, 0);
        AddedMassCoefficients added = AddedMassCoefficients.of(Modules.body(base, POLE));
        assertEquals(expected, added.baseAxial().product() / base.volumeM3(), 0.06 * expected);
    }

    /** 8/3 r^3 of water: exact in ideal flow (Lamb, Hydrodynamics). */
    @Test
    void addedMassOfADisc() {
        Base base = new Base(Shape.ROUND, 3, 3, 1e-12, 8000, 1, 0);
        assertEquals(8.0 / 3 * Math.pow(1.5, 3), AddedMassCoefficients.of(Modules.body(base, POLE)).baseAxial().product(), 1e-4);
    }

    /** DNVGL-RP-N103 section 4.6.4 (second-hand), worked by hand; the branches meet to within 0.01 at 34 %. */
    @ParameterizedTest
    @CsvSource({"0, 1", "0.05, 1", "0.12, 0.939405", "0.22, 0.7", "0.339999, 0.431452", "0.34, 0.424373", "0.5, 0.239651"})
    void openingsLessenTheAddedMass(double openShare, double expected) {
        assertEquals(expected, AddedMassCoefficients.perforation(openShare), 1e-6);
    }

    /** Water in openings goes along sideways only, that in the pole both ways; a base that fills its outline holds none. */
    @Test
    void waterInsideGoesAlong() {
        Base open = new Base(Shape.SQUARE, 2, 2, 0.5, 6000, 1.5, 0.2);
        AddedMassCoefficients added = AddedMassCoefficients.of(Modules.body(open, POLE));
        double poleM3 = Math.PI / 4 * 0.04 * 6;
        assertEquals(0.4, added.waterInBaseM3(), 1e-12);
        assertEquals(poleM3 - 0.04, added.waterInPoleM3(), 1e-12);
        assertEquals(added.baseAxial().product() * AddedMassCoefficients.perforation(0.2) + poleM3 - 0.04, added.axialM3(), 1e-12);
        assertEquals(added.baseLateral().product() + 0.4, added.baseLateralM3(), 1e-12);
        Base full = new Base(Shape.SQUARE, 2, 2, 0.5, 6000, 2, 0.2);
        assertEquals(0, AddedMassCoefficients.of(Modules.body(full, POLE)).waterInBaseM3());
    }

    @Test
    void statedCoefficientsAreTakenAndNamed() {
        ModuleBody sample = Modules.sample();
        ModuleBody stated = new ModuleBody(sample.base(), sample.pole(),
                new Drag(OptionalDouble.of(1.3), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(0.9), 0.2),
                new AddedMass(OptionalDouble.of(0.6), OptionalDouble.empty(), OptionalDouble.empty()), OptionalDouble.empty(), 0);
        List<Coefficient> of = SinkingBody.of(stated, Modules.SAMPLE_HEIGHT_M).coefficients();
        assertEquals(List.of("base, axial drag 1.3", "pole, lateral drag 0.9", "base, axial added mass 0.6"),
                of.stream().filter(c -> c.source().equals(Coefficient.STATED)).map(c -> c.name() + " " + c.value()).toList());
        assertEquals(Math.PI / 4 * Math.pow(2.4384, 3), of.get(4).reference(), 1e-9);
        assertTrue(of.stream().noneMatch(c -> c.source().isEmpty()));
    }

    @Test
    void aRectangleOfEqualSidesIsASquare() {
        Random random = new Random(5);
        for (int i = 0; i < 100; i++) {
            ModuleBody m = Modules.random(random);
            SinkingBody square = SinkingBody.of(Modules.body(with(m.base(), Shape.SQUARE), m.pole()), Modules.heightM(m));
            SinkingBody equal = SinkingBody.of(Modules.body(with(m.base(), Shape.RECTANGLE), m.pole()), Modules.heightM(m));
            assertEquals(square.terminalSpeedMPerS(), equal.terminalSpeedMPerS(), 1e-12);
            assertEquals(square.axialAddedMassKg(), equal.axialAddedMassKg(), 1e-9);
            assertEquals(square.lateralDragAreaM2(), equal.lateralDragAreaM2(), 1e-12);
        }
    }

    private static Base with(Base b, Shape shape) {
        return new Base(shape, b.widthM(), b.widthM(), b.heightM(), 1e6, b.volumeM3(), b.openShare());
    }
}
