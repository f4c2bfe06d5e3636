package org.seacairn.report;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * A page made ready for paper: the same sections and tables, without what only a screen can do (buttons, switches, layers
 * that are not shown), with bookmarks, in a style sheet of its own. The layout on paper knows neither CSS variables nor grids.
 */
final class PaperDocument {
    private static final Set<String> SCREEN_ELEMENTS = Set.of("style", "script", "input", "nav", "button", "select");
    private static final Set<String> SCREEN_CLASSES = Set.of("off", "pick", "map-buttons", "skip");

    /** Letters of a word in a table. */
    private static final int LONGEST_WORD = 24;

    private final Page page;
    private final PaperSvg drawings;
    private final PaperLetters letters;
    private final Document document;

    private PaperDocument(Page page, PaperSize paper, PaperFonts fonts) {
        this.page = page;
        this.drawings = new PaperSvg(paper);
        this.letters = new PaperLetters(fonts);
        this.document = parsed(page.paperMarkup());
    }

    static Document of(Page page, PaperSize paper, PaperFonts fonts) {
        PaperDocument made = new PaperDocument(page, paper, fonts);
        Element root = made.document.getDocumentElement();
        made.prepare(root, false);
        Element head = made.document.createElement("head");
        made.head(head, paper, root);
        made.letters.replaceBelow(root);
        made.note(root);
        // After the letters, since a bookmark is shown in the reader's own fonts.
        root.insertBefore(head, root.getFirstChild());
        return made.document;
    }

    private static Document parsed(String markup) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            // A drawing that is a file of its own too begins with an XML declaration.
            return factory.newDocumentBuilder().parse(new InputSource(new StringReader(markup.replaceAll("<\\?xml [^>]*\\?>", ""))));
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new IllegalStateException("the page is no well-formed XML", e);
        }
    }

    private void prepare(Element parent, boolean inDrawing) {
        List<Element> children = new ArrayList<>();
        for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element element) {
                children.add(element);
            }
        }
        for (Element child : children) {
            if (SCREEN_ELEMENTS.contains(child.getNodeName())
                    || Arrays.stream(child.getAttribute("class").split(" ")).anyMatch(SCREEN_CLASSES::contains)) {
                parent.removeChild(child);
            } else {
                if (child.getNodeName().equals("td") || child.getNodeName().equals("th")) {
                    breakLongWords(child);
                }
                boolean drawing = child.getNodeName().equals("svg");
                prepare(child, inDrawing || drawing);
                if (drawing && !inDrawing) {
                    drawings.prepare(child);
                }
            }
        }
    }

    /** A cell is as wide as its longest word, unless that would widen the table beyond the sheet. */
    private static void breakLongWords(Element cell) {
        if (Arrays.stream(cell.getTextContent().split("\\s")).anyMatch(word -> word.length() > LONGEST_WORD)) {
            cell.setAttribute("class", (cell.getAttribute("class") + " long").trim());
        }
    }

    private void head(Element head, PaperSize paper, Element root) {
        element(head, "title", page.headTitle());
        Element subject = element(head, "meta", "");
        subject.setAttribute("name", "subject");
        subject.setAttribute("content", page.subject());
        Element style = element(head, "style", "@page { size: " + paper.size() + "; }\n" + Page.resource("/report/paper.css"));
        style.setAttribute("type", "text/css");
        bookmarks(element(head, "bookmarks", ""), root);
    }

    /** One for each heading of a section, and below it those of its blocks. */
    private void bookmarks(Element to, Element root) {
        for (Node node = root.getElementsByTagName("main").item(0).getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element section) {
                Element mark = bookmark(to, section, "h2");
                for (Node inner = section.getFirstChild(); inner != null; inner = inner.getNextSibling()) {
                    if (inner instanceof Element block && block.getNodeName().equals("article") && block.hasAttribute("id")) {
                        bookmark(mark, block, "h3");
                    }
                }
            }
        }
    }

    private Element bookmark(Element to, Element part, String heading) {
        Element mark = element(to, "bookmark", "");
        mark.setAttribute("name", part.getElementsByTagName(heading).item(0).getTextContent());
        mark.setAttribute("href", "#" + part.getAttribute("id"));
        return mark;
    }

    private void note(Element root) {
        if (!letters.note().isEmpty()) {
            Element header = (Element) root.getElementsByTagName("header").item(0);
            element(header, "p", letters.note()).setAttribute("class", "note");
        }
    }

    private Element element(Element parent, String tag, String text) {
        Element element = document.createElement(tag);
        element.setTextContent(text);
        parent.appendChild(element);
        return element;
    }
}
