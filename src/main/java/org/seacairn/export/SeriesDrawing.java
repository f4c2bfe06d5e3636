package org.seacairn.export;

/**
 * One series on the page: its line, broken where there is a gap, and its marks. A series of few points has a mark at each; along
 * one of many they stand apart, and those of another series elsewhere, so that lines on top of each other show both.
 *
 * @param index of the series among all
 * @param count of all series
 * @param x pixels, not finite in a gap
 * @param y pixels, not finite in a gap
 */
record SeriesDrawing(int index, int count, double[] x, double[] y) {
    private static final int FEW = 12;
    private static final double APART = 90;

    void draw(Svg svg) {
        SeriesStyle style = SeriesStyle.of(index);
        String path = path();
        if (!path.isEmpty()) {
            style.line(svg, path);
        }
        boolean few = points() <= FEW;
        double next = APART * (index + 1) / (count + 1);
        double length = 0;
        for (int i = 0; i < x.length; i++) {
            if (!has(i)) {
                continue;
            }
            length += has(i - 1) ? Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]) : 0;
            boolean alone = !has(i - 1) && !has(i + 1);
            if (few || alone || length >= next) {
                style.mark(svg, index, x[i], y[i]);
            }
            while (length >= next) {
                next += APART;
            }
        }
    }

    private String path() {
        StringBuilder path = new StringBuilder();
        String before = "";
        for (int i = 0; i < x.length; i++) {
            if (!has(i) || !has(i - 1) && !has(i + 1)) {
                continue;
            }
            String place = Svg.number(x[i]) + " " + Svg.number(y[i]);
            // Many a point of a fine table lies on the pixel of the one before.
            if (!has(i - 1) || !place.equals(before)) {
                path.append(has(i - 1) ? 'L' : 'M').append(place);
            }
            before = place;
        }
        return path.toString();
    }

    private int points() {
        int points = 0;
        for (int i = 0; i < x.length; i++) {
            points += has(i) ? 1 : 0;
        }
        return points;
    }

    private boolean has(int i) {
        return i >= 0 && i < x.length && Double.isFinite(x[i]) && Double.isFinite(y[i]);
    }
}
