package org.seacairn.report;

/**
 * The map.
 *
 * @param svg drawn and escaped by our own code
 * @param note how it was drawn, for example at what cell size
 */
public record MapSection(String svg, String note) implements Section {
    @Override
    public String id() {
        return "map";
    }

    @Override
    public String heading() {
        return "Map";
    }

    @Override
    public void write(Html html) {
        html.open("figure", "class", "map").newLine().ready(svg).newLine();
        html.open("figcaption").line(note).close("figcaption").close("figure").newLine();
    }
}
