package org.seacairn.report;

import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * What came of it, in a few sentences and figures.
 *
 * @param lines sentences; may hold names
 * @param facts terms and what there is to say of them, in order
 */
record SummarySection(List<String> lines, Map<String, String> facts) implements Section {
    @Override
    public String id() {
        return "summary";
    }

    @Override
    public String heading() {
        return "Summary";
    }

    @Override
    public void write(Html html) {
        lines.forEach(line -> html.open("p", "class", "answer").line(line).close("p").newLine());
        if (!facts.isEmpty()) {
            Facts list = new Facts(html);
            facts.forEach((term, text) -> list.add(term, (Consumer<Html>) h -> h.line(text)));
            list.end();
        }
    }
}
