package org.seacairn.plan;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.seacairn.InputException;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.CurrentLevel;
import org.seacairn.plan.SitingPlan.CurrentProfile;
import org.seacairn.plan.TextFile.Unreadable;

/**
 * Current profiles as CSV, one level a row, with the unit in each header:
 * {@code depth_m,speed_kn,toward_deg}. A slash is written as an underscore: {@code speed_m_s}.
 * A column {@code profile} tells several profiles apart, such as those of several days. Other columns are left alone.
 */
final class CurrentTable {
    private static final CSVFormat FORMAT =
            CSVFormat.DEFAULT.builder().setTrim(true).setIgnoreEmptyLines(true).build();
    /** Each profile is sunk through several times over. */
    private static final int MOST_PROFILES = 100;
    private static final String EXAMPLE = "write a header such as depth_m,speed_kn,toward_deg";

    private final String file;
    private final Findings findings;

    private CurrentTable(String file, Findings findings) {
        this.file = file;
        this.findings = findings;
    }

    /** The profiles, or what could be read of them after problems were noted. */
    static List<CurrentProfile> read(Path file, Findings findings) {
        String name = file.getFileName().toString();
        findings.opened(name);
        try (CSVParser rows = CSVParser.parse(TextFile.read(file), FORMAT)) {
            return new CurrentTable(name, findings).profiles(rows);
        } catch (Unreadable e) {
            findings.problem(name, e.line(), e.getMessage());
        } catch (IOException | UncheckedIOException e) {
            findings.problem(name, 0, "this is not CSV (" + Shown.quoted(e.getMessage()) + "); check its quotes");
        }
        return List.of();
    }

    private record Column(String what, int index, String symbol, Kind kind) {}

    private List<CurrentProfile> profiles(CSVParser rows) {
        List<Column> columns = null;
        int profileColumn = -1;
        Map<String, List<CurrentLevel>> profiles = new LinkedHashMap<>();
        for (CSVRecord row : rows) {
            int line = (int) rows.getCurrentLineNumber();
            if (columns == null) {
                columns = columns(row, line);
                profileColumn = profileColumn(row);
                if (columns.size() < 3) {
                    return List.of();
                }
                continue;
            }
            CurrentLevel level = CurrentBlock.level(
                    cell(row, line, columns.get(0)), cell(row, line, columns.get(1)), cell(row, line, columns.get(2)));
            String profile = profileColumn < 0 || profileColumn >= row.size() ? "" : row.get(profileColumn);
            if (profileColumn >= 0 && profile.isEmpty()) {
                findings.problem(file, line, "profile is empty; write which profile the level belongs to");
            }
            List<CurrentLevel> levels = profiles.computeIfAbsent(profile, name -> new ArrayList<>());
            if (!levels.isEmpty() && level.depthM() <= levels.get(levels.size() - 1).depthM()) {
                findings.problem(file, line, CurrentBlock.NOT_DEEPER);
            }
            levels.add(level);
        }
        if (profiles.isEmpty()) {
            findings.problem(file, 0, "the table has no level; " + EXAMPLE + " and a row for each depth");
        } else if (profiles.size() > MOST_PROFILES) {
            findings.problem(file, 0, "the table has " + profiles.size() + " profiles, more than " + MOST_PROFILES
                    + "; keep those of the days that modules are to be dropped on");
        }
        return profiles.entrySet().stream().map(p -> new CurrentProfile(p.getKey(), List.copyOf(p.getValue()))).toList();
    }

    /** The column that says which profile a level belongs to, or -1: all are one. */
    private static int profileColumn(CSVRecord header) {
        for (int i = 0; i < header.size(); i++) {
            if (header.get(i).equalsIgnoreCase("profile")) {
                return i;
            }
        }
        return -1;
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
