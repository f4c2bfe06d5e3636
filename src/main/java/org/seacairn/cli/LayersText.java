package org.seacairn.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Envelope;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.layer.GridValues;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan.BottomClass;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.Uncertainty;
import org.seacairn.score.BathymetryFacts;
import org.seacairn.score.ChartComparison;
import org.seacairn.score.GridFacts;
import org.seacairn.score.GridOverlap;
import org.seacairn.score.LayerFacts;
import org.seacairn.score.LayerFacts.ClassCount;
import org.seacairn.score.LayersReport;
import org.seacairn.score.PlanLayer.Role;

/** What {@code layers} prints for people: a block for each layer, one fact a line. */
final class LayersText {
    private static final double METRES_PER_FOOT = 0.3048;
    /** So that a bound that rounding took over the antimeridian is still named for its own side. */
    private static final double HAIR_DEG = 1e-6;
    private static final int ATTRIBUTES_SHOWN = 12;
    private static final String[] WINDS =
            {"north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"};

    private final StringBuilder text = new StringBuilder();
    private final LayersReport report;

    private LayersText(LayersReport report) {
        this.report = report;
    }

    static String of(LayersReport report) {
        LayersText page = new LayersText(report);
        page.head();
        report.grid().ifPresentOrElse(page::grid, page::noGrid);
        report.bathymetry().ifPresent(page::bathymetry);
        report.layers().forEach(page::layer);
        return page.text.toString();
    }

    private void head() {
        int read = report.layers().size() + (report.bathymetry().isPresent() ? 1 : 0);
        text.append(Shown.printable(report.plan().title())).append('\n');
        fact("plan", "%s", report.plan().file().getFileName());
        fact("layers", "%d read, %s, %s", read, counted(report.warningCount(), "warning"),
                report.problems().isEmpty() ? "no problem" : counted(report.problems().size(), "problem"));
        warnings(report.plan().warnings());
    }

    private void noGrid() {
        block("working grid");
        fact("none", "the bathymetry or the plan's crs does not allow one, so no overlap with it is told");
    }

    private void grid(GridFacts facts) {
        GridGeometry grid = facts.grid();
        block("working grid");
        fact("CRS", "%s", grid.crs().label());
        fact("cells", "%,d x %,d of %s, %,d in all", grid.cols(), grid.rows(), Shown.metres(grid.cellM()), grid.cells());
        extent(new Envelope(grid.west(), grid.east(), grid.south(), grid.north()), grid.crs(), facts.lonLat());
        fact("depths", "%s", facts.resampled() ? "resampled bilinearly from the bathymetry's cells"
                : "the bathymetry's cells as they are, not resampled");
        fact("scale error", "at most %.3f %% of a length", 100 * facts.largestScaleError());
        notes(facts.notes());
        warnings(facts.warnings());
    }

    private void bathymetry(BathymetryFacts facts) {
        GridValues values = facts.values();
        block("bathymetry");
        fact("file", "%s (%s)", facts.plan().source().file().getFileName(), facts.format());
        fact("CRS", "%s", facts.crs().label());
        fact("cells", "%,d x %,d of %s x %s %s, %,d in all", facts.cols(), facts.rows(), Shown.number(facts.cellWidth()),
                Shown.number(facts.cellHeight()), unit(facts.crs()), values.cells());
        extent(facts.extent(), facts.crs(), facts.lonLat());
        fact("unit", "%s by the plan, %s by the file", facts.plan().unit(),
                facts.statedUnit().isBlank() ? "none stated" : Shown.printable(facts.statedUnit()));
        fact("datum", "%s", facts.plan().datum().map(Shown::printable).orElse("none stated"));
        if (facts.plan().datumOffsetM() != 0) {
            fact("offset", "%s, in every depth here but not in the values", Shown.metres(facts.plan().datumOffsetM()));
        }
        fact("uncertainty", "%s", uncertainty(facts.plan().uncertainty()));
        fact("no-data", "%s of the cells (%,d)", Shown.percent(values.missing(), values.cells()), values.missing());
        if (values.present() > 0) {
            fact("values", "%s to %s in the file (%s)", Shown.number(values.least()), Shown.number(values.greatest()),
                    facts.plan().values().name().toLowerCase(Locale.ROOT));
            fact("depths", "%s", depths(facts));
            if (!values.within().isEmpty()) {
                Limits limits = report.plan().limits();
                fact("limits", "%s of the cells with a value lie within %s to %s",
                        Shown.percent(values.within().get(0), values.present()),
                        Shown.number(limits.shallowestM().orElseThrow()), Shown.metres(limits.deepestM().orElseThrow()));
            }
        }
        warnings(facts.warnings());
    }

    private String depths(BathymetryFacts facts) {
        String metres = Shown.number(facts.shallowestM()) + " to " + Shown.metres(facts.deepestM());
        String feet = String.format(Locale.ROOT, " (%.0f to %.0f ft)",
                facts.shallowestM() / METRES_PER_FOOT, facts.deepestM() / METRES_PER_FOOT);
        return metres + (report.plan().display() == Display.US ? feet : "")
                + (facts.shallowestM() < 0 ? "; negative is above the datum" : "");
    }

    private static String uncertainty(Uncertainty u) {
        return u.equals(Uncertainty.NONE) ? u.source() : Shown.printable(u.source()) + ": at 100 m depth "
                + (u.cells().isPresent() ? "" : Shown.metres(u.verticalM(100)) + " vertical, ") + Shown.metres(u.horizontalM(100)) + " horizontal (95 %)";
    }

    private void layer(LayerFacts facts) {
        block(switch (facts.layer().role()) {
            case KEEP_OFF -> "keep-off " + Shown.quoted(facts.layer().source().label());
            case COVERAGE -> facts.layer().source().label();
            default -> facts.layer().role().name().toLowerCase(Locale.ROOT).replace('_', '-');
        });
        fact("file", "%s (%s%s)", facts.layer().source().file().getFileName(), facts.format(),
                facts.layer().source().table().map(t -> ", table " + Shown.quoted(t)).orElse(""));
        fact("CRS", "%s", facts.crs().label());
        fact("features", "%,d (%s); %s, %s", facts.features(), facts.kinds().entrySet().stream()
                        .map(k -> k.getValue() + " " + k.getKey()).collect(Collectors.joining(", ")),
                facts.withoutGeometry() == 0 ? "all have a geometry" : facts.withoutGeometry() + " more without geometry",
                facts.invalid().isEmpty() ? "all are valid" : "see the warnings for those that are not right");
        extent(facts.extent(), facts.crs(), facts.lonLat());
        facts.overlap().ifPresent(this::overlap);
        if (report.grid().isPresent() && facts.overlap().isEmpty()) {
            fact("on the grid", "cannot be told");
        }
        fact("attributes", "%s", attributes(facts.attributes()));
        for (ClassCount c : facts.classes()) {
            fact("class", "%s: %s, %s", c.name().isEmpty() ? "(none)" : Shown.printable(c.name()),
                    counted(c.polygons(), "polygon"), c.planned().map(LayersText::planned).orElse(
                            c.name().isEmpty() ? "unmapped" : "not named by the plan"));
        }
        facts.chart().ifPresent(this::chart);
        notes(facts.notes());
        warnings(facts.warnings());
    }

    private void chart(ChartComparison chart) {
        fact("compared", "%,d of %,d cells looked at; %,d with a depth lie in no area, %,d in an area have no depth", chart.compared(),
                chart.looked(), chart.outside(), chart.chartOnly());
        if (chart.compared() > 0) {
            fact("charted", "%s within the charted range, %s shoaler, %s deeper, beyond the bathymetry's uncertainty",
                    Shown.percent(chart.within(), chart.compared()), Shown.percent(chart.shoaler(), chart.compared()),
                    Shown.percent(chart.deeper(), chart.compared()));
        }
        if (chart.silentAreas() > 0) {
            fact("silent", "%s without a charted depth", counted(chart.silentAreas(), "polygon"));
        }
    }

    private static String attributes(List<String> names) {
        return names.isEmpty() ? "none" : names.stream().limit(ATTRIBUTES_SHOWN)
                .map(name -> name.isBlank() ? Shown.quoted(name) : Shown.printable(name)).collect(Collectors.joining(", "))
                + (names.size() > ATTRIBUTES_SHOWN ? " and " + (names.size() - ATTRIBUTES_SHOWN) + " more" : "");
    }

    private static String planned(BottomClass c) {
        return c.suitability().isPresent() ? "suitability " + Shown.number(c.suitability().getAsDouble()) : "never";
    }

    private void overlap(GridOverlap overlap) {
        if (overlap.onGrid() > 0) {
            fact("on the grid", "%,d of %,d features (%s)", overlap.onGrid(), overlap.features(),
                    Shown.percent(overlap.onGrid(), overlap.features()));
        } else {
            fact("on the grid", "none; the nearest about %s to the %s", distance(overlap.nearestM().orElseThrow()),
                    WINDS[Math.floorMod(Math.round(overlap.bearingDeg().orElseThrow() / 45), 8)]);
        }
    }

    /** Two digits: the figure is no better. */
    private static String distance(double metres) {
        double unit = Math.pow(10, Math.max(0, Math.floor(Math.log10(Math.max(1, metres))) - 1));
        double rounded = Math.round(metres / unit) * unit;
        return rounded >= 1000 ? Shown.number(rounded / 1000) + " km" : Shown.metres(rounded);
    }

    private void extent(Envelope box, Crs crs, Optional<Envelope> lonLat) {
        int decimals = crs.isGeographic() ? 7 : 2;
        fact("extent", "%s to %s %s, %s to %s %s, %s",
                fixed(box.getMinX(), decimals), fixed(box.getMaxX(), decimals), crs.isGeographic() ? "longitude" : "east",
                fixed(box.getMinY(), decimals), fixed(box.getMaxY(), decimals), crs.isGeographic() ? "latitude" : "north",
                unit(crs));
        fact("", "%s", lonLat.map(b -> CoordinateText.formatLatitudeDdm(b.getMinY()) + " to "
                + CoordinateText.formatLatitudeDdm(b.getMaxY()) + ", " + CoordinateText.formatLongitudeDdm(turned(b.getMinX()))
                + " to " + CoordinateText.formatLongitudeDdm(-turned(-b.getMaxX()))).orElse("longitude and latitude cannot be told"));
    }

    /** A western bound within -180 inclusive to 180 exclusive; of an eastern one, take it of the negative. */
    private static double turned(double degrees) {
        return Math.max(-180, degrees - 360 * Math.floor((degrees + 180 + HAIR_DEG) / 360));
    }

    private static String fixed(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    private static String unit(Crs crs) {
        if (crs.isGeographic()) {
            return "degrees";
        }
        return crs.isMetric() ? "metres" : "units of " + Shown.metres(crs.metresPerUnit());
    }

    private static String counted(int count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    private void block(String name) {
        text.append('\n').append(name).append('\n');
    }

    private void notes(List<String> notes) {
        notes.forEach(note -> fact("note", "%s", note));
    }

    private void warnings(List<String> warnings) {
        warnings.forEach(warning -> fact("warning", "%s", warning));
    }

    private void fact(String name, String format, Object... values) {
        text.append(String.format(Locale.ROOT, "  %-12s", name))
                .append(String.format(Locale.ROOT, format, values).stripTrailing()).append('\n');
    }
}
