package org.seacairn.plan;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.seacairn.InputException;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.CurrentLevel;
import org.seacairn.plan.TextFile.Unreadable;

/**
 * A current profile as CSV, one level a row, with the unit in each header:
 * {@code depth_m,speed_kn,toward_deg}. A slash is written as an underscore: {@code speed_m_s}.
 * Other columns are left alone.
 */
final class CurrentTable {
    private static final CSVFormat FORMAT =
            CSVFormat.DEFAULT.builder().setTrim(true).setIgnoreEmptyLines(true).build();
    private static final String EXAMPLE = "write a header such as depth_m,speed_kn,toward_deg";

    private final String file;
    private final Findings findings;

    private CurrentTable(String file, Findings findings) {
        this.file = file;
        this.findings = findings;
    }

    /** The levels, or what could be read of them after problems were noted. */
    static List<CurrentLevel> read(Path file, Findings findings) {
        String name = file.getFileName().toString();
        findings.opened(name);
        try (CSVParser rows = CSVParser.parse(TextFile.read(file), FORMAT)) {
            return new CurrentTable(name, findings).levels(rows);
        } catch (Unreadable e) {
            findings.problem(name, e.line(), e.getMessage());
        } catch (IOException | UncheckedIOException e) {
            findings.problem(name, 0, "this is not CSV (" + Shown.quoted(e.getMessage()) + "); check its quotes");
        }
        return List.of();
    }

    private record Column(String what, int index, String symbol, Kind kind) {}

    private List<CurrentLevel> levels(CSVParser rows) {
        List<Column> columns = null;
        List<CurrentLevel> levels = new ArrayList<>();
        for (CSVRecord row : rows) {
            int line = (int) rows.getCurrentLineNumber();
            if (columns == null) {
                columns = columns(row, line);
                if (columns.size() < 3) {
                    return List.of();
                }
                continue;
            }
            CurrentLevel level = CurrentBlock.level(
                    cell(row, line, columns.get(0)), cell(row, line, columns.get(1)), cell(row, line, columns.get(2)));
            if (!levels.isEmpty() && level.depthM() <= levels.get(levels.size() - 1).depthM()) {
                findings.problem(file, line, CurrentBlock.NOT_DEEPER);
            }
            levels.add(level);
        }
        if (levels.isEmpty()) {
            findings.problem(file, 0, "the table has no level; " + EXAMPLE + " and a row for each depth");
        }
        return levels;
    }

    private List<Column> columns(CSVRecord header, int line) {
        List<Column> columns = new ArrayList<>();
        column(header, line, "depth", Kind.LENGTH).ifPresent(columns::add);
        column(header, line, "speed", Kind.SPEED).ifPresent(columns::add);
        column(header, line, "toward", Kind.ANGLE).ifPresent(columns::add);
        return columns;
    }

    private Optional<Column> column(CSVRecord header, int line, String what, Kind kind) {
        List<Column> found = new ArrayList<>();
        for (int i = 0; i < header.size(); i++) {
            String title = header.get(i).toLowerCase(Locale.ROOT);
            if (!title.startsWith(what)) {
                continue;
            }
            Optional<Unit> unit = title.startsWith(what + "_") ? unit(title.substring(what.length() + 1), kind)
                    : Optional.empty();
            if (unit.isEmpty()) {
                findings.problem(file, line, "column " + Shown.quoted(header.get(i)) + " names no unit of "
                        + what + " (" + suffixes(kind) + "); " + EXAMPLE);
                return Optional.empty();
            }
            found.add(new Column(what, i, unit.get().symbol(), kind));
        }
        if (found.size() != 1) {
            findings.problem(file, line, (found.isEmpty() ? "there is no column of " : "there are two columns of ")
                    + what + "; " + EXAMPLE);
            return Optional.empty();
        }
        return Optional.of(found.get(0));
    }

    private static Optional<Unit> unit(String suffix, Kind kind) {
        return Unit.of(suffix, kind).or(() -> Unit.of(suffix.replace('_', '/'), kind));
    }

    private static String suffixes(Kind kind) {
        return Arrays.stream(Unit.values()).filter(unit -> unit.fits(kind))
                .map(unit -> "_" + unit.symbol().replace('/', '_')).collect(Collectors.joining(", "));
    }

    private double cell(CSVRecord row, int line, Column column) {
        String text = column.index() < row.size() ? row.get(column.index()) : "";
        if (text.isEmpty()) {
            findings.problem(file, line, column.what() + " is empty; write a number");
            return Double.NaN;
        }
        try {
            return Quantity.si(column.what(), text + " " + column.symbol(), column.kind());
        } catch (InputException e) {
            findings.problem(file, line, e.getMessage());
            return Double.NaN;
        }
    }
}
