package org.seacairn.layer;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.seacairn.InputException;

/**
 * The elements of an XML file, one after another, for readers that descend into those they know and skip
 * the rest. A document type declaration is refused, so that no entity can be expanded or fetched; nesting
 * is bounded. Every problem names file and line.
 *
 * <p>The reader always stands at the start tag of the element in hand, or at the end tag of the last of its
 * children; each child that {@link #nextChild} finds has to be taken by {@link #text}, {@link #skip} or a
 * loop of its own over {@code nextChild}.
 */
public final class XmlElements {
    /** Deeper than any real folder in a folder, and no risk to the stack. */
    private static final int DEEPEST_NESTING = 100;

    private final Path file;
    private final String format;
    private final XmlCharacters in;
    private final List<String> namespaces;
    private final XMLStreamReader reader;
    private String ownNamespace = "";
    private int depth;

    /**
     * Goes to the outermost element.
     *
     * @param format for messages, for example {@code GPX}
     * @param root what the outermost element must be called
     * @param namespaces what the format's namespaces begin with; the outermost element may bring another
     * @throws InputException if the file is no XML or has another outermost element
     */
    public XmlElements(Path file, String format, InputStream in, String root, List<String> namespaces) throws IOException {
        this.file = file;
        this.format = format;
        this.in = XmlCharacters.open(file, in);
        this.namespaces = namespaces;
        this.reader = open();
        while (next() != XMLStreamConstants.START_ELEMENT) {
            // Comments and white space before it.
        }
        if (!reader.getLocalName().equals(root)) {
            throw problem("its outermost element is \"" + shown(reader.getLocalName()) + "\" and not \"" + root + "\", so this is no "
                    + format + "; export it as " + format);
        }
        ownNamespace = namespace();
    }

    private XMLStreamReader open() {
        // The JDK's own, whatever other readers are on the class path.
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        try {
            return factory.createXMLStreamReader(in);
        } catch (XMLStreamException e) {
            throw improper(e);
        }
    }

    /** Goes to the start tag of the next child of the element in hand, or to the element's end tag and returns false. */
    boolean nextChild() {
        while (true) {
            int event = next();
            if (event == XMLStreamConstants.START_ELEMENT || event == XMLStreamConstants.END_ELEMENT) {
                return event == XMLStreamConstants.START_ELEMENT;
            }
        }
    }

    /** As {@link #nextChild}, for formats in which text between children would mean something: there it is a problem. */
    public boolean nextChildWithoutText() {
        int event = next();
        while (event != XMLStreamConstants.START_ELEMENT && event != XMLStreamConstants.END_ELEMENT) {
            if (event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.CDATA) {
                requireBlank(reader.getText());
            }
            event = next();
        }
        return event == XMLStreamConstants.START_ELEMENT;
    }

    private void requireBlank(String text) {
        if (!text.isBlank()) {
            throw problem("has the text \"" + shown(text) + "\" where only elements belong; remove it");
        }
    }

    /** The element's name; of another namespace than the format's with its prefix and a colon, as in {@code gx:Track}. */
    public String name() {
        String namespace = namespace();
        boolean own = namespace.isEmpty() || namespace.equals(ownNamespace) || namespaces.stream().anyMatch(namespace::startsWith);
        return own ? reader.getLocalName() : reader.getPrefix() + ":" + reader.getLocalName();
    }

    /** The value of an attribute of no namespace, or null. */
    public String attribute(String name) {
        return reader.getAttributeValue("", name);
    }

    /** Names of the attributes of no namespace. */
    public List<String> attributes() {
        return IntStream.range(0, reader.getAttributeCount())
                .filter(i -> reader.getAttributeNamespace(i) == null || reader.getAttributeNamespace(i).isEmpty())
                .mapToObj(reader::getAttributeLocalName).toList();
    }

    /** The text of an element without children, without white space about it; goes to its end tag. A child is a problem. */
    public String textAlone() {
        String parent = name();
        StringBuilder text = new StringBuilder();
        int event = next();
        while (event != XMLStreamConstants.END_ELEMENT) {
            if (event == XMLStreamConstants.START_ELEMENT) {
                throw problem("the element \"" + shown(name()) + "\" stands in \"" + shown(parent) + "\", where only a text belongs; write the text alone");
            }
            if (event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.CDATA) {
                text.append(reader.getText());
            }
            event = next();
        }
        return text.toString().strip();
    }

    /** All text in the element and what it holds, as it stands; goes to its end tag. */
    String text() {
        StringBuilder text = new StringBuilder();
        int outside = depth - 1;
        while (depth > outside) {
            switch (next()) {
                case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA, XMLStreamConstants.SPACE -> text.append(reader.getText());
                default -> { }
            }
        }
        return text.toString();
    }

    /** The text without white space about it, or null if there is none left. */
    String attributeText() {
        String text = text().strip();
        return text.isEmpty() ? null : text;
    }

    /** Goes to the element's end tag. */
    void skip() {
        int outside = depth - 1;
        while (depth > outside) {
            next();
        }
    }

    /** After the end tag of the outermost element: requires that nothing follows. */
    public void end() {
        while (next() != XMLStreamConstants.END_DOCUMENT) {
            // Comments and white space.
        }
    }

    /** The line on which the tag in hand ends, from 1. */
    int line() {
        return reader.getLocation().getLineNumber();
    }

    /** The error for the line in hand. */
    public InputException problem(String whatAndRemedy) {
        return problem(line(), whatAndRemedy);
    }

    InputException problem(int line, String whatAndRemedy) {
        return VectorReader.problem(file, "line " + line, whatAndRemedy);
    }

    /** A text from the file in a length that suits a message. */
    public static String shown(String text) {
        String line = text.strip().replaceAll("[\\s\\p{Cntrl}]+", " ");
        return line.length() <= 40 ? line : line.substring(0, 37) + "...";
    }

    private String namespace() {
        return reader.getNamespaceURI() == null ? "" : reader.getNamespaceURI();
    }

    private int next() {
        try {
            int event = reader.next();
            switch (event) {
                case XMLStreamConstants.START_ELEMENT -> {
                    if (++depth > DEEPEST_NESTING) {
                        throw problem("elements are nested deeper than " + DEEPEST_NESTING + " levels; export it again with fewer");
                    }
                }
                case XMLStreamConstants.END_ELEMENT -> depth--;
                case XMLStreamConstants.DTD -> throw problem("has a DOCTYPE, as a web page has and " + format
                        + " needs not; export it again, or delete the DOCTYPE");
                default -> { }
            }
            return event;
        } catch (XMLStreamException e) {
            throw improper(e);
        }
    }

    private InputException improper(XMLStreamException e) {
        int line = e.getLocation() == null ? -1 : e.getLocation().getLineNumber();
        String place = "line " + Math.max(1, line);
        if (e.getNestedException() instanceof IOException broken) {
            return VectorReader.problem(file, place, "cannot be read on (" + broken.getMessage() + "); copy or export the file again", e);
        }
        if (in.ended() && depth > 0) {
            return VectorReader.problem(file, place, "ends before its elements are closed, so it is cut short; copy or export it again", e);
        }
        return VectorReader.problem(file, place, "is no proper XML (" + reason(e) + "); correct it or export it again", e);
    }

    /** The parser's sentence without its own place, in words where it gives only the address of a rule. */
    private static String reason(XMLStreamException e) {
        String message = e.getMessage().replaceFirst("(?s).*\\RMessage: ", "").replaceAll("\\s+", " ").replaceFirst("\\.$", "")
                .replaceFirst("^JAXP[0-9]+: ", "");
        String[] parts = message.substring(message.indexOf('#') + 1).split("[?&]");
        String cut = shown(parts[parts.length - 1]);
        return switch (parts[0]) {
            case "ElementPrefixUnbound" -> "the prefix of the element \"" + cut + "\" is not declared";
            case "AttributePrefixUnbound" -> "the prefix \"" + cut + "\" of an attribute is not declared";
            case "AttributeNotUnique", "AttributeNSNotUnique" -> "an attribute is written twice";
            default -> message.length() <= 200 ? message : message.substring(0, 197) + "...";
        };
    }
}
