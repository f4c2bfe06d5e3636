package org.seacairn.layer;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * Reads a text of soundings, one a line: x, y and a value, parted by commas, semicolons, tabs or blanks. All bad lines are found
 * before the file is refused.
 */
final class SoundingText {
    /** More problems than this are counted and not told one by one. */
    private static final int PROBLEMS_TOLD = 20;
    /** Deeper than the Challenger Deep (10.9 km), higher than Everest (8.8 km); both from memory. */
    private static final double BEYOND_ALL_M = 11_000;
    /** Numbers that stand where there is no depth (common practice, no source), and the least metres at which they are taken for that. */
    private static final double[] USUAL_FILLS = {9999, 99_999, 999_999, 32_767, 32_768};
    private static final double LEAST_FILL_M = 1000;

    private final LayerFile source;
    private final Path file;
    private final double metresPerUnit;
    private final Soundings soundings = new Soundings();
    private final List<String> problems = new ArrayList<>();
    private long badLines;
    private char delimiter;
    private SoundingColumns columns;
    private Crs crs;
    private int wrapped;
    private boolean ended;

    private SoundingText(SitingPlan.Bathymetry plan) {
        this.source = plan.source();
        this.file = source.file();
        this.metresPerUnit = plan.metresPerUnit();
    }

    /** @throws InputException if the file is no text of soundings, or a line of it is bad: file and line of each */
    static SoundingText read(SitingPlan.Bathymetry plan) {
        SoundingText text = new SoundingText(plan);
        try (SoundingLines lines = new SoundingLines(text.file)) {
            text.read(lines);
            text.ended = lines.ended();
        } catch (IOException e) {
            throw VectorReader.problem(text.file, "text", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
        return text;
    }

    Soundings soundings() {
        return soundings;
    }

    Crs crs() {
        return crs;
    }

    String statedUnit() {
        return columns.statedUnit();
    }

    List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (source.crs().isEmpty()) {
            notes.add("its longitudes and latitudes are taken as WGS 84, since a text of soundings states no CRS");
        }
        if (wrapped > 0) {
            notes.add(wrapped + " longitudes above 180 are taken less 360");
        }
        if (!ended) {
            notes.add(DecodedText.WITHOUT_END);
        }
        return notes;
    }

    private void read(SoundingLines lines) throws IOException {
        String first = lines.next();
        if (first == null) {
            throw VectorReader.problem(file, "line 1", "the file holds no sounding; get it again");
        }
        int firstLine = lines.line();
        String second = lines.next();
        delimiter = SoundingColumns.delimiter(second == null ? first : second);
        begin(first, firstLine);
        if (!columns.header()) {
            sounding(first, firstLine);
        }
        for (String text = second; text != null; text = lines.next()) {
            sounding(text, lines.line());
        }
        if (badLines > PROBLEMS_TOLD) {
            problems.add(file.getFileName() + ": and " + (badLines - PROBLEMS_TOLD) + " more lines like these");
        }
        if (badLines > 0) {
            throw new InputException(problems);
        }
        if (soundings.size() == 0) {
            throw VectorReader.problem(file, "line " + lines.line(), "no sounding follows the header; get the file again");
        }
    }

    private void begin(String first, int line) {
        Optional<Crs> stated = source.crs().map(text -> LayerCrs.byPlan(source));
        try {
            columns = SoundingColumns.find(SoundingColumns.split(first, delimiter), source, stated);
        } catch (InputException e) {
            throw VectorReader.problem(file, "line " + line, e.getMessage(), e);
        }
        if (!columns.header() && stated.isEmpty()) {
            throw Bathymetries.withoutCrs(file);
        }
        crs = stated.orElse(Crs.WGS84);
    }

    private void sounding(String text, int line) {
        List<String> fields = SoundingColumns.split(text, delimiter);
        if (fields.size() != columns.count()) {
            note(line, "has " + fields.size() + " columns where the first line has " + columns.count() + "; complete the line or delete it");
            return;
        }
        double x = number(fields, columns.x(), line);
        double y = number(fields, columns.y(), line);
        double value = number(fields, columns.value(), line);
        if (Double.isNaN(x) || Double.isNaN(y) || Double.isNaN(value) || !isLevel(value, line) || !isPlace(x, y, line)) {
            return;
        }
        if (soundings.size() == Soundings.most()) {
            throw VectorReader.problem(file, "line " + line, "there are more than " + Soundings.most() + " soundings, which is what fits into"
                    + " memory; give Java more with -Xmx, thin the soundings out, or make a grid of them");
        }
        boolean beyond = crs.isGeographic() && x > 180;
        wrapped += beyond ? 1 : 0;
        soundings.add(beyond ? x - 360 : x, y, (float) value, line);
    }

    private double number(List<String> fields, int column, int line) {
        double number = SoundingColumns.number(fields.get(column));
        if (Double.isNaN(number)) {
            note(line, "\"" + XmlElements.shown(fields.get(column)) + "\" is no number; correct the line or delete it");
        }
        return number;
    }

    private boolean isLevel(double value, int line) {
        double metres = Math.abs(value) * metresPerUnit;
        if (metres > LEAST_FILL_M) {
            for (double fill : USUAL_FILLS) {
                if (Math.abs(value) == fill) {
                    note(line, "the value " + Shown.number(value) + " looks like one that stands for no depth; delete the line");
                    return false;
                }
            }
        }
        if (metres > BEYOND_ALL_M) {
            note(line, "the value " + Shown.number(value) + " is deeper than any ocean and higher than any mountain in the plan's unit;"
                    + " correct the line or delete it, or correct the plan's unit");
            return false;
        }
        return true;
    }

    private boolean isPlace(double x, double y, int line) {
        if (crs.isGeographic() && !(Math.abs(y) <= 90 && x >= -180 && x <= 360)) {
            note(line, "longitude " + Shown.number(x) + ", latitude " + Shown.number(y) + " is no place on earth"
                    + (Math.abs(x) <= 90 && Math.abs(y) <= 360 ? "; it reads well the other way round, so longitude and latitude look swapped"
                            : "; correct the line, or state the soundings' projected crs in the plan"));
            return false;
        }
        return true;
    }

    private void note(int line, String whatAndRemedy) {
        badLines++;
        if (badLines <= PROBLEMS_TOLD) {
            problems.add(file.getFileName() + ", line " + line + ": " + whatAndRemedy);
        }
    }
}
