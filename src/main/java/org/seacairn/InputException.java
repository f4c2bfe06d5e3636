package org.seacairn;

import java.util.List;

/**
 * The input is at fault: a plan, a layer, an option or a folder that cannot be used as it is.
 *
 * <p>Each problem is one line that a reader can act on, in the order: which file, which place in it,
 * what is wrong (with the value met), what to do. For example {@code plan.yaml, line 12: cell is "20";
 * write the unit, for example "20 m"}. The command line prints the problems without a stack trace
 * and ends with status 2.
 */
public final class InputException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final List<String> problems;

    public InputException(String problem) {
        this(problem, null);
    }

    public InputException(String problem, Throwable cause) {
        super(problem, cause);
        this.problems = List.of(problem);
    }

    /** Several problems found in one pass; must not be empty. */
    public InputException(List<String> problems) {
        super(String.join(System.lineSeparator(), problems));
        if (problems.isEmpty()) {
            throw new IllegalArgumentException("no problem given");
        }
        this.problems = List.copyOf(problems);
    }

    /** One line each, never empty. */
    public List<String> problems() {
        return problems;
    }
}
