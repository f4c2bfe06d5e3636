package org.seacairn.export;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.seacairn.drop.StandingTable;
import org.seacairn.plan.Shown;

/** Plots of a descent, and of what a module can stand; SVG. */
public final class DropPlots {
    /** Dashes and marks that can still be told apart. */
    private static final int MOST_LINES = 6;
    private static final double KNOT_M_PER_S = 1852.0 / 3600;

    private DropPlots() {}

    /**
     * Depth against drift, speed and tilt, one line a profile of the current.
     *
     * @param site what the descent leads to
     */
    public static String descent(String site, List<DropTables.Step> steps) {
        return new LinePlot("The way down to " + site,
                "Depth, downward, against drift, sinking speed and tilt of the module, from the surface to the bottom.", "depth, m", true,
                List.of(panel("", "drift, m", steps, s -> s.touchdown().driftM()),
                        panel("", "sinking speed, m/s", steps, s -> s.touchdown().sinkSpeedMPerS()),
                        panel("", "tilt, degrees", steps, DropTables.Step::tiltDeg)),
                Cautions.DROP_LINES).svg();
    }

    private static LinePlot.Panel panel(String title, String xLabel, List<DropTables.Step> steps, ToDoubleFunction<DropTables.Step> x) {
        Map<String, List<DropTables.Step>> byProfile = new LinkedHashMap<>();
        steps.forEach(s -> byProfile.computeIfAbsent(s.profile().isEmpty() ? "the plan's current" : s.profile(), p -> new ArrayList<>()).add(s));
        return new LinePlot.Panel(title, xLabel, byProfile.entrySet().stream().limit(MOST_LINES).map(p -> new LinePlot.Series(p.getKey(),
                p.getValue().stream().mapToDouble(x).toArray(),
                p.getValue().stream().mapToDouble(s -> s.touchdown().depthM()).toArray())).toList());
    }

    /** Depth against the steepest slope by current, and against the embedment by bottom, in the current as stated. */
    public static String standing(String module, List<StandingTable.Row> rows, double factor) {
        String bottom = rows.get(0).bottom();
        Map<String, List<StandingTable.Row>> byCurrent = new LinkedHashMap<>();
        rows.stream().filter(r -> r.bottom().equals(bottom)).forEach(r -> byCurrent.computeIfAbsent(
                r.asStated() ? "current as stated" : String.format(Locale.ROOT, "%.0f kn at the surface", r.surfaceCurrentMPerS() / KNOT_M_PER_S),
                k -> new ArrayList<>()).add(r));
        Map<String, List<StandingTable.Row>> byBottom = new LinkedHashMap<>();
        rows.stream().filter(r -> r.asStated() && !Double.isNaN(r.embedment().depthM()))
                .forEach(r -> byBottom.computeIfAbsent("into " + r.bottom(), k -> new ArrayList<>()).add(r));
        List<LinePlot.Panel> panels = new ArrayList<>(List.of(
                panel("steepest slope at a factor of " + Shown.number(factor), "slope, degrees", byCurrent, StandingTable.Row::steepestDeg),
                panel("landing radius, 95 %", "radius, m", byCurrent, StandingTable.Row::landingRadiusM)));
        if (!byBottom.isEmpty()) {
            panels.add(panel("embedment", "embedment, m", byBottom, r -> r.embedment().depthM()));
        }
        return new LinePlot("What " + module + " can stand",
                "Depth, downward, against the steepest slope and the landing radius for several currents, and against the embedment for each bottom"
                        + " with a strength.", "depth, m", true, panels, Cautions.DROP_LINES).svg();
    }

    private static LinePlot.Panel panel(String title, String xLabel, Map<String, List<StandingTable.Row>> lines,
            ToDoubleFunction<StandingTable.Row> x) {
        return new LinePlot.Panel(title, xLabel, lines.entrySet().stream().limit(MOST_LINES).map(line -> new LinePlot.Series(line.getKey(),
                line.getValue().stream().mapToDouble(x).toArray(),
                line.getValue().stream().mapToDouble(StandingTable.Row::depthM).toArray())).toList());
    }

    /** Writes a plot. */
    public static void write(Path file, String svg) {
        OutputFile.text(file, out -> out.write(svg));
    }
}
