package org.seacairn.report;

import java.util.List;
import org.seacairn.report.Symbolizer.Paint;

/**
 * Colours by value: linear between neighbouring stops, in each sRGB channel and in opacity; that of the first stop below it and
 * of the last above it.
 *
 * @param stops one or more, by rising value
 */
public record ColorRamp(List<Stop> stops) {
    /** What a cell without a value gets: nothing. */
    public static final int TRANSPARENT = 0;

    /** @param label for the legend; empty where the style has none */
    public record Stop(double value, Paint paint, String label) {}

    public ColorRamp {
        stops = List.copyOf(stops);
    }

    /** The colour of a value as 0xaarrggbb, not premultiplied; {@link #TRANSPARENT} for NaN. */
    public int colorAt(double value) {
        if (Double.isNaN(value)) {
            return TRANSPARENT;
        }
        int above = 0;
        while (above < stops.size() && stops.get(above).value() <= value) {
            above++;
        }
        Stop low = stops.get(Math.max(0, above - 1));
        Stop high = stops.get(Math.min(above, stops.size() - 1));
        double share = low == high || above == 0 ? 0 : (value - low.value()) / (high.value() - low.value());
        int color = 0;
        for (int shift = 16; shift >= 0; shift -= 8) {
            color |= between(low.paint().rgb() >> shift & 0xff, high.paint().rgb() >> shift & 0xff, share) << shift;
        }
        return between(255 * low.paint().opacity(), 255 * high.paint().opacity(), share) << 24 | color;
    }

    private static int between(double low, double high, double share) {
        return (int) Math.round(low + share * (high - low));
    }
}
