package org.seacairn.export;

import java.nio.file.Path;
import java.util.List;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;

/** {@code sites.csv}: one line a site, best first. See {@link CsvTable} for the dialect. */
public final class SitesCsv {
    private SitesCsv() {}

    /** @throws org.seacairn.InputException if the file cannot be written */
    public static void write(Path file, SitingPlan plan, List<Site> sites) {
        CsvTable.write(file, SiteColumns.of(plan), sites);
    }
}
