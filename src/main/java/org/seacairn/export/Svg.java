package org.seacairn.export;

import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** An SVG text while it is being written, one element a line; text is escaped. Coordinates are in pixels, y down. */
final class Svg {
    private final StringWriter text = new StringWriter();
    private final XMLStreamWriter xml;

    /** An image of a size, white, with its title and description. */
    Svg(int width, int height, String title, String description) {
        try {
            // The JDK's own, whatever other writers are on the class path.
            xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
            xml.writeStartDocument("UTF-8", "1.0");
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        open("svg", "xmlns", "http://www.w3.org/2000/svg", "version", "1.1", "width", Integer.toString(width), "height", Integer.toString(height),
                "viewBox", "0 0 " + width + " " + height, "role", "img", "font-family", "sans-serif", "font-size", "12", "fill", "#222222");
        whole("title", title);
        whole("desc", description);
        empty("rect", "width", "100%", "height", "100%", "fill", "#ffffff");
    }

    /** Ends the image. */
    String close() {
        end();
        try {
            xml.writeEndDocument();
            xml.flush();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return text + "\n";
    }

    /** A tenth of a pixel is finer than any screen. */
    static String number(double pixels) {
        return Decimals.text(pixels, 1);
    }

    /** @param attributes name, value, name, value and so on */
    void empty(String element, String... attributes) {
        try {
            xml.writeCharacters("\n");
            xml.writeEmptyElement(element);
            attributes(attributes);
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    void open(String element, String... attributes) {
        try {
            xml.writeCharacters("\n");
            xml.writeStartElement(element);
            attributes(attributes);
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    void end() {
        try {
            xml.writeCharacters("\n");
            xml.writeEndElement();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** An element that holds text. */
    void whole(String element, String content, String... attributes) {
        try {
            xml.writeCharacters("\n");
            xml.writeStartElement(element);
            attributes(attributes);
            xml.writeCharacters(XmlText.clean(content));
            xml.writeEndElement();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    void text(String content, double x, double y, String... attributes) {
        String[] all = new String[attributes.length + 4];
        all[0] = "x";
        all[1] = number(x);
        all[2] = "y";
        all[3] = number(y);
        System.arraycopy(attributes, 0, all, 4, attributes.length);
        whole("text", content, all);
    }

    void line(double x1, double y1, double x2, double y2, String colour) {
        empty("path", "d", "M" + number(x1) + " " + number(y1) + "L" + number(x2) + " " + number(y2), "stroke", colour, "stroke-width", "1");
    }

    private void attributes(String... attributes) throws XMLStreamException {
        for (int i = 0; i < attributes.length; i += 2) {
            xml.writeAttribute(attributes[i], attributes[i + 1]);
        }
    }
}
