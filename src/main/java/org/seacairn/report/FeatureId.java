package org.seacairn.report;

import java.util.Locale;
import org.seacairn.export.AreaTables.Candidate;
import org.seacairn.place.Site;

/**
 * What joins a row, a block and a feature of the map: the same in {@code data-feature} of all three. Made of our own
 * names and counts only, never of a name out of somebody's file.
 */
public final class FeatureId {
    private FeatureId() {}

    /** Of a site, as {@code site-S01}; one whose name came out of somebody's file goes by its rank. */
    public static String of(Site site) {
        return "site-" + (site.name().matches("[A-Z][0-9]+") ? site.name() : site.rank());
    }

    /** Of a candidate area, as {@code area-A1}. */
    public static String of(Candidate area) {
        return "area-" + area.name();
    }

    /**
     * Of a proposed site.
     *
     * @param index from 0, in the order of the proposal
     */
    public static String proposed(int index) {
        return String.format(Locale.ROOT, "proposed-%d", index + 1);
    }

    /**
     * Of a gap of a chain.
     *
     * @param index from 0, in the order of the chain
     */
    public static String gap(int index) {
        return String.format(Locale.ROOT, "gap-%d", index + 1);
    }
}
