package org.seacairn.report;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.seacairn.InputException;
import org.seacairn.layer.XmlElements;

/** The elements of a style, with one message for what does not belong in one. */
final class StyleElements {
    private static final List<String> NAMESPACES = List.of("http://www.opengis.net/sld", "http://www.opengis.net/ogc");

    private final XmlElements in;

    StyleElements(InputStream in, String fileName) throws IOException {
        this.in = new XmlElements(Path.of(fileName), "SLD", in, "StyledLayerDescriptor", NAMESPACES);
    }

    /** The children of the element in hand. Each may be there once; one whose name is followed by {@code *} may be repeated. */
    final class Children {
        private final String parent = in.name();
        private final List<String> known;
        private final Set<String> met = new HashSet<>();

        private Children(List<String> known) {
            this.known = known;
        }

        /** Goes to the next child; false at the end of the parent. */
        boolean next() {
            if (!in.nextChildWithoutText()) {
                return false;
            }
            String name = in.name();
            if (known.contains(name + "*")) {
                return true;
            }
            if (!known.contains(name)) {
                throw problem("the element \"" + shown(name) + "\" in \"" + parent + "\" is none that the map can draw; remove it, or write one of: "
                        + String.join(", ", known).replace("*", ""));
            }
            if (!met.add(name)) {
                throw problem("the element \"" + name + "\" stands in \"" + parent + "\" more than once; keep one");
            }
            return true;
        }

        /** For a child that must have been there. */
        void require(String name) {
            if (!met.contains(name)) {
                throw problem("\"" + parent + "\" has no \"" + name + "\"; write one");
            }
        }
    }

    /** Requires that the element in hand has no attributes, and goes through its children. */
    Children children(String... known) {
        attributes();
        return new Children(List.of(known));
    }

    /** The children of an element whose attributes have been looked at. */
    Children childrenBesideAttributes(String... known) {
        return new Children(List.of(known));
    }

    /** Goes to the end of the element in hand, which must hold nothing. */
    void emptyElement() {
        String text = in.textAlone();
        if (!text.isEmpty()) {
            throw problem("has the text \"" + shown(text) + "\" where nothing belongs; remove it");
        }
    }

    /** Requires that the element in hand has no attributes but those; namespaced ones, such as {@code xsi:schemaLocation}, aside. */
    void attributes(String... known) {
        for (String name : in.attributes()) {
            if (!Arrays.asList(known).contains(name)) {
                throw problem("the attribute \"" + shown(name) + "\" of \"" + in.name() + "\" is none that the map can draw; remove it");
            }
        }
    }

    String name() {
        return in.name();
    }

    /** The value of an attribute of the element in hand, or null. */
    String attribute(String name) {
        return in.attribute(name);
    }

    /** The text of the element in hand, which has nothing else. */
    String text() {
        attributes();
        return in.textAlone();
    }

    /** The number in the element in hand. */
    double number(double least, double most) {
        String name = name();
        return number(name, text(), least, most);
    }

    /** A plain decimal, within limits: what goes into the page must be finite. */
    double number(String name, String text, double least, double most) {
        if (text != null && text.matches("[+-]?(\\d{1,20}(\\.\\d{0,20})?|\\.\\d{1,20})")) {
            double number = Double.parseDouble(text);
            if (number >= least && number <= most) {
                return number;
            }
        }
        throw problem(name + " is " + (text == null ? "missing" : "\"" + shown(text) + "\"") + "; write a number from "
                + plain(least) + " to " + plain(most));
    }

    private static String plain(double number) {
        return number == Math.rint(number) && Math.abs(number) < 1e15
                ? String.format(Locale.ROOT, "%.0f", number) : String.format(Locale.ROOT, "%s", number);
    }

    /** A colour as 0xrrggbb. */
    int color(String name, String text) {
        if (text == null || !text.matches("#[0-9a-fA-F]{6}")) {
            throw problem(name + " is " + (text == null ? "missing" : "\"" + shown(text) + "\"") + "; write a colour as \"#rrggbb\"");
        }
        return Integer.parseInt(text.substring(1), 16);
    }

    /** The {@code CssParameter} elements of the element in hand, by name. */
    Map<String, String> cssParameters(String... known) {
        String parent = in.name();
        Map<String, String> values = new LinkedHashMap<>();
        Children children = children("CssParameter*");
        while (children.next()) {
            attributes("name");
            String name = attribute("name");
            if (name == null || !Arrays.asList(known).contains(name)) {
                throw problem("the CssParameter \"" + shown(String.valueOf(name)) + "\" in \"" + parent
                        + "\" is none that the map can draw; remove it, or write one of: " + String.join(", ", known));
            }
            if (values.put(name, in.textAlone()) != null) {
                throw problem("the CssParameter \"" + name + "\" stands in \"" + parent + "\" more than once; keep one");
            }
        }
        return values;
    }

    /** After the outermost element: requires that nothing follows. */
    void end() {
        in.end();
    }

    InputException problem(String whatAndRemedy) {
        return in.problem(whatAndRemedy);
    }

    static String shown(String text) {
        return XmlElements.shown(text);
    }
}
