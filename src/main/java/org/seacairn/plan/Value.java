package org.seacairn.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.seacairn.InputException;
import org.seacairn.plan.Quantity.Kind;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/**
 * One value of a YAML file: what to call it, where it stands, and ways to read it.
 *
 * <p>A value that cannot be read notes its problem and gives a stand-in (NaN, empty text, an empty
 * list), so that reading goes on and finds every problem. No plan is built from stand-ins: a plan
 * with a problem is never built.
 */
final class Value {
    /** Keys stand in messages; longer ones are text that lost its quotes. */
    private static final int LONGEST_KEY = 200;

    private final String name;
    private final Node node;
    private final int line;
    private final String file;
    private final Findings findings;

    Value(String name, Node node, int line, String file, Findings findings) {
        this.name = name;
        this.node = node;
        this.line = line;
        this.file = file;
        this.findings = findings;
    }

    static int lineOf(Node node) {
        return node.getStartMark().map(mark -> mark.getLine() + 1).orElse(0);
    }

    String name() {
        return name;
    }

    /** Line from 1 of the key, or of the item of a list. */
    int line() {
        return line;
    }

    Findings findings() {
        return findings;
    }

    /** Notes a problem at this value's line. */
    void problem(String text) {
        findings.problem(file, line, text);
    }

    boolean isBlock() {
        return node instanceof MappingNode;
    }

    boolean isList() {
        return node instanceof SequenceNode;
    }

    boolean isEmptyList() {
        return node instanceof SequenceNode sequence && sequence.getValue().isEmpty();
    }

    /** Text on one line, without spaces at its ends; empty text if there is none to read. */
    String text() {
        if (!(node instanceof ScalarNode scalar)) {
            problem(name + " is a " + (isList() ? "list" : "block of keys") + "; write a single value");
            return "";
        }
        String text = scalar.getValue().strip().replaceAll("\\s*\\R\\s*", " ");
        boolean none = text.isEmpty() || (scalar.isPlain() && (text.equals("~") || text.equals("null")));
        if (none) {
            problem(name + " has no value; write one or leave the key out");
            return "";
        }
        if (!scalar.getTag().equals(Tag.STR)) {
            problem(name + " has the tag " + Shown.quoted(scalar.getTag().getValue()) + "; write the value alone");
            return "";
        }
        if (text.chars().anyMatch(Character::isISOControl)) {
            problem(name + " is " + Shown.quoted(text) + " with a control character in it; remove that");
            return "";
        }
        return text;
    }

    /** In the unit that the kind names; NaN if there is none to read. */
    double quantity(Kind kind) {
        String text = text();
        if (text.isEmpty()) {
            return Double.NaN;
        }
        try {
            return Quantity.si(name, text, kind);
        } catch (InputException e) {
            problem(e.getMessage());
            return Double.NaN;
        }
    }

    /** As {@link #quantity}, and more than zero. */
    double positive(Kind kind) {
        double si = quantity(kind);
        if (si == 0) {
            problem(name + " is " + Shown.quoted(text()) + "; it must be more than 0");
            return Double.NaN;
        }
        return si;
    }

    /** A whole number in a range, or the least if there is none to read. */
    int whole(int least, int most) {
        String text = text();
        if (text.isEmpty()) {
            return least;
        }
        if (text.matches("[0-9]{1,9}")) {
            int number = Integer.parseInt(text);
            if (number >= least && number <= most) {
                return number;
            }
        }
        problem(name + " is " + Shown.quoted(text) + "; write a whole number from " + least + " to " + most);
        return least;
    }

    /** {@code true} or {@code false}. */
    boolean flag() {
        return choice(Map.of("true", true, "false", false), List.of("true", "false")).orElse(false);
    }

    /** A constant of an enum, written in lower case with hyphens. */
    <E extends Enum<E>> Optional<E> choice(Class<E> constants) {
        Map<String, E> words = new LinkedHashMap<>();
        for (E constant : constants.getEnumConstants()) {
            words.put(word(constant), constant);
        }
        return choice(words, words.keySet());
    }

    /** One of some words; {@code order} is that of the message. */
    <T> Optional<T> choice(Map<String, T> words, Collection<String> order) {
        String text = text();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        T chosen = words.get(text);
        if (chosen == null) {
            problem(name + " is " + Shown.quoted(text) + "; " + Suggestion.advice(text, order));
        }
        return Optional.ofNullable(chosen);
    }

    /** How a constant is written in a plan. */
    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The items of a list; empty if this is none. */
    List<Value> items() {
        if (!(node instanceof SequenceNode sequence)) {
            isInstead("a list; write its items in brackets, or one a line after \"- \"");
            return List.of();
        }
        List<Value> items = new ArrayList<>();
        for (Node item : sequence.getValue()) {
            items.add(new Value("item " + (items.size() + 1) + " of " + name, item, lineOf(item), file, findings));
        }
        return items;
    }

    /** The values of a block by their keys, in the order written; empty if this is none. */
    Map<String, Value> entries() {
        Map<String, Value> entries = new LinkedHashMap<>();
        if (!(node instanceof MappingNode mapping)) {
            isInstead("a block of keys; write \"key: value\" lines below it");
            return entries;
        }
        for (NodeTuple tuple : mapping.getValue()) {
            int keyLine = lineOf(tuple.getKeyNode());
            Optional<String> readable = word(tuple.getKeyNode());
            if (readable.isEmpty()) {
                findings.problem(file, keyLine, name + " holds a key that is no word; write \"key: value\" lines");
                continue;
            }
            String word = readable.get();
            Value first = entries.putIfAbsent(word, new Value(word, tuple.getValueNode(), keyLine, file, findings));
            if (first != null) {
                findings.problem(file, keyLine, Shown.quoted(word) + " is written twice in " + name
                        + " (first in line " + first.line + "); keep one");
            }
        }
        return entries;
    }

    private static Optional<String> word(Node key) {
        return key instanceof ScalarNode scalar
                ? Optional.of(scalar.getValue().strip())
                        .filter(text -> !text.isEmpty() && text.length() <= LONGEST_KEY)
                        .filter(text -> text.chars().noneMatch(Character::isISOControl))
                : Optional.empty();
    }

    /** This value as a block in which only certain keys may stand; empty if it is none. */
    Optional<Block> block(String blockName, String... keys) {
        Block block = new Block(blockName, this, Arrays.asList(keys));
        return isBlock() ? Optional.of(block) : Optional.empty();
    }

    private void isInstead(String wanted) {
        boolean none = node instanceof ScalarNode scalar && scalar.getValue().isBlank();
        problem(name + (none ? " is empty and must be " : " is not ") + wanted);
    }
}
