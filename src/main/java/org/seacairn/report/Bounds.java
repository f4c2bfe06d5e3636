package org.seacairn.report;

import java.util.List;

/** How much detail a page bears: some hundred rows. The rest is counted, and told where it is. */
final class Bounds {
    /** Rows of a table. */
    static final int ROWS = 400;
    /** Blocks of a site each. */
    static final int BLOCKS = 100;

    private Bounds() {}

    /** The first of a list. */
    static <T> List<T> first(List<T> all, int most) {
        return all.subList(0, Math.min(most, all.size()));
    }

    /** Says what was left out, if anything was. */
    static void rest(Html html, List<?> all, int most, String what, String file) {
        if (all.size() > most) {
            html.element("p", (all.size() - most) + " more " + what + " are not shown here; all " + all.size() + " are in " + file + ".",
                    "class", "rest").newLine();
        }
    }
}
