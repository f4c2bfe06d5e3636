package org.seacairn.cli;

import java.nio.file.Path;
import java.util.Locale;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.report.Page;

/** Lines of a summary for people, in the units of the plan's readers. */
final class Lines {
    private static final double METRES_PER_FOOT = 0.3048;

    private final Display display;
    private final StringBuilder text = new StringBuilder();

    Lines(Display display) {
        this.display = display;
    }

    void add(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values).stripTrailing()).append('\n');
    }

    /** Where the files are, and which of them to open. */
    static String files(Path outFolder) {
        return "Open " + outFolder.resolve(Page.FILE_NAME) + ", with map and tables; all files are in the same folder.";
    }

    void written(Path outFolder) {
        add("%s", files(outFolder));
    }

    /** A length on the ground or a depth, whole. */
    String length(double metres) {
        return display == Display.US ? String.format(Locale.ROOT, "%.0f ft", metres / METRES_PER_FOOT + 0.0)
                : String.format(Locale.ROOT, "%.0f m", metres + 0.0);
    }

    /** A length of an object, to a tenth. */
    String fineLength(double metres) {
        return display == Display.US ? String.format(Locale.ROOT, "%.1f ft", metres / METRES_PER_FOOT + 0.0)
                : String.format(Locale.ROOT, "%.1f m", metres + 0.0);
    }

    /** Latitude and longitude as a chart plotter takes them. */
    static String place(double longitudeDeg, double latitudeDeg) {
        return CoordinateText.formatLatitudeDdm(latitudeDeg) + "  " + CoordinateText.formatLongitudeDdm(longitudeDeg);
    }

    String text() {
        return text.toString();
    }
}
