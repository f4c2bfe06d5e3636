package org.seacairn.report;

import java.util.Comparator;
import java.util.List;
import org.seacairn.criterion.Reasons;
import org.seacairn.export.ReasonCount;
import org.seacairn.plan.SitingPlan.Display;

/**
 * What each reason ruled out, of how much ground, and what it alone did.
 *
 * @param ground that the shares are of, for example {@code the grid}
 * @param cells of that ground
 * @param alone whether it is known what each did alone
 */
record ReasonsSection(Display display, String ground, long cells, List<ReasonCount> reasons, boolean alone) implements Section {
    private static final String KEEP_OFF = Reasons.keepOff("");

    @Override
    public String id() {
        return "reasons";
    }

    @Override
    public String heading() {
        return "What ruled ground out";
    }

    @Override
    public void write(Html html) {
        Units units = new Units(display);
        if (cells == 0) {
            html.element("p", "There is no ground to speak of.").newLine();
            return;
        }
        List<ReasonCount> met = reasons.stream().filter(reason -> reason.cells() > 0)
                .sorted(Comparator.comparingLong(ReasonCount::cells).reversed()).toList();
        List<String> unmet = reasons.stream().filter(reason -> reason.cells() == 0).map(ReasonCount::reason).toList();
        PageTable<ReasonCount> table = new PageTable<ReasonCount>("Ground ruled out by each reason, as a share of " + ground + "; a place may have several")
                .name("Reason", ReasonCount::reason)
                .figure("Share (%)", reason -> percent(reason.cells())).sortedBy(reason -> Long.toString(reason.cells()))
                .cell("Of all", (h, reason) -> Bar.share(h, (double) reason.cells() / cells))
                .figure("Area (" + units.area() + ")", reason -> units.area(reason.km2() * 1e6));
        if (alone) {
            table.figure("By it alone (%)", reason -> percent(reason.aloneCells())).sortedBy(reason -> Long.toString(reason.aloneCells()));
        }
        table.cell("Meaning", (h, reason) -> meaning(h, reason.reason())).sortable().write(html, met);
        if (!unmet.isEmpty()) {
            html.open("p", "class", "note").text("Ruled out nothing: ").line(String.join(", ", unmet)).text(".").close("p").newLine();
        }
    }

    /** 0.0 is kept for nothing at all. */
    private String percent(long part) {
        double share = (double) part / cells;
        return part > 0 && share < 0.0005 ? "< 0.1" : Units.percent(share);
    }

    static void meaning(Html html, String reason) {
        if (reason.startsWith(KEEP_OFF)) {
            html.text("nearer than required to a feature of ").name(reason.substring(KEEP_OFF.length()));
            return;
        }
        html.text(switch (reason) {
            case Reasons.NO_DEPTH -> "the bathymetry has no depth there";
            case Reasons.NO_TERRAIN -> "slope or ruggedness is asked for, and a depth beside it is missing";
            case Reasons.OUTSIDE_AREA -> "not within the areas that the plan names";
            case Reasons.TOO_SHALLOW -> "less depth, or less water over the module, than the limits ask";
            case Reasons.TOO_TALL -> "the module would take more of the depth than its share";
            case Reasons.TOO_DEEP -> "deeper than the limit";
            case Reasons.TOO_STEEP -> "steeper than the limit";
            case Reasons.TOO_ROUGH -> "rougher than the limit";
            case Reasons.BOTTOM_UNSUITABLE -> "a bottom class that the plan never allows";
            case Reasons.BOTTOM_UNMAPPED -> "nobody has mapped the bottom there";
            case Reasons.TOO_SOFT -> "the base would sink in farther than the limit";
            case Reasons.UNSTABLE -> "too little safety against overturning";
            case Reasons.NEAR_REEF -> "nearer than required to an existing reef";
            case Reasons.LANDING_ROOM -> "another reason stands within the landing radius";
            default -> "";
        });
    }
}
