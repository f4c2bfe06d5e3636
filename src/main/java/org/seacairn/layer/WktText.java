package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;

/**
 * Well-known text of a CRS as bathymetric grids carry it: with a vertical part, with additions of the
 * writing program, or in version 2 (ISO 19162), of which only the EPSG code is taken.
 */
final class WktText {
    private static final int DEEPEST = 40;
    private static final Set<String> COMPOUND = Set.of("COMPD_CS", "COMPOUNDCRS", "BOUNDCRS", "SOURCECRS");
    private static final Set<String> SECOND_VERSION = Set.of("GEODCRS", "GEODETICCRS", "GEOGCRS", "GEOGRAPHICCRS", "PROJCRS", "PROJECTEDCRS",
            "COMPOUNDCRS", "BOUNDCRS");
    private static final Set<String> FIRST_VERSION = Set.of("PROJCS", "GEOGCS");

    /** A word with what stands in its brackets: nodes, and plain values as they are written. */
    private record Node(String word, List<Object> parts) {
        String text() {
            return word + "[" + parts.stream().map(p -> p instanceof Node n ? n.text() : p.toString())
                    .collect(Collectors.joining(",")) + "]";
        }

        List<Node> nodes() {
            return parts.stream().filter(Node.class::isInstance).map(Node.class::cast).toList();
        }

        Node without(String unwanted) {
            return new Node(word, parts.stream().filter(p -> !(p instanceof Node n && n.word.equals(unwanted)))
                    .map(p -> p instanceof Node n ? n.without(unwanted) : p).toList());
        }
    }

    private final String text;
    private int at;

    private WktText(String text) {
        this.text = text;
    }

    /** Whether the text describes heights alone. */
    static boolean isVertical(String wkt) {
        String start = wkt.strip().toUpperCase(Locale.ROOT);
        return start.startsWith("VERT");
    }

    /** Whether the text is of version 2 (ISO 19162). */
    static boolean isSecondVersion(String wkt) {
        return SECOND_VERSION.contains(wkt.strip().split("[\\s\\[(]", 2)[0].toUpperCase(Locale.ROOT));
    }

    /** @throws InputException if the text describes no horizontal CRS that can be read */
    static Crs horizontal(String wkt) {
        Node node = new WktText(wkt).node(0);
        while (COMPOUND.contains(node.word)) {
            node = node.nodes().stream().findFirst()
                    .orElseThrow(() -> new InputException("the CRS text \"" + XmlElements.shown(wkt)
                            + "\" has no horizontal part; state crs in the plan"));
        }
        String code = epsg(node);
        if (FIRST_VERSION.contains(node.word)) {
            try {
                return Crs.parse(node.without("EXTENSION").text());
            } catch (InputException e) {
                if (code == null) {
                    throw e;
                }
            }
        }
        if (code == null) {
            throw new InputException("the CRS text \"" + XmlElements.shown(wkt)
                    + "\" is of a kind of which only the EPSG code is read, and has none; state crs in the plan, for example EPSG:32617");
        }
        return Crs.parse("EPSG:" + code);
    }

    private static String epsg(Node crs) {
        for (Node id : crs.nodes()) {
            if ((id.word.equals("ID") || id.word.equals("AUTHORITY")) && id.parts.size() >= 2
                    && id.parts.get(0).toString().equalsIgnoreCase("\"EPSG\"")) {
                String code = id.parts.get(1).toString().replace("\"", "");
                return code.matches("[0-9]{1,6}") ? code : null;
            }
        }
        return null;
    }

    private Node node(int depth) {
        if (depth > DEEPEST) {
            throw unreadable();
        }
        String word = word().toUpperCase(Locale.ROOT);
        char open = next();
        if (word.isEmpty() || open != '[' && open != '(') {
            throw unreadable();
        }
        List<Object> parts = new ArrayList<>();
        char mark;
        do {
            parts.add(part(depth));
            mark = next();
        } while (mark == ',');
        if (mark != (open == '[' ? ']' : ')')) {
            throw unreadable();
        }
        return new Node(word, parts);
    }

    private Object part(int depth) {
        blanks();
        int start = at;
        if (at < text.length() && text.charAt(at) == '"') {
            // A quote within a quoted text is written twice.
            do {
                at = text.indexOf('"', at + 1);
                if (at < 0) {
                    throw unreadable();
                }
                at++;
            } while (at < text.length() && text.charAt(at) == '"');
            return text.substring(start, at);
        }
        String word = word();
        blanks();
        if (at < text.length() && (text.charAt(at) == '[' || text.charAt(at) == '(')) {
            at = start;
            return node(depth + 1);
        }
        return word;
    }

    private String word() {
        blanks();
        int start = at;
        while (at < text.length() && ",[]()\"".indexOf(text.charAt(at)) < 0 && !Character.isWhitespace(text.charAt(at))) {
            at++;
        }
        return text.substring(start, at);
    }

    private char next() {
        blanks();
        if (at >= text.length()) {
            throw unreadable();
        }
        return text.charAt(at++);
    }

    private void blanks() {
        while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
            at++;
        }
    }

    private InputException unreadable() {
        return new InputException("the CRS text \"" + XmlElements.shown(text) + "\" cannot be read; state crs in the plan, for example EPSG:32617");
    }
}
