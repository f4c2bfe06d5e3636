package org.seacairn.review;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.criterion.ChartedDepth;
import org.seacairn.plan.Shown;

/** Gathers what charted depth areas say of the places of one site; the worst of them decides, and the note tells of the others. */
final class ChartedDepthFinding {
    /** What the chart says of a place. */
    enum Kind {
        AGREES(Verdict.PASS), SHOALER(Verdict.MARGINAL), DEEPER(Verdict.MARGINAL), UNSURVEYED(Verdict.MARGINAL),
        TOO_SHALLOW(Verdict.FAIL), TOO_DEEP(Verdict.FAIL);

        private final Verdict verdict;

        Kind(Verdict verdict) {
            this.verdict = verdict;
        }
    }

    /** Where a kind is worst, and at how many places it was met. */
    private record Tally(Figures figures, Supplier<Coordinate> at, ChartedDepth.Area charted, int count) {
        /** The smaller the worse; an end that is not known is no figure to be afraid of. */
        double marginM() {
            return Double.isNaN(figures.margin()) ? Double.POSITIVE_INFINITY : figures.margin();
        }
    }

    private final ProposedSite site;
    private final RuleText rule;
    private final WorkingMap map;
    private final Map<Kind, Tally> tallies = new EnumMap<>(Kind.class);
    private int places;
    private int outside;
    private Supplier<Coordinate> firstOutside;

    ChartedDepthFinding(ProposedSite site, RuleText rule, WorkingMap map) {
        this.site = site;
        this.rule = rule;
        this.map = map;
    }

    /** A place that no area holds. */
    void addOutside(Supplier<Coordinate> lonLat) {
        firstOutside = outside == 0 ? lonLat : firstOutside;
        outside++;
        places++;
    }

    /** @param lonLat the place, asked for only if it is the one to be told of */
    void add(Kind kind, Figures figures, Supplier<Coordinate> lonLat, ChartedDepth.Area charted) {
        Tally former = tallies.get(kind);
        Tally now = new Tally(figures, lonLat, charted, former == null ? 1 : former.count + 1);
        tallies.put(kind, former == null || now.marginM() < former.marginM() ? now
                : new Tally(former.figures, former.at, former.charted, now.count));
        places++;
    }

    Finding offTheGrid() {
        return finding(Figures.metresAtLeast(Double.NaN, Double.NaN, 0), Verdict.NO_DATA, "", site.geometry().getCoordinate(),
                "off the grid of the bathymetry");
    }

    /** @param partlyOff whether some of the site lies so far off the grid that it was not looked at */
    Finding finding(boolean partlyOff) {
        List<String> notes = new ArrayList<>();
        tallies.forEach((kind, tally) -> notes.add(note(kind, tally)));
        if (tallies.containsKey(Kind.SHOALER) || tallies.containsKey(Kind.DEEPER)) {
            notes.add("look at sign, unit, datum and position of both, and for a shoal that one of them lacks");
        }
        if (outside > 0) {
            notes.add("outside every charted depth area" + (places == 1 ? "" : ", " + at(outside))
                    + (tallies.isEmpty() ? "" : "; the figures are of the others"));
        }
        if (partlyOff) {
            notes.add("part of it lies off the grid of the bathymetry");
        }
        String note = String.join("; ", notes);
        if (tallies.isEmpty()) {
            return finding(Figures.metresAtLeast(Double.NaN, Double.NaN, 0), Verdict.NO_DATA, "", firstOutside.get(), note);
        }
        Kind worst = worst();
        Tally tally = tallies.get(worst);
        boolean unknown = worst.verdict != Verdict.FAIL && (outside > 0 || partlyOff);
        return finding(tally.figures, unknown ? Verdict.NO_DATA : worst.verdict, "#" + tally.charted.feature().id(), tally.at.get(), note);
    }

    private Kind worst() {
        Kind worst = null;
        for (Map.Entry<Kind, Tally> entry : tallies.entrySet()) {
            int worse = worst == null ? 1 : entry.getKey().verdict.compareTo(worst.verdict);
            if (worse > 0 || worse == 0 && entry.getValue().marginM() < tallies.get(worst).marginM()) {
                worst = entry.getKey();
            }
        }
        return worst;
    }

    private String note(Kind kind, Tally tally) {
        String charted = tally.charted.depth().toString();
        String where = places == 1 ? "" : ", " + at(tally.count);
        return switch (kind) {
            case AGREES -> "charted " + charted + (tallies.size() == 1 ? "" : where);
            case SHOALER -> "shoaler than the charted " + charted + " and the bathymetry's uncertainty" + where;
            case DEEPER -> "deeper than the charted " + charted + " and the bathymetry's uncertainty" + where;
            case UNSURVEYED -> "depth from a charted depth area only, " + charted + where + "; survey the place";
            case TOO_SHALLOW -> "no depth but the charted " + charted + where + (tally.charted.depth().deepM() <= 0
                    ? ", which is no water at all" : ", and all of it is less than the " + asked(tally.figures) + " that the limits ask for");
            case TOO_DEEP -> "no depth but the charted " + charted + where + ", and all of it is more than the "
                    + asked(tally.figures) + " that the limits allow";
        };
    }

    private static String asked(Figures figures) {
        return Shown.metres(figures.required());
    }

    private String at(int count) {
        return "at " + count + " of " + places + " places";
    }

    private Finding finding(Figures figures, Verdict verdict, String nearest, Coordinate lonLat, String note) {
        Coordinate place = map.wgs84(lonLat.x, lonLat.y);
        return new Finding(site.name(), rule, figures, verdict, nearest, Double.NaN, Double.NaN, Double.NaN, place.x, place.y, note);
    }
}
