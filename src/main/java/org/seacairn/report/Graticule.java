package org.seacairn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Meridians and parallels at round minutes, of several densities: the coarsest is shown at first, the next ones when the map is
 * zoomed in. Each line's figure stands at the frame, where the script moves it along.
 */
final class Graticule {
    /** Tenths of a minute. */
    private static final int[] STEPS = {1, 2, 5, 10, 20, 50, 100, 200, 300, 600, 1200, 3000, 6000, 12_000, 18_000};
    private static final double PER_DEGREE = 600;
    /** Lines across the larger span at first. */
    private static final int FEW = 8;
    private static final int MOST = 130;
    private static final int PIECES = 16;
    /** A figure this near a corner would run into that of the other side. */
    private static final double CORNER = 24;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final MapPlane plane;
    private final List<Level> levels = new ArrayList<>();

    /** @param parallel else a meridian */
    private record Line(boolean parallel, String label, Coordinate[] vertices) {}

    private record Level(int step, List<Line> lines) {}

    Graticule(MapPlane plane) {
        this.plane = plane;
        plane.lonLatBox().ifPresent(this::fill);
    }

    private void fill(Envelope box) {
        double span = Math.max(box.getWidth(), box.getHeight()) * PER_DEGREE;
        for (int i = STEPS.length - 1; i >= 0; i--) {
            boolean tooFew = levels.isEmpty() && i > 0 && span / STEPS[i - 1] <= FEW;
            if (!tooFew && span / STEPS[i] <= MOST) {
                levels.add(level(STEPS[i], box));
            }
        }
    }

    private Level level(int step, Envelope box) {
        List<Line> lines = new ArrayList<>();
        for (long i = first(box.getMinY(), step); i * step <= box.getMaxY() * PER_DEGREE; i++) {
            add(lines, true, i * step, step, box);
        }
        for (long i = first(box.getMinX(), step); i * step <= box.getMaxX() * PER_DEGREE; i++) {
            add(lines, false, i * step, step, box);
        }
        return new Level(step, lines);
    }

    private static long first(double degrees, int step) {
        return (long) Math.ceil(degrees * PER_DEGREE / step);
    }

    private void add(List<Line> lines, boolean parallel, long tenths, int step, Envelope box) {
        Coordinate[] line = new Coordinate[PIECES + 1];
        double degrees = tenths / PER_DEGREE;
        for (int i = 0; i <= PIECES; i++) {
            double share = (double) i / PIECES;
            line[i] = parallel ? plane.at(box.getMinX() + share * box.getWidth(), degrees)
                    : plane.at(degrees, box.getMinY() + share * box.getHeight());
        }
        Geometry seen = plane.inSight(FACTORY.createLineString(line));
        for (int i = 0; i < seen.getNumGeometries(); i++) {
            if (!seen.getGeometryN(i).isEmpty()) {
                lines.add(new Line(parallel, label(tenths, parallel, step % 10 != 0), seen.getGeometryN(i).getCoordinates()));
            }
        }
    }

    /** Degrees and minutes, for example {@code 79°20′ W}; tenths of a minute where asked. */
    static String label(long tenthsOfMinute, boolean latitude, boolean withTenths) {
        long tenths = latitude ? tenthsOfMinute : tenthsOfMinute - 216_000 * Math.round(tenthsOfMinute / 216_000.0);
        long size = Math.abs(tenths);
        String minutes = String.format(Locale.ROOT, withTenths ? "%04.1f" : "%02.0f", size % 600 / 10.0);
        String side = tenths == 0 || !latitude && size == 108_000 ? "" : latitude ? tenths > 0 ? " N" : " S" : tenths > 0 ? " E" : " W";
        return size / 600 + "°" + minutes + "′" + side;
    }

    void write(Html html, LayerStyle style) {
        html.open("g", "id", "layer-graticule", "class", "layer", "data-title", "Graticule").newLine();
        for (Level level : levels) {
            html.open("g", "class", level == levels.get(0) ? "step" : "step off").newLine();
            style.rules().stream().flatMap(rule -> rule.symbolizersFor(1).stream())
                    .filter(Symbolizer.Line.class::isInstance).forEach(symbolizer -> {
                        html.open("g", SvgStyle.attributes(symbolizer));
                        level.lines.forEach(line -> html.empty("polyline", "points", points(line.vertices()),
                                "data-side", line.parallel() ? "left" : "below", "data-label", line.label()));
                        html.close("g").newLine();
                    });
            html.close("g").newLine();
        }
        html.close("g").newLine();
    }

    /** The figures at the frame at first. */
    void writeFigures(Html html) {
        html.open("g", "id", "map-figures").newLine();
        if (!levels.isEmpty()) {
            levels.get(0).lines.forEach(line -> figure(html, line));
        }
        html.close("g").newLine();
    }

    private void figure(Html html, Line line) {
        Coordinate[] v = line.vertices();
        double edge = line.parallel() ? 0 : plane.height();
        double most = line.parallel() ? plane.height() : plane.width();
        for (int i = 1; i < v.length; i++) {
            double a = line.parallel() ? v[i - 1].x : v[i - 1].y;
            double b = line.parallel() ? v[i].x : v[i].y;
            double share = (edge - a) / (b - a);
            if (a != b && share >= 0 && share <= 1) {
                double at = line.parallel() ? v[i - 1].y + share * (v[i].y - v[i - 1].y) : v[i - 1].x + share * (v[i].x - v[i - 1].x);
                if (at >= CORNER && at <= most - CORNER) {
                    String place = line.parallel() ? "translate(0 " + PathText.number(at, 1) + ") rotate(-90)"
                            : "translate(" + PathText.number(at, 1) + " " + PathText.number(edge, 1) + ")";
                    html.open("g", "transform", place).element("text", line.label(), "class", "upright", "y", line.parallel() ? "-6" : "15").close("g").newLine();
                    return;
                }
            }
        }
    }

    private static String points(Coordinate[] vertices) {
        StringBuilder points = new StringBuilder();
        for (Coordinate v : vertices) {
            points.append(points.isEmpty() ? "" : " ").append(PathText.number(v.x, 2)).append(',').append(PathText.number(v.y, 2));
        }
        return points.toString();
    }
}
