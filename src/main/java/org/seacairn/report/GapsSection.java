package org.seacairn.report;

import java.util.List;
import java.util.stream.IntStream;
import org.seacairn.export.ChainTables;
import org.seacairn.plan.SitingPlan.Display;

/** The gaps of a chain, stone to stone. */
record GapsSection(Display display, List<ChainTables.Gap> gaps) implements Section {
    private record Row(ChainTables.Gap gap, String feature) {}

    @Override
    public String id() {
        return "gaps";
    }

    @Override
    public String heading() {
        return "Gaps";
    }

    @Override
    public void write(Html html) {
        if (gaps.isEmpty()) {
            html.element("p", "There is no chain, and so no gap.").newLine();
            return;
        }
        Units units = new Units(display);
        String length = " (" + units.length() + ")";
        List<Row> rows = IntStream.range(0, gaps.size()).mapToObj(i -> new Row(gaps.get(i), FeatureId.gap(i))).toList();
        PageTable<Row> table = new PageTable<Row>("From stone to stone, in the order of the chain")
                .name("From", row -> row.gap().from())
                .name("To", row -> row.gap().to())
                .figure("Gap" + length, row -> units.length(row.gap().distanceM()))
                .figure("Toward (deg true)", row -> Units.number(0, row.gap().bearingDeg()));
        if (gaps.stream().anyMatch(gap -> Double.isFinite(gap.driftMissM()))) {
            table.figure("Missed by the drift" + length, row -> miss(units, row.gap().driftMissM()))
                    .figure("By the best parallel drift" + length, row -> miss(units, row.gap().parallelMissM()));
        }
        table.feature(Row::feature).write(html, Bounds.first(rows, Bounds.ROWS));
        Bounds.rest(html, rows, Bounds.ROWS, "gaps", "chains.csv");
    }

    /** Of the stone that the gap leads to. */
    private static String miss(Units units, double metres) {
        return Double.isFinite(metres) ? units.length(Math.abs(metres)) + (metres < 0 ? " left" : " right") : "–";
    }
}
