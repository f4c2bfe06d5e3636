package org.seacairn.score;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;
import org.seacairn.criterion.ChartedDepth;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Values;
import org.seacairn.score.BathymetryFacts.SoundingUnit;
import org.seacairn.score.ChartComparison.Pair;

/**
 * What a careful reader doubts where bathymetry and chart contradict each other, and which mistake would explain it. Charted ranges
 * are wide: depths in feet taken for metres may still lie within most of them, so a tenth that contradicts is enough where one
 * mistake explains it.
 */
final class ChartDoubts {
    private static final double MANY = 0.5;
    /** Near the contours of a chart, which lean to the safe side, some always do. */
    private static final double SOME = 0.1;
    /** Of the contradictions, by a mistake that is worth naming. */
    private static final double EXPLAINED = 0.9;
    /** Of the contradicting cells, by a shift. */
    private static final double SHIFTED = 0.95;
    /** Tidal datums of one place lie nearer to each other than this nearly everywhere (from memory). */
    private static final double MOST_SHIFT_M = 10;
    private static final double SAME_UNIT = 1e-4;

    private final SitingPlan plan;
    private final List<Pair> pairs;
    private final List<Guess> guesses = new ArrayList<>();

    /** A mistake that was perhaps made, and how many cells would agree without it. */
    private record Guess(String remedy, long agreeing) {}

    ChartDoubts(SitingPlan plan, List<Pair> pairs) {
        this.plan = plan;
        this.pairs = pairs;
    }

    List<String> warnings() {
        long contradicting = pairs.size() - agreeing(pair -> pair);
        if (contradicting <= SOME * pairs.size()) {
            return List.of();
        }
        sign();
        units();
        datum();
        List<String> explanations = guesses.stream().filter(guess -> pairs.size() - guess.agreeing <= (1 - EXPLAINED) * contradicting)
                .sorted(Comparator.comparingLong(Guess::agreeing).reversed())
                .map(guess -> Shown.percent(guess.agreeing, pairs.size()) + " " + guess.remedy).toList();
        if (explanations.isEmpty() && contradicting <= MANY * pairs.size()) {
            return List.of();
        }
        return List.of(Shown.percent(contradicting, pairs.size()) + " of the cells compared contradict their charted depth area; " + (explanations.isEmpty()
                ? "check sign (values), unit, datum and position of the bathymetry and of the depth areas"
                : "look for a mistake: there would agree " + String.join(", ", explanations)));
    }

    private void sign() {
        boolean elevation = plan.bathymetry().values() == Values.ELEVATION;
        double offsetM = plan.bathymetry().datumOffsetM();
        guess("with \"values: " + (elevation ? "depth" : "elevation") + "\"",
                pair -> pair.at(2 * offsetM - pair.depthM()));
    }

    private void units() {
        double offsetM = plan.bathymetry().datumOffsetM();
        double ofBathymetry = plan.bathymetry().metresPerUnit();
        double ofAreas = plan.depthAreas().orElseThrow().metresPerUnit();
        for (SoundingUnit unit : SoundingUnit.values()) {
            double factor = unit.metres() / ofBathymetry;
            if (Math.abs(factor - 1) > SAME_UNIT) {
                guess("with \"unit: " + unit.symbol() + "\" of the bathymetry",
                        pair -> pair.at((pair.depthM() - offsetM) * factor + offsetM));
            }
            double areasFactor = unit.metres() / ofAreas;
            if (Math.abs(areasFactor - 1) > SAME_UNIT) {
                guess("with \"unit: " + unit.symbol() + "\" of the depth areas", pair -> new Pair(pair.depthM(), pair.uncertaintyM(),
                        new ChartedDepth(pair.charted().shallowM() * areasFactor, pair.charted().deepM() * areasFactor)));
            }
        }
    }

    /** Towards the side to which more cells contradict, so far that nearly all of those would agree. */
    private void datum() {
        long deeper = pairs.stream().filter(pair -> pair.missM() > 0).count();
        long shoaler = pairs.stream().filter(pair -> pair.missM() < 0).count();
        int side = deeper > shoaler ? 1 : -1;
        double[] missesM = pairs.stream().mapToDouble(pair -> side * pair.missM()).filter(miss -> miss > 0).sorted().toArray();
        double shiftM = -side * Math.ceil(10 * missesM[(int) (SHIFTED * (missesM.length - 1))]) / 10;
        if (Math.abs(shiftM) <= MOST_SHIFT_M) {
            guess("if every depth were about " + Shown.metres(Math.abs(shiftM)) + (shiftM < 0 ? " less" : " more") + " (datum, datum-offset)",
                    pair -> pair.at(pair.depthM() + shiftM));
        }
    }

    private void guess(String remedy, UnaryOperator<Pair> without) {
        guesses.add(new Guess(remedy, agreeing(without)));
    }

    private long agreeing(UnaryOperator<Pair> changed) {
        return pairs.stream().map(changed).filter(pair -> pair.missM() == 0).count();
    }
}
