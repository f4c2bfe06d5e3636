package org.seacairn.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.stream.Collectors;
import org.seacairn.InputException;

/** What reading a plan found: problems, which stop it in the end, and warnings, which go with it. */
final class Findings {
    /** More than this is not a plan with mistakes but some other file. */
    static final int MOST_REPORTED = 100;

    private record Problem(String file, int line, String text) {
        @Override
        public String toString() {
            return line > 0 ? file + ", line " + line + ": " + text : file + ": " + text;
        }
    }

    private final List<String> files = new ArrayList<>();
    private final LinkedHashSet<Problem> problems = new LinkedHashSet<>();
    private final List<String> warnings = new ArrayList<>();

    /** Files report in the order in which they were opened. */
    void opened(String file) {
        files.add(file);
    }

    /** @param line from 1, or 0 for the file as a whole */
    void problem(String file, int line, String text) {
        problems.add(new Problem(file, line, Shown.printable(text)));
    }

    void warning(String text) {
        warnings.add(text);
    }

    List<String> warnings() {
        return List.copyOf(warnings);
    }

    boolean hasProblems() {
        return !problems.isEmpty();
    }

    /** @throws InputException with every problem, file by file in the order of the lines, if there is any */
    void throwProblems() {
        if (problems.isEmpty()) {
            return;
        }
        List<String> lines = problems.stream()
                .sorted(Comparator.comparingInt((Problem p) -> files.indexOf(p.file())).thenComparingInt(Problem::line))
                .limit(MOST_REPORTED)
                .map(Problem::toString)
                .collect(Collectors.toCollection(ArrayList::new));
        if (problems.size() > MOST_REPORTED) {
            lines.add(files.get(0) + ": " + (problems.size() - MOST_REPORTED)
                    + " more problems are not shown; mend these first");
        }
        throw new InputException(lines);
    }
}
