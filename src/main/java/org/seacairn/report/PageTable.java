package org.seacairn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import org.seacairn.export.Column;

/**
 * A table of a page: a caption, columns with their units in the head, one row for each value. The first column heads
 * its row. A cell made from a {@link Column} carries the text of the CSV file in {@code data-sort}, so that sorting
 * goes by the figure itself and the page cannot say another one.
 */
final class PageTable<T> {
    private record Head<T>(String heading, boolean figure, Function<T, String> sort, BiConsumer<Html, T> cell) {}

    private final String caption;
    private final List<Head<T>> heads = new ArrayList<>();
    private Function<T, String> feature = row -> "";
    private int targetsFrom = Integer.MAX_VALUE;
    private boolean sortable;

    PageTable(String caption) {
        this.caption = caption;
    }

    /** A name or a text out of somebody's file. */
    PageTable<T> name(String heading, Function<T, String> text) {
        return cell(heading, (html, row) -> {
            if (!text.apply(row).isEmpty()) {
                html.name(text.apply(row));
            }
        });
    }

    /** A text or figure of our own. */
    PageTable<T> text(String heading, Function<T, String> text) {
        return cell(heading, (html, row) -> html.text(text.apply(row)));
    }

    /** Digits, set to the right. */
    PageTable<T> figure(String heading, Function<T, String> text) {
        heads.add(new Head<>(heading, true, row -> "", (html, row) -> html.text(text.apply(row))));
        return this;
    }

    /**
     * A figure of the files for programs.
     *
     * @param shown how the number reads in the display units; not asked where the row has none
     */
    PageTable<T> figure(String heading, Column<T> column, DoubleFunction<String> shown) {
        heads.add(new Head<>(heading, true, column::text, (html, row) -> html.text(
                column.value(row) instanceof Number number ? shown.apply(number.doubleValue()) : Units.UNKNOWN)));
        return this;
    }

    /** What the last column is sorted by, where its text would not do: a number as programs write it. */
    PageTable<T> sortedBy(Function<T, String> key) {
        Head<T> last = heads.remove(heads.size() - 1);
        heads.add(new Head<>(last.heading(), last.figure(), key, last.cell()));
        return this;
    }

    PageTable<T> cell(String heading, BiConsumer<Html, T> cell) {
        heads.add(new Head<>(heading, false, row -> "", cell));
        return this;
    }

    /** @param id joins a row with what the map shows of it; empty text for none */
    PageTable<T> feature(Function<T, String> id) {
        this.feature = id;
        return this;
    }

    /** From that row on a row is itself where a link from the map leads: the page has no block for it. */
    PageTable<T> targetsFrom(int row) {
        this.targetsFrom = row;
        return this;
    }

    /** Rows may be put in another order by the reader. */
    PageTable<T> sortable() {
        this.sortable = true;
        return this;
    }

    void write(Html html, List<T> rows) {
        // A table wider than the screen scrolls in its frame, which the keyboard must reach.
        html.open("div", "class", "frame", "tabindex", "0", "role", "region", "aria-label", caption);
        html.open("table", "class", sortable ? "sortable" : "plain").newLine();
        html.open("caption").element("span", caption).close("caption").newLine();
        html.open("thead").open("tr");
        heads.forEach(head -> html.element("th", head.heading(), "scope", "col", "class", head.figure() ? "figure" : "words"));
        html.close("tr").close("thead").newLine();
        html.open("tbody").newLine();
        for (int i = 0; i < rows.size(); i++) {
            row(html, rows.get(i), i >= targetsFrom);
        }
        html.close("tbody").close("table").close("div").newLine();
    }

    private void row(Html html, T row, boolean isTarget) {
        String id = feature.apply(row);
        html.open("tr", id.isEmpty() ? new String[0] : isTarget ? new String[] {"id", id, "data-feature", id} : new String[] {"data-feature", id});
        for (int i = 0; i < heads.size(); i++) {
            Head<T> head = heads.get(i);
            String tag = i == 0 ? "th" : "td";
            List<String> attributes = new ArrayList<>();
            if (i == 0) {
                attributes.addAll(List.of("scope", "row"));
            }
            if (head.figure()) {
                attributes.addAll(List.of("class", "figure"));
            }
            String sort = head.sort().apply(row);
            if (!sort.isEmpty()) {
                attributes.addAll(List.of("data-sort", sort));
            }
            html.open(tag, attributes.toArray(String[]::new));
            head.cell().accept(html, row);
            html.close(tag);
        }
        html.close("tr").newLine();
    }
}
