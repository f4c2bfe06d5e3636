package org.seacairn.report;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Writes HTML in which every text is escaped, because this is the only way in for a text.
 *
 * <p>No template engine: a page is composed by code from typed values, so that the compiler checks what a
 * template's test would have to find, and there is no unescaped hole to forget. What is written is HTML and
 * well-formed XML alike, so that any XML parser can check a page.
 *
 * <p>Names come from files that anyone may have written. Beside markup they may hold characters that turn the
 * direction of reading about, control characters, or ten thousand letters: see {@link #name}. A link can
 * lead only within the page, an image only carry its own data, and no attribute can hold a script.
 */
public final class Html {
    /** A name longer than this is cut; the whole one stands in the files for programs. */
    static final int LONGEST_NAME = 80;
    /** The same for sentences. */
    static final int LONGEST_LINE = 600;

    private static final Pattern NAME = Pattern.compile("[a-zA-Z][a-zA-Z0-9-]*");
    private static final Set<String> VOID = Set.of("br", "col", "hr", "img", "meta", "link", "input", "wbr");
    /** Attributes through which a page could load or run what is not in it. */
    private static final Set<String> REFUSED = Set.of("srcdoc", "action", "formaction", "background", "poster", "srcset", "data", "ping");

    private final StringBuilder out = new StringBuilder(1 << 16);
    private final Deque<String> open = new ArrayDeque<>();

    /**
     * Opens an element.
     *
     * @param attributes names and values in turn
     */
    public Html open(String tag, String... attributes) {
        tag(tag, attributes);
        out.append('>');
        open.push(tag);
        return this;
    }

    /**
     * Closes the element opened last.
     *
     * @throws IllegalStateException if that is another one
     */
    public Html close(String tag) {
        if (open.isEmpty() || !open.peek().equals(tag)) {
            throw new IllegalStateException("</" + tag + "> where <" + open.peek() + "> is open");
        }
        open.pop();
        out.append("</").append(tag).append('>');
        return this;
    }

    /** An element without content. */
    public Html empty(String tag, String... attributes) {
        tag(tag, attributes);
        out.append(VOID.contains(tag) ? "/>" : "></" + tag + ">");
        return this;
    }

    /** An element with a text. */
    public Html element(String tag, String text, String... attributes) {
        return open(tag, attributes).text(text).close(tag);
    }

    /** Text of our own, or a figure. */
    public Html text(String text) {
        escape(text, false);
        return this;
    }

    /** A name out of somebody's file: its direction of reading stays its own, and a long one is cut. */
    public Html name(String name) {
        return element("bdi", cut(name, LONGEST_NAME));
    }

    /** A sentence that may hold names out of somebody's file. */
    public Html line(String line) {
        return element("bdi", cut(line, LONGEST_LINE));
    }

    /** A line end in the source, for those who read it. */
    Html newLine() {
        out.append('\n');
        return this;
    }

    /** Markup that is ready: an SVG that our own code has written and escaped, a style sheet, a script. Never a text of a file. */
    Html ready(String markup) {
        out.append(markup);
        return this;
    }

    /** @throws IllegalStateException if an element is still open */
    public String done() {
        if (!open.isEmpty()) {
            throw new IllegalStateException("<" + open.peek() + "> was never closed");
        }
        return out.toString();
    }

    /** A text of at most so many characters, an ellipsis at its end where it was cut. */
    static String cut(String text, int most) {
        return text.codePointCount(0, text.length()) <= most ? text : text.substring(0, text.offsetByCodePoints(0, most - 1)) + "…";
    }

    private void tag(String tag, String... attributes) {
        require(NAME.matcher(tag).matches(), "no element <" + tag + ">");
        out.append('<').append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            requireHarmless(attributes[i], attributes[i + 1]);
            out.append(' ').append(attributes[i]).append("=\"");
            escape(attributes[i + 1], true);
            out.append('"');
        }
    }

    private static void requireHarmless(String name, String value) {
        require(NAME.matcher(name).matches() && !name.startsWith("on") && !REFUSED.contains(name), "no attribute " + name);
        require(!name.equals("href") || value.startsWith("#"), "a link leads within the page");
        require(!name.equals("src") || value.startsWith("data:image/png;base64,"), "an image carries its own data");
    }

    private static void require(boolean met, String rule) {
        if (!met) {
            throw new IllegalArgumentException(rule);
        }
    }

    private void escape(String text, boolean attribute) {
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append(attribute ? "&quot;" : "\"");
                case '\r' -> out.append(' ');
                default -> out.appendCodePoint(isShown(c) ? c : 0xFFFD);
            }
        });
    }

    /**
     * False for what HTML does not allow in a text (controls, lone surrogates, noncharacters), and for the characters
     * that steer the direction of reading: one that is never ended would reach beyond its name, through a bdi element too.
     */
    private static boolean isShown(int c) {
        boolean control = c < 0x20 && c != '\t' && c != '\n' || c >= 0x7F && c < 0xA0;
        boolean noCharacter = c >= 0xD800 && c <= 0xDFFF || c >= 0xFDD0 && c <= 0xFDEF || (c & 0xFFFE) == 0xFFFE;
        boolean steers = c >= 0x202A && c <= 0x202E || c >= 0x2066 && c <= 0x2069;
        return !control && !noCharacter && !steers;
    }
}
