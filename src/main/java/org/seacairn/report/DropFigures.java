package org.seacairn.report;

import java.util.List;
import org.seacairn.drop.Embedment;
import org.seacairn.drop.PlannedDrop;
import org.seacairn.drop.Standing;

/** What there is to say of a landing, in the words of a page. */
final class DropFigures {
    /** No one needs to know by how much more. */
    private static final double MOST_FACTOR = 10;

    private DropFigures() {}

    static String factor(double factor) {
        return Double.isNaN(factor) ? Units.UNKNOWN : factor > MOST_FACTOR ? "over 10" : Units.number(1, factor);
    }

    static String embedment(Units units, Embedment embedment) {
        return Double.isNaN(embedment.depthM()) ? "not modelled" : Double.isInfinite(embedment.depthM()) ? "does not stop" : units.tenth(embedment.depthM());
    }

    /** Whole degrees, and none under one: the model knows no better. */
    static String tilt(double tiltDeg) {
        return Units.number(0, Math.max(1, Math.ceil(tiltDeg)));
    }

    /** Where the module leaves the deck, as a list of facts: one for each profile. */
    static void releases(Facts facts, Units units, List<PlannedDrop> drops) {
        for (PlannedDrop drop : drops) {
            facts.add("Release point" + (drop.profile().isEmpty() ? "" : ", " + Html.cut(drop.profile(), Html.LONGEST_NAME)), h -> {
                Places.write(h, drop.releaseLongitudeDeg(), drop.releaseLatitudeDeg());
                h.text(Double.isNaN(drop.bearingDeg()) ? ", over the target" : ", " + units.lengthText(drop.touchdown().driftM()) + " from the site, "
                        + Units.number(0, drop.bearingDeg()) + " deg true; sinks " + Units.number(0, drop.touchdown().timeS()) + " s");
            });
        }
    }

    static void standing(Facts facts, Units units, Standing standing) {
        facts.add("Touches down", "at " + units.speedText(standing.impactSpeedMPerS()) + " with " + Units.number(0, standing.impactEnergyJ() / 1000)
                + " kJ, within " + tilt(standing.tiltDeg()) + " deg of upright");
        String embedment = embedment(units, standing.embedment());
        facts.add("Sinks in", Double.isFinite(standing.embedment().depthM()) ? embedment + " " + units.length() + ", "
                + units.tenth(standing.reliefM()) + " " + units.length() + " stand above the bottom" : embedment);
        facts.add("Factor against overturning", factor(standing.stability()));
    }
}
