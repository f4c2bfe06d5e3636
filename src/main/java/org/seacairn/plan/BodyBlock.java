package org.seacairn.plan;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.plan.ModuleBody.AddedMass;
import org.seacairn.plan.ModuleBody.Base;
import org.seacairn.plan.ModuleBody.Drag;
import org.seacairn.plan.ModuleBody.Pole;
import org.seacairn.plan.ModuleBody.Shape;
import org.seacairn.plan.Quantity.Kind;

/** What a module is made of: its base, its pole, its coefficients. A module that cannot sink upright is a problem. */
final class BodyBlock {
    private static final Map<String, Shape> SHAPES = Map.of("square", Shape.SQUARE, "rectangle", Shape.RECTANGLE,
            "rectangular", Shape.RECTANGLE, "round", Shape.ROUND, "circular", Shape.ROUND, "disc", Shape.ROUND);
    /** Metres, kilograms, cubic metres, coefficients: a thin rod to a ship, with room to spare. */
    private static final Map<Kind, Double> LEAST = Map.of(Kind.LENGTH, 0.001, Kind.MASS, 0.1, Kind.VOLUME, 1e-6, Kind.FACTOR, 0.001);
    private static final Map<Kind, Double> MOST = Map.of(Kind.LENGTH, 200.0, Kind.MASS, 1e8, Kind.VOLUME, 1e5, Kind.FACTOR, 100.0);
    /** Figures of one object that were rounded apart still agree. */
    private static final double ROUNDING = 1.02;
    private static final double ON_ITS_SIDE_DEG = 90;

    private final Block module;
    private final List<String> missing;

    private BodyBlock(Block module, List<String> missing) {
        this.module = module;
        this.missing = missing;
    }

    /**
     * @param missing receives what a body lacks, as keys of the module file
     * @return empty if something is missing
     */
    static Optional<ModuleBody> read(Block module, double heightM, List<String> missing) {
        return new BodyBlock(module, missing).body(heightM);
    }

    private Optional<ModuleBody> body(double heightM) {
        Base base = part("base", "shape", "width", "length", "height", "mass", "volume", "open-share")
                .map(this::base).orElse(null);
        Pole pole = part("pole", "diameter", "length", "mass", "volume").map(this::pole).orElse(null);
        Drag drag = drag();
        AddedMass addedMass = addedMass();
        OptionalDouble scatterDeg = module.get("scatter-angle").map(BodyBlock::belowRightAngle).orElse(OptionalDouble.empty());
        double tiltDeg = module.get("release-tilt").map(BodyBlock::tilt).orElse(ON_ITS_SIDE_DEG);
        if (!missing.isEmpty()) {
            return Optional.empty();
        }
        if (shapeHolds(base, pole, heightM)) {
            checkWeights(base, pole);
        }
        return Optional.of(new ModuleBody(base, pole, drag, addedMass, scatterDeg, tiltDeg));
    }

    private Optional<Block> part(String name, String... keys) {
        Optional<Block> part = module.get(name).flatMap(value -> value.block(name, keys));
        if (part.isEmpty()) {
            missing.add(name);
        }
        return part;
    }

    private Base base(Block block) {
        Shape shape = block.get("shape").map(this::shape).orElse(null);
        need(block, "base", "shape");
        double widthM = positive(block, "base", "width", Kind.LENGTH);
        double lengthM = shape == Shape.RECTANGLE ? positive(block, "base", "length", Kind.LENGTH) : widthM;
        if (shape != Shape.RECTANGLE && shape != null && block.has("length")) {
            block.get("length").get().problem("length is given for a base that is not a rectangle; leave it out,"
                    + " or write \"shape: rectangle\"");
        }
        double openShare = block.quantity("open-share", Kind.SHARE).orElse(0);
        if (openShare == 1) {
            block.get("open-share").get().problem("open-share is 1, a base that is all opening; write the share of its"
                    + " plan that is open, for example \"12 %\"");
        }
        return new Base(shape, Math.min(widthM, lengthM), Math.max(widthM, lengthM),
                positive(block, "base", "height", Kind.LENGTH), positive(block, "base", "mass", Kind.MASS),
                positive(block, "base", "volume", Kind.VOLUME), openShare);
    }

    private Shape shape(Value value) {
        String text = value.text().toLowerCase(Locale.ROOT);
        if (!text.isEmpty() && !SHAPES.containsKey(text)) {
            value.problem("shape is " + Shown.quoted(text) + "; write square, rectangle or round");
        }
        return SHAPES.get(text);
    }

    private Pole pole(Block block) {
        return new Pole(positive(block, "pole", "diameter", Kind.LENGTH), positive(block, "pole", "length", Kind.LENGTH),
                positive(block, "pole", "mass", Kind.MASS), positive(block, "pole", "volume", Kind.VOLUME));
    }

    private double positive(Block block, String part, String key, Kind kind) {
        need(block, part, key);
        return block.get(key).map(value -> sensible(value, kind)).orElse(Double.NaN);
    }

    /** What no part of a module has is a slip of a unit or a digit, and may keep the sinking from ever ending. */
    private static double sensible(Value value, Kind kind) {
        double si = value.positive(kind);
        double least = LEAST.get(kind);
        double most = MOST.get(kind);
        if (si < least || si > most) {
            String unit = kind == Kind.LENGTH ? " m" : kind == Kind.MASS ? " kg" : kind == Kind.VOLUME ? " m3" : "";
            value.problem(value.name() + " is " + Shown.quoted(value.text()) + ", which no part of a module has; check number and unit ("
                    + Shown.number(least) + " to " + Shown.number(most) + unit + ")");
            return Double.NaN;
        }
        return si;
    }

    private void need(Block block, String part, String key) {
        if (!block.has(key)) {
            missing.add(part + ": " + key);
        }
    }

    private Drag drag() {
        Optional<Block> block = module.get("drag").flatMap(value -> value.block("drag",
                "base", "pole", "base-axial", "base-lateral", "pole-axial", "pole-lateral", "uncertainty"));
        return new Drag(drag(block, "base-axial", "base"), drag(block, "base-lateral", "base"),
                drag(block, "pole-axial", "pole"), drag(block, "pole-lateral", "pole"),
                block.flatMap(b -> b.get("uncertainty")).map(value -> value.quantity(Kind.SHARE)).orElse(0.0));
    }

    /** Without drag a module would fall ever faster, and no current would carry it: no such body is in the sea. */
    private static OptionalDouble drag(Optional<Block> block, String key, String both) {
        Optional<Value> stated = block.flatMap(b -> b.get(key).or(() -> b.get(both)));
        return stated.map(value -> OptionalDouble.of(sensible(value, Kind.FACTOR))).orElse(OptionalDouble.empty());
    }

    private AddedMass addedMass() {
        Optional<Block> block = module.get("added-mass").flatMap(value -> value.block("added-mass",
                "base", "pole", "base-axial", "base-lateral", "pole-lateral"));
        return new AddedMass(coefficient(block, "base-axial", "base"), coefficient(block, "base-lateral", "base"),
                coefficient(block, "pole-lateral", "pole"));
    }

    /** @param both the key that states the coefficient for both directions */
    private static OptionalDouble coefficient(Optional<Block> block, String key, String both) {
        Optional<Value> stated = block.flatMap(b -> b.get(key).or(() -> b.get(both)));
        return stated.map(value -> OptionalDouble.of(value.quantity(Kind.FACTOR) == 0 ? 0 : sensible(value, Kind.FACTOR)))
                .orElse(OptionalDouble.empty());
    }

    private static OptionalDouble belowRightAngle(Value value) {
        double deg = value.quantity(Kind.ANGLE);
        if (deg >= 90) {
            value.problem(value.name() + " is " + Shown.quoted(value.text()) + "; it is the angle from the vertical that"
                    + " one landing in three exceeds, less than 90 deg, for example \"5 deg\"");
        }
        return OptionalDouble.of(deg);
    }

    private static double tilt(Value value) {
        double deg = value.quantity(Kind.ANGLE);
        if (deg > 180) {
            value.problem(value.name() + " is " + Shown.quoted(value.text())
                    + "; write 0 deg (upright) to 180 deg (upside down), 90 deg is on its side");
        }
        return deg;
    }

    /** Whether the volumes fit into the outlines; if not, weights in water would only be wrong too. */
    private boolean shapeHolds(Base base, Pole pole, double heightM) {
        boolean holds = true;
        if (base.volumeM3() > base.planM2() * base.heightM() * ROUNDING) {
            module.problem("the base's volume of " + Shown.number(base.volumeM3()) + " m3 is more than its outline holds ("
                    + Shown.number(base.planM2() * base.heightM()) + " m3); check width, height and volume");
            holds = false;
        }
        double outerM3 = Math.PI / 4 * pole.diameterM() * pole.diameterM() * pole.lengthM();
        if (pole.volumeM3() > outerM3 * ROUNDING) {
            module.problem("the pole's volume of " + Shown.number(pole.volumeM3()) + " m3 is more than its outline holds ("
                    + Shown.number(outerM3) + " m3); check diameter, length and volume");
            holds = false;
        }
        if (Math.max(base.heightM(), pole.lengthM()) > heightM * ROUNDING) {
            module.problem("the module's height of " + Shown.metres(heightM) + " is less than that of its base or its pole;"
                    + " height counts from the underside of the base to the top of the pole");
        } else if (base.heightM() + pole.lengthM() < heightM / ROUNDING) {
            module.problem("base and pole together are " + Shown.metres(base.heightM() + pole.lengthM())
                    + " high and the module " + Shown.metres(heightM) + "; check the three");
        }
        return holds;
    }

    private void checkWeights(Base base, Pole pole) {
        double water = ModuleBody.SEA_WATER_KG_PER_M3;
        if (base.massKg() + pole.massKg() <= water * (base.volumeM3() + pole.volumeM3())) {
            module.problem("the module floats: " + kg(base.massKg() + pole.massKg()) + " in all, and the sea water it"
                    + " displaces weighs " + kg(water * (base.volumeM3() + pole.volumeM3())) + "; check masses and volumes");
        } else if (base.massKg() <= water * base.volumeM3()) {
            module.problem("the base is lighter (" + kg(base.massKg()) + ") than the sea water it displaces ("
                    + kg(water * base.volumeM3()) + "), so the module would sink pole first; check mass and volume of the base");
        }
        if (pole.massKg() >= base.massKg()) {
            module.problem("the pole (" + kg(pole.massKg()) + ") is as heavy as the base (" + kg(base.massKg())
                    + ") or heavier: the module will not right itself; check the masses");
        }
    }

    private static String kg(double kg) {
        return Shown.number(Math.round(kg)) + " kg";
    }
}
