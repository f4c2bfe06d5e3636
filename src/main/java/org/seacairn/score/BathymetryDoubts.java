package org.seacairn.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import org.seacairn.layer.GridValues;
import org.seacairn.layer.UnitName;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.Values;
import org.seacairn.score.BathymetryFacts.SoundingUnit;

/** What a careful reader doubts about a bathymetry file: sense, unit, datum and no-data of its values. */
final class BathymetryDoubts {
    /** Deeper than the Challenger Deep (10.9 km), higher than Everest (8.8 km); both from memory. */
    private static final double DEEPEST_M = 11_000;
    private static final double HIGHEST_M = 9_000;

    /** Numbers that grids are filled with where there is no value (common practice, no source). */
    private static final Set<Float> USUAL_FILLS = Set.of(-9999f, 9999f, -99999f, 99999f, -999999f, 999999f,
            -32768f, -32767f, 32767f, 1e6f, -1e6f);
    /** Beyond this any number is a fill. */
    private static final float BEYOND_ALL = 1e9f;

    /** Foot and US survey foot differ by 2 in a million, which is no reason to doubt a depth. */
    private static final double SAME_UNIT = 1e-4;

    private final BathymetryFacts facts;
    private final GridValues values;
    private final Limits limits;
    private final List<String> warnings = new ArrayList<>();

    BathymetryDoubts(BathymetryFacts facts, Limits limits) {
        this.facts = facts;
        this.values = facts.values();
        this.limits = limits;
    }

    List<String> warnings() {
        if (facts.plan().datum().isEmpty()) {
            warnings.add("the plan names no vertical datum; add it, for example \"datum: MLLW\"");
        }
        statedUnit();
        if (values.present() == 0) {
            warnings.add("no cell has a value; check the file and the no-data value that it states");
            return List.copyOf(warnings);
        }
        if (values.least() == values.greatest() && values.present() > 1) {
            warnings.add("every cell has the same value " + Shown.number(values.least()) + "; check the file");
        }
        if (!fills()) {
            sense();
            beyondAnyOcean();
            outsideLimits();
        }
        return List.copyOf(warnings);
    }

    private void statedUnit() {
        String stated = facts.statedUnit();
        if (stated.isBlank()) {
            return;
        }
        OptionalDouble metres = UnitName.metres(stated);
        double planned = facts.plan().metresPerUnit();
        if (metres.isEmpty()) {
            warnings.add("the file states the unit " + Shown.quoted(stated) + ", which is not known; check it against the"
                    + " plan's \"unit: " + facts.plan().unit() + "\"");
        } else if (Math.abs(metres.getAsDouble() / planned - 1) > SAME_UNIT) {
            warnings.add("the file states the unit " + Shown.quoted(stated) + " and the plan \"unit: " + facts.plan().unit()
                    + "\", which is what counts; make sure which is right");
        }
    }

    /** Whether an extreme is a usual fill, which spoils every other figure. */
    private boolean fills() {
        boolean found = false;
        for (float extreme : new float[] {values.least(), values.greatest()}) {
            if (USUAL_FILLS.contains(extreme) || Math.abs(extreme) > BEYOND_ALL) {
                warnings.add("the " + (extreme == values.least() ? "least" : "greatest") + " value " + Shown.number(extreme)
                        + " looks like a no-data value that the file does not state; state it in the file");
                found = true;
            }
        }
        return found;
    }

    private void sense() {
        boolean elevation = facts.plan().values() == Values.ELEVATION;
        if (facts.wetCells() == 0 && facts.dryCells() > 0) {
            warnings.add(elevation
                    ? "no value is negative while the plan says \"values: elevation\"; if they count downward,"
                            + " write \"values: depth\""
                    : "no value is positive while the plan says \"values: depth\"; if they count upward,"
                            + " write \"values: elevation\"");
        } else if (facts.dryCells() > 0) {
            warnings.add(String.format(Locale.ROOT, "%,d of %,d cells with a value (%s) lie above the datum, up to %s:"
                            + " land or drying heights, too shallow for any site%s", facts.dryCells(), values.present(),
                    Shown.percent(facts.dryCells(), values.present()), Shown.metres(-facts.shallowestM()),
                    facts.dryCells() > facts.wetCells() ? "; more cells are dry than wet, so check \"values: "
                            + (elevation ? "elevation" : "depth") + "\"" : ""));
        }
    }

    private void beyondAnyOcean() {
        double deepestM = facts.deepestM();
        double highestM = -facts.shallowestM();
        if (deepestM > DEEPEST_M || highestM > HIGHEST_M) {
            boolean deep = deepestM > DEEPEST_M;
            warnings.add((deep ? "depths reach " + Shown.metres(deepestM) + ", deeper than any ocean"
                    : "heights reach " + Shown.metres(highestM) + ", above any mountain")
                    + "; check \"unit: " + facts.plan().unit() + "\" and the file's no-data value");
        }
    }

    private void outsideLimits() {
        List<Long> within = values.within();
        if (within.isEmpty() || within.get(0) > 0) {
            return;
        }
        SoundingUnit better = null;
        long most = 0;
        for (SoundingUnit unit : SoundingUnit.values()) {
            long count = within.get(1 + unit.ordinal());
            if (count > most) {
                most = count;
                better = unit;
            }
        }
        String limit = Shown.number(limits.shallowestM().orElseThrow()) + " to " + Shown.metres(limits.deepestM().orElseThrow());
        warnings.add("no depth lies within the limits of " + limit + (better == null
                ? "; no place can be feasible"
                : " when the file is read in " + facts.plan().unit() + ", but " + Shown.percent(most, values.present())
                        + " of them do in " + better.symbol() + "; check \"unit: " + facts.plan().unit() + "\""));
    }
}
