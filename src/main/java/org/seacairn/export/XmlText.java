package org.seacairn.export;

/** Text that may stand in an XML file. */
final class XmlText {
    private XmlText() {}

    /**
     * Leaves out what XML 1.0 cannot hold (section 2.2, production 2): control characters other than
     * tab and line ends, lone surrogates, U+FFFE and U+FFFF. Markup is left for the writer to escape.
     */
    static String clean(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        text.codePoints()
                .filter(c -> c == '\t' || c == '\n' || c == '\r' || c >= 0x20 && c <= 0xD7FF
                        || c >= 0xE000 && c <= 0xFFFD || c >= 0x10000)
                .forEach(clean::appendCodePoint);
        return clean.toString();
    }
}
