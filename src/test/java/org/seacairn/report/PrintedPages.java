package org.seacairn.report;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A page as printed: its PDF and the sheets of it.
 *
 * @param pdf the file
 * @param sheets the size of each sheet, in points (1/72 inch)
 */
record PrintedPages(byte[] pdf, List<Sheet> sheets) {
    /** Width and height in points. */
    record Sheet(double widthPt, double heightPt) {}

    /** Chromium's PDF keeps the dictionaries of its pages as plain text, one object a page. */
    private static final Pattern PAGE = Pattern.compile(
            "/Type\\s*/Page\\b(?:(?!endobj).)*?/MediaBox\\s*\\[\\s*0\\s+0\\s+([\\d.]+)\\s+([\\d.]+)\\s*\\]", Pattern.DOTALL);
    private static final Pattern COUNT = Pattern.compile("/Type\\s*/Pages\\b(?:(?!endobj).)*?/Count\\s+(\\d+)", Pattern.DOTALL);

    static PrintedPages of(byte[] pdf) {
        String text = new String(pdf, StandardCharsets.ISO_8859_1);
        List<Sheet> sheets = new ArrayList<>();
        for (Matcher m = PAGE.matcher(text); m.find(); ) {
            sheets.add(new Sheet(Double.parseDouble(m.group(1)), Double.parseDouble(m.group(2))));
        }
        // The root of the page tree counts all of them, its branches fewer.
        int counted = COUNT.matcher(text).results().mapToInt(m -> Integer.parseInt(m.group(1))).max().orElse(0);
        if (sheets.isEmpty() || sheets.size() != counted) {
            throw new IllegalStateException("the PDF says it has " + counted + " pages, and " + sheets.size() + " were found in it");
        }
        return new PrintedPages(pdf, List.copyOf(sheets));
    }

    int count() {
        return sheets.size();
    }
}
