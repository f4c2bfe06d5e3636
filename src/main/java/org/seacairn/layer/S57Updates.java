package org.seacairn.layer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The updates {@code .001}, {@code .002} … beside a chart {@code .000}, applied in order (IHO S-57 edition 3.1, appendix B.1, 5.7).
 * Every one from the first that the chart does not hold must be there, and be of the chart's edition.
 */
final class S57Updates {
    static final String CHART = ".000";

    private S57Updates() {}

    /** The updates that lie beside a chart and that it does not hold yet, by number. */
    static Map<Integer, Path> beside(Path chart, int held) {
        Map<Integer, Path> found = new TreeMap<>();
        String name = chart.getFileName().toString().toLowerCase(Locale.ROOT);
        if (!name.endsWith(CHART)) {
            return found;
        }
        String stem = name.substring(0, name.length() - CHART.length() + 1);
        for (Path file : regularFiles(chart)) {
            String other = file.getFileName().toString().toLowerCase(Locale.ROOT);
            if (other.startsWith(stem) && other.substring(stem.length()).matches("[0-9]{3}")) {
                int number = Integer.parseInt(other.substring(stem.length()));
                if (number > held) {
                    found.put(number, file);
                }
            }
        }
        return found;
    }

    private static List<Path> regularFiles(Path chart) {
        try (Stream<Path> siblings = Files.list(chart.toAbsolutePath().getParent())) {
            return siblings.filter(Files::isRegularFile).sorted().toList();
        } catch (IOException e) {
            throw VectorReader.problem(chart, "folder", "cannot be listed for updates of the chart (" + e.getMessage() + "); check its permissions", e);
        }
    }

    /**
     * Applies all updates beside a chart.
     *
     * @return what the chart says of itself after them
     */
    static S57DataSet apply(Path chart, S57DataSet base, S57Cell cell, List<Path> applied) {
        S57DataSet newest = base;
        for (Map.Entry<Integer, Path> update : beside(chart, base.number()).entrySet()) {
            int number = newest.number() + 1;
            if (update.getKey() != number) {
                throw VectorReader.problem(chart, "update " + extension(update.getKey()), "lies beside the chart, while update " + extension(number)
                        + " does not; get the missing update, or take the later ones away");
            }
            SideFile.beside(chart, update.getValue());
            S57File file = new S57File(update.getValue(), S57Reader.bytes(update.getValue()));
            require(update.getValue(), file.dataSet(), base, number);
            file.applyTo(cell);
            newest = file.dataSet();
            applied.add(update.getValue());
        }
        return newest;
    }

    private static void require(Path file, S57DataSet update, S57DataSet base, int number) {
        if (!update.update()) {
            throw VectorReader.problem(file, "field DSID", "is no update but a chart of its own (EXPP 1); name it .000, or take it away");
        }
        if (update.edition() == 0) {
            throw VectorReader.problem(file, "field DSID", "cancels the chart (edition 0); use the chart that replaces it");
        }
        if (update.edition() != base.edition()) {
            throw VectorReader.problem(file, "field DSID", "is an update of edition " + update.edition() + ", while the chart is edition "
                    + base.edition() + "; get the updates of the chart's edition, or take this one away");
        }
        if (update.number() != number) {
            throw VectorReader.problem(file, "field DSID", "is update " + update.number() + " by its contents and " + number
                    + " by its name; get the updates again");
        }
    }

    static String extension(int number) {
        return String.format(Locale.ROOT, ".%03d", number);
    }

    /** For the list of what was applied: numbers from the first to the last. */
    static String shown(List<Path> applied, S57DataSet newest) {
        return applied.size() == 1 ? "update " + extension(newest.number())
                : "updates " + extension(newest.number() - applied.size() + 1) + " to " + extension(newest.number());
    }
}
