package org.seacairn.export;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Lays out a {@link LinePlot}: title, panels that share the y axis, legend, notes. */
final class LinePlotDrawing {
    private static final int WIDTH = 960;
    private static final int PANEL_HEIGHT = 420;
    private static final int LEFT = 72;
    private static final int RIGHT = 20;
    private static final int BETWEEN = 26;
    private static final int LINE = 17;
    private static final int STEPS_DOWN = 8;
    /** A label of a tick with the room about it. */
    private static final int STEP_ACROSS = 48;

    /** Width of a letter of the 12 pixel text, more than the average of usual sans-serif faces. */
    private static final double LETTER = 6.6;
    private static final int SAMPLE = 38;

    private final LinePlot plot;
    private final List<String> names;
    private final List<String> title;
    private final List<List<String>> legend;
    private final List<String> notes = new ArrayList<>();
    private final AxisScale yScale;
    private final int panelTop;

    LinePlotDrawing(LinePlot plot) {
        this.plot = plot;
        this.names = plot.names();
        this.title = wrapped(plot.title(), (int) ((WIDTH - 2 * RIGHT) / LETTER / 1.35));
        this.legend = names.size() > 1 ? legendRows() : List.of();
        plot.notes().forEach(note -> notes.addAll(wrapped(note, (int) ((WIDTH - LEFT - RIGHT) / LETTER))));
        this.yScale = AxisScale.of(plot.panels().stream().flatMap(panel -> panel.series().stream())
                .flatMapToDouble(series -> IntStream.range(0, series.y().length).filter(series::has).mapToDouble(i -> series.y()[i])).toArray(), STEPS_DOWN);
        this.panelTop = 12 + title.size() * 22 + (plot.panels().stream().allMatch(panel -> panel.title().isEmpty()) ? 8 : 24);
    }

    String draw() {
        int bottom = panelTop + PANEL_HEIGHT + 44;
        Svg svg = new Svg(WIDTH, bottom + (legend.size() + notes.size()) * LINE + 24, plot.title(), plot.description());
        for (int i = 0; i < title.size(); i++) {
            svg.text(title.get(i), WIDTH / 2.0, 26 + i * 22, "text-anchor", "middle", "font-size", "16", "font-weight", "bold");
        }
        double middle = panelTop + PANEL_HEIGHT / 2.0;
        svg.text(plot.yLabel(), 18, middle, "text-anchor", "middle", "transform", "rotate(-90 18 " + Svg.number(middle) + ")");
        int count = plot.panels().size();
        double width = (WIDTH - LEFT - RIGHT - (count - 1.0) * BETWEEN) / count;
        for (int i = 0; i < count; i++) {
            panel(svg, plot.panels().get(i), LEFT + i * (width + BETWEEN), width, i == 0);
        }
        legend(svg, bottom + 12);
        for (int i = 0; i < notes.size(); i++) {
            svg.text(notes.get(i), LEFT, bottom + 20 + (legend.size() + i) * LINE, "fill", "#444444");
        }
        return svg.close();
    }

    private void panel(Svg svg, LinePlot.Panel panel, double left, double width, boolean first) {
        AxisScale xScale = AxisScale.of(panel.series().stream().flatMapToDouble(
                series -> IntStream.range(0, series.x().length).filter(series::has).mapToDouble(i -> series.x()[i])).toArray(),
                Math.max(2, (int) (width / STEP_ACROSS)));
        double bottom = panelTop + PANEL_HEIGHT;
        if (!panel.title().isEmpty()) {
            svg.text(panel.title(), left + width / 2, panelTop - 10, "text-anchor", "middle", "font-size", "13", "font-weight", "bold");
        }
        for (long tick : xScale.ticks()) {
            double x = left + width * xScale.along(xScale.value(tick));
            svg.line(x, panelTop, x, bottom, tick == 0 ? "#999999" : "#e2e2e2");
            svg.text(xScale.label(tick), x, bottom + 17, "text-anchor", "middle");
        }
        for (long tick : yScale.ticks()) {
            double y = down(yScale.value(tick));
            svg.line(left, y, left + width, y, tick == 0 ? "#999999" : "#e2e2e2");
            if (first) {
                svg.text(yScale.label(tick), left - 8, y + 4, "text-anchor", "end");
            }
        }
        svg.empty("rect", "x", Svg.number(left), "y", Svg.number(panelTop), "width", Svg.number(width), "height", Svg.number(PANEL_HEIGHT),
                "fill", "none", "stroke", "#666666");
        svg.text(panel.xLabel(), left + width / 2, bottom + 36, "text-anchor", "middle");
        for (LinePlot.Series series : panel.series()) {
            double[] x = IntStream.range(0, series.x().length).mapToDouble(i -> left + width * xScale.along(series.x()[i])).toArray();
            double[] y = IntStream.range(0, series.y().length).mapToDouble(i -> down(series.y()[i])).toArray();
            new SeriesDrawing(names.indexOf(series.name()), names.size(), x, y).draw(svg);
        }
    }

    private double down(double value) {
        double along = yScale.along(value);
        return panelTop + PANEL_HEIGHT * (plot.yDownward() ? along : 1 - along);
    }

    private void legend(Svg svg, double top) {
        for (int row = 0; row < legend.size(); row++) {
            double x = LEFT;
            double y = top + row * LINE;
            for (String name : legend.get(row)) {
                int series = names.indexOf(name);
                SeriesStyle style = SeriesStyle.of(series);
                style.line(svg, "M" + Svg.number(x) + " " + Svg.number(y) + "h" + SAMPLE);
                style.mark(svg, series, x + SAMPLE / 2.0, y);
                svg.text(name, x + SAMPLE + 7, y + 4);
                x += entryWidth(name);
            }
        }
    }

    private List<List<String>> legendRows() {
        List<List<String>> rows = new ArrayList<>();
        double used = Double.POSITIVE_INFINITY;
        for (String name : names) {
            double width = entryWidth(name);
            if (used + width > WIDTH - LEFT - RIGHT) {
                rows.add(new ArrayList<>());
                used = 0;
            }
            rows.get(rows.size() - 1).add(name);
            used += width;
        }
        return rows;
    }

    private static double entryWidth(String name) {
        return SAMPLE + 7 + name.length() * LETTER + 22;
    }

    /** Lines of at most so many letters, broken at spaces; a longer word stays whole. */
    private static List<String> wrapped(String text, int letters) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+")) {
            if (!line.isEmpty() && line.length() + 1 + word.length() > letters) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
