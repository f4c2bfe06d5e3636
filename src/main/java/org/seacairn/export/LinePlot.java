package org.seacairn.export;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * A line plot of one panel or of several side by side that share the y axis, such as drift, speed and tilt against depth. Series of
 * the same name look the same in every panel, and each has a dash, a mark and a colour of its own, so that they can be told apart
 * in grey too. A value that is not finite leaves a gap.
 *
 * @param title above the plot
 * @param description in words what the plot shows, for those who cannot see it; not drawn
 * @param yLabel with its unit
 * @param yDownward whether y grows downward, as a depth does
 * @param panels from left to right, one or more
 * @param notes lines below the plot, such as cautions
 */
public record LinePlot(
        String title, String description, String yLabel, boolean yDownward, List<Panel> panels, List<String> notes) {

    /**
     * @param title above the panel, may be empty
     * @param xLabel with its unit
     * @param series in the order of the legend
     */
    public record Panel(String title, String xLabel, List<Series> series) {
        public Panel {
            series = List.copyOf(series);
        }
    }

    /** Points joined in their order; not finite where there is a gap. */
    public record Series(String name, double[] x, double[] y) {
        /** @throws IllegalArgumentException if there are not as many x as y */
        public Series {
            if (x.length != y.length) {
                throw new IllegalArgumentException(name + " has " + x.length + " x and " + y.length + " y");
            }
            x = x.clone();
            y = y.clone();
        }

        boolean has(int point) {
            return Double.isFinite(x[point]) && Double.isFinite(y[point]);
        }
    }

    /** @throws IllegalArgumentException if there is no panel, or there are more names of series than can be told apart */
    public LinePlot {
        panels = List.copyOf(panels);
        notes = List.copyOf(notes);
        int names = names(panels).size();
        if (panels.isEmpty() || names > SeriesStyle.COUNT) {
            throw new IllegalArgumentException("no plot of " + panels.size() + " panels and " + names + " series, " + SeriesStyle.COUNT + " at most");
        }
    }

    /** The plot as a file of its own: SVG 1.1 (W3C, 2011), in UTF-8, that needs nothing from outside. The same plot gives the same text. */
    public String svg() {
        return new LinePlotDrawing(this).draw();
    }

    /** Names of all series, in the order in which they are met. */
    List<String> names() {
        return List.copyOf(names(panels));
    }

    private static Set<String> names(List<Panel> panels) {
        Set<String> names = new LinkedHashSet<>();
        panels.forEach(panel -> panel.series().forEach(series -> names.add(series.name())));
        return names;
    }
}
