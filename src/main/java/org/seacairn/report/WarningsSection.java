package org.seacairn.report;

import java.util.List;

/** What the reader should know, one line each. */
record WarningsSection(List<String> warnings) implements Section {
    @Override
    public String id() {
        return "warnings";
    }

    @Override
    public String heading() {
        return "Warnings";
    }

    @Override
    public void write(Html html) {
        if (warnings.isEmpty()) {
            html.element("p", "None.").newLine();
            return;
        }
        list(html, Bounds.first(warnings, Bounds.ROWS));
        Bounds.rest(html, warnings, Bounds.ROWS, "warnings", "run.json");
    }

    static void list(Html html, List<String> lines) {
        html.open("ul").newLine();
        lines.forEach(line -> html.open("li").line(line).close("li").newLine());
        html.close("ul").newLine();
    }
}
