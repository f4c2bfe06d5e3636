package org.seacairn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntUnaryOperator;

/** The rasters of a map as pictures: depth, score, what is ruled out, and where each reason stands. */
final class RasterPictures {
    /** Steps between the least and the largest value: finer ones are not seen, and make the file larger. */
    private static final int STEPS = 62;

    private final ReducedRasters rasters;
    private final MapPlane plane;

    RasterPictures(ReducedRasters rasters, MapPlane plane) {
        this.rasters = rasters;
        this.plane = plane;
    }

    /** Least and largest value; empty where there is none. */
    static Optional<double[]> range(float[] values) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (float value : values) {
            if (!Float.isNaN(value)) {
                least = Math.min(least, value);
                most = Math.max(most, value);
            }
        }
        return least <= most ? Optional.of(new double[] {least, most}) : Optional.empty();
    }

    /** A layer of one picture of values. */
    void values(Html html, String id, String title, float[] values, ColorRamp ramp) {
        range(values).ifPresent(range -> {
            open(html, id, title);
            picture(html, palette(ramp, range), i -> entry(values[i], range), "");
            html.close("g").newLine();
        });
    }

    /** Entry 0 is for no value; the others are the colours of the middles of equal steps. */
    private static int[] palette(ColorRamp ramp, double[] range) {
        int[] argb = new int[STEPS + 1];
        for (int i = 0; i < STEPS; i++) {
            argb[i + 1] = ramp.colorAt(range[0] + (range[1] - range[0]) * (i + 0.5) / STEPS);
        }
        return argb;
    }

    private static int entry(float value, double[] range) {
        if (Float.isNaN(value)) {
            return 0;
        }
        double share = range[1] > range[0] ? (value - range[0]) / (range[1] - range[0]) : 0;
        return 1 + (int) Math.min(STEPS - 1, Math.floor(share * STEPS));
    }

    /** One veil over all that is ruled out, and hidden at first one picture for each reason that stands anywhere. */
    List<Integer> reasons(Html html, int[] masks, ColorRamp veil, ColorRamp picked, int count) {
        int all = 0;
        for (int mask : masks) {
            all |= mask;
        }
        List<Integer> standing = new ArrayList<>();
        open(html, "reasons", "Ruled out");
        picture(html, new int[] {0, veil.colorAt(1)}, i -> masks[i] != 0 ? 1 : 0, " data-reason=\"all\"");
        for (int bit = 0; bit < count; bit++) {
            int only = 1 << bit;
            if ((all & only) != 0) {
                picture(html, new int[] {0, picked.colorAt(1)}, i -> (masks[i] & only) != 0 ? 1 : 0,
                        " class=\"off\" data-reason=\"" + bit + "\"");
                standing.add(bit);
            }
        }
        html.close("g").newLine();
        return standing;
    }

    private static void open(Html html, String id, String title) {
        html.open("g", "id", "layer-" + id, "class", "layer", "data-title", title).newLine();
    }

    private void picture(Html html, int[] argb, IntUnaryOperator entry, String attributes) {
        double pixel = rasters.cellsPerPixel() * plane.cell();
        // The last pixels reach over the grid where it is no whole number of them; the view cuts that off.
        html.ready("<image width=\"" + PathText.number(rasters.cols() * pixel, 2) + "\" height=\"" + PathText.number(rasters.rows() * pixel, 2)
                + "\" preserveAspectRatio=\"none\"" + attributes + " href=\""
                + PalettePng.dataUri(rasters.cols(), rasters.rows(), argb, entry) + "\"/>").newLine();
    }
}
