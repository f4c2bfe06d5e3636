package org.seacairn.export;

import java.nio.file.Path;
import java.util.List;

/** {@code reasons.csv}: the legend of the reason mask, and how much each reason ruled out. */
public final class ReasonsCsv {
    /** A square metre. */
    private static final int KM2_DECIMALS = 6;

    private static final List<Column<ReasonCount>> COLUMNS = List.of(
            Column.text("reason", ReasonCount::reason),
            Column.integer("bit", ReasonCount::bit),
            Column.integer("cells", ReasonCount::cells),
            Column.real("km2", KM2_DECIMALS, ReasonCount::km2),
            Column.integer("alone_cells", ReasonCount::aloneCells));

    private ReasonsCsv() {}

    /** @throws org.seacairn.InputException if the file cannot be written */
    public static void write(Path file, List<ReasonCount> reasons) {
        CsvTable.write(file, COLUMNS, reasons);
    }
}
