package org.seacairn.report;

import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Puts a box in place of each letter that the fonts of a PDF do not have: names can be in any script. */
final class PaperLetters {
    /** White square, and what stands for it in a font that has none. */
    private static final int[] BOXES = {0x25A1, 0xFFFD, '?'};

    private final PaperFonts fonts;
    private final int box;
    private boolean missed;

    PaperLetters(PaperFonts fonts) {
        this.fonts = fonts;
        int first = 0;
        while (!fonts.has(BOXES[first])) {
            first++;
        }
        this.box = BOXES[first];
    }

    /** In all that stands below a node. */
    void replaceBelow(Node node) {
        NodeList children = node.getChildNodes();
        for (int i = 0; i < children.getLength(); i++) {
            Node child = children.item(i);
            if (child.getNodeType() == Node.TEXT_NODE) {
                String text = child.getNodeValue();
                String shown = shown(text);
                if (!shown.equals(text)) {
                    child.setNodeValue(shown);
                }
            } else {
                replaceBelow(child);
            }
        }
    }

    String shown(String text) {
        StringBuilder shown = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            if (Character.isWhitespace(c) || fonts.has(c)) {
                shown.appendCodePoint(c);
            } else if (Character.getType(c) != Character.FORMAT && Character.getType(c) != Character.NON_SPACING_MARK) {
                shown.appendCodePoint(box);
                missed = true;
            }
        });
        return shown.toString();
    }

    /** What the reader is told, or empty text. */
    String note() {
        return missed ? Character.toString(box) + " stands for a letter that this file's font does not have; report.html shows it." : "";
    }
}
