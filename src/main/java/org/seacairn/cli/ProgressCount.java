package org.seacairn.cli;

import java.util.Locale;

/**
 * How far a stage has come, in one line.
 *
 * @param done of what there is to do
 * @param total 0: nobody knows
 * @param unit what is counted, in the plural; empty: nothing is counted
 * @param seconds since counting began
 */
record ProgressCount(String stage, long done, long total, String unit, double seconds) {
    /** With it a line of 80 columns has room for all else, so that the bar keeps its length. */
    private static final int LONGEST_BAR = 20;
    private static final int SHORTEST_BAR = 5;
    /** A rate says nothing of what is to come before. */
    private static final double LEAST_S = 2;

    /** Plain ASCII, which every terminal has, and at most so many characters. */
    String text(int width) {
        String head = String.format(Locale.ROOT, "%-10s ", stage);
        if (unit.isEmpty()) {
            return cut(head + time(seconds), width);
        }
        String rate = amount(done / Math.max(seconds, 1e-9)) + " " + unit + "/s";
        if (total <= 0) {
            return cut(head + amount(done) + " " + unit + ", " + rate, width);
        }
        double share = Math.min(1, (double) done / total);
        String tail = String.format(Locale.ROOT, "%3.0f %%  %s%s", Math.floor(100 * share), rate,
                done == 0 || seconds < LEAST_S ? "" : ", " + time(seconds * (1 / share - 1)) + " left");
        int bar = Math.min(LONGEST_BAR, width - head.length() - "[] ".length() - tail.length());
        int full = (int) (bar * share);
        return cut(head + (bar < SHORTEST_BAR ? "" : "[" + "#".repeat(full) + ".".repeat(bar - full) + "] ") + tail, width);
    }

    private static String cut(String text, int width) {
        return text.substring(0, Math.min(text.length(), width));
    }

    private static String amount(double value) {
        return value < 1e4 ? String.format(Locale.ROOT, "%.0f", value) : value < 1e6 ? String.format(Locale.ROOT, "%.0f thousand", value / 1e3)
                : String.format(Locale.ROOT, "%.1f million", value / 1e6);
    }

    private static String time(double seconds) {
        return seconds < 100 ? String.format(Locale.ROOT, "%.0f s", seconds) : String.format(Locale.ROOT, "%.0f min", seconds / 60);
    }
}
