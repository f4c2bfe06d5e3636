package org.seacairn.report;

import java.util.List;
import java.util.function.Consumer;

/**
 * Drawings under a heading, each with what there is to say of it.
 *
 * @param id lower case letters and hyphens
 */
public record DrawingSection(String id, String heading, List<Drawing> drawings) implements Section {

    /**
     * @param title heads it
     * @param svg drawn and escaped by our own code, with a title or label for those who do not see it
     * @param tables writes what belongs to it
     */
    public record Drawing(String title, String svg, Consumer<Html> tables) {}

    @Override
    public void write(Html html) {
        for (Drawing drawing : drawings) {
            html.open("article", "class", "block").newLine();
            html.open("h3").name(drawing.title()).close("h3").newLine();
            html.open("figure").newLine().ready(drawing.svg()).newLine().close("figure").newLine();
            drawing.tables().accept(html);
            html.close("article").newLine();
        }
    }
}
