package org.seacairn.report;

import java.util.List;
import org.seacairn.export.ChainTables;

/** What more modules would bring to a chain. */
record TradeoffSection(List<ChainTables.Tradeoff> rows) implements Section {
    @Override
    public String id() {
        return "tradeoff";
    }

    @Override
    public String heading() {
        return "What more modules would bring";
    }

    @Override
    public void write(Html html) {
        new PageTable<ChainTables.Tradeoff>("The best chain of each number of modules")
                .cell("Leg", (h, row) -> h.name(row.from()).text(" to ").name(row.to()))
                .figure("Modules", row -> Integer.toString(row.modules()))
                .figure("Mean score", row -> row.modules() == 0 ? "–" : Units.score(row.meanScore()))
                .figure("No chain exceeds", row -> row.modules() == 0 ? "–" : Units.score(row.boundScore()))
                .cell("Chosen", (h, row) -> h.element(row.chosen() ? "strong" : "span", row.chosen() ? "chosen" : "no"))
                .write(html, rows);
    }
}
