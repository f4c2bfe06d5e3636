package org.seacairn.plan;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.seacairn.plan.TextFile.Unreadable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.schema.FailsafeSchema;

/**
 * Composes a YAML file into nodes that know their line. Scalars stay text: what a value means is for
 * the key that holds it to say, so that a reef named {@code no} or {@code 007} keeps its name.
 */
final class YamlText {
    /** The deepest plan needs six levels. Composing recurses, so the depth must be bounded. */
    private static final int DEEPEST = 30;

    /** Enough to repeat a source in every rule; too few to build a bomb of lists of lists. */
    private static final int MOST_ALIASES = 50;

    private YamlText() {}

    /** The root value, or empty after a problem was noted. */
    static Optional<Value> read(Path file, String name, Findings findings) {
        String fileName = file.getFileName().toString();
        findings.opened(fileName);
        String text;
        try {
            text = TextFile.read(file);
        } catch (Unreadable e) {
            findings.problem(fileName, e.line(), e.getMessage());
            return Optional.empty();
        }
        try {
            Optional<Node> root = compose(text);
            if (root.isEmpty()) {
                findings.problem(fileName, 0, "the file is empty; write keys and values in it");
            }
            return root.map(node -> new Value(name, node, Value.lineOf(node), fileName, findings));
        } catch (MarkedYamlEngineException e) {
            Optional<Mark> mark = e.getProblemMark().or(e::getContextMark);
            findings.problem(fileName, mark.map(m -> m.getLine() + 1).orElse(0), syntaxProblem(e));
        } catch (ReaderException e) {
            int line = (int) text.codePoints().limit(e.getPosition()).filter(c -> c == '\n').count() + 1;
            findings.problem(fileName, line, String.format(Locale.ROOT, "the character U+%04X is not allowed here; remove it",
                    e.getCodePoint()));
        } catch (YamlEngineException e) {
            findings.problem(fileName, 0, "this is not usable YAML (" + e.getMessage() + "); write it more simply");
        }
        return Optional.empty();
    }

    private static Optional<Node> compose(String text) {
        LoadSettings settings = LoadSettings.builder()
                .setSchema(new FailsafeSchema())
                .setUseMarks(true)
                .setCodePointLimit(TextFile.MOST_BYTES)
                .setMaxAliasesForCollections(MOST_ALIASES)
                .build();
        int depth = 0;
        for (Event event : new Parse(settings).parseString(text)) {
            if (event instanceof CollectionStartEvent && ++depth > DEEPEST) {
                throw new TooDeep(event.getStartMark());
            }
            if (event instanceof CollectionEndEvent) {
                depth--;
            }
        }
        return new Compose(settings).composeString(text);
    }

    private static String syntaxProblem(MarkedYamlEngineException e) {
        String problem = String.valueOf(e.getProblem());
        if (e instanceof TooDeep) {
            return problem;
        }
        if (problem.contains("\\t(TAB)")) {
            return "a tab stands where spaces belong; indent with spaces";
        }
        boolean none = e.getContext() == null || e.getContext().isBlank();
        String context = none ? "" : e.getContext() + e.getContextMark()
                .map(mark -> " that begins in line " + (mark.getLine() + 1)).orElse("") + ", ";
        return "this is not YAML (" + context + problem + "); check indentation, colons and quotes here and above";
    }

    private static final class TooDeep extends MarkedYamlEngineException {
        private static final long serialVersionUID = 1L;

        TooDeep(Optional<Mark> mark) {
            super(null, Optional.empty(), "lists and blocks are nested more than " + DEEPEST
                    + " deep; a plan never is, check the brackets", mark);
        }
    }
}
