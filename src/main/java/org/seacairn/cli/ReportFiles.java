package org.seacairn.cli;

import java.nio.file.Path;
import java.util.function.Function;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.report.Page;
import org.seacairn.report.PdfReport;
import org.seacairn.report.StyleSet;

/**
 * How a run reports.
 *
 * @param styles of the map and of the output
 * @param pdf on paper too
 */
record ReportFiles(StyleSet styles, boolean pdf) {
    /**
     * @param display says the size of the sheets
     * @param file where a file of the output is written, by its name
     */
    void write(Page page, Display display, Function<String, Path> file) {
        page.write(file.apply(Page.FILE_NAME));
        if (pdf) {
            PdfReport.write(page, display, file.apply(PdfReport.FILE_NAME));
        }
    }
}
