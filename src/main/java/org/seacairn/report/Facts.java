package org.seacairn.report;

import java.util.function.Consumer;

/** A list of terms, each with what there is to say of it. */
final class Facts {
    private final Html html;

    Facts(Html html) {
        this.html = html;
        html.open("dl", "class", "facts").newLine();
    }

    /** A text or figure of our own. */
    Facts add(String term, String text) {
        return add(term, h -> h.text(text));
    }

    /** A name or sentence out of somebody's file. */
    Facts name(String term, String name) {
        return add(term, h -> h.line(name));
    }

    Facts add(String term, Consumer<Html> description) {
        html.open("div").element("dt", term).open("dd");
        description.accept(html);
        html.close("dd").close("div").newLine();
        return this;
    }

    void end() {
        html.close("dl").newLine();
    }
}
