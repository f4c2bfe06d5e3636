package org.seacairn.layer;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import net.sf.geographiclib.Geodesic;
import org.apache.commons.csv.CSVRecord;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.plan.Quantity;

/**
 * Reads where modules were planned and where they were surveyed after earlier drops: delimited text (see {@link CsvRows}) with columns
 * {@code planned_longitude, planned_latitude, surveyed_longitude, surveyed_latitude} and, if wanted, {@code name} and the depth of
 * the bottom with its unit, {@code depth_m}, {@code depth_ft} or the like. Places are on WGS 84 in any form of {@link CoordinateText}; what follows {@code planned}
 * and {@code surveyed} may be any name of longitude and latitude that layers may use.
 */
public final class LandingsCsv {
    /** A miss of more is a slip of the pen: 150 m of water and the worst current make some hundred metres. */
    private static final double FARTHEST_MISS_M = 5000;

    /** The ocean is nowhere deeper (Challenger Deep, about 10,935 m). */
    private static final double DEEPEST_M = 11_000;

    private static final String EXAMPLE = "write a header such as name,planned_longitude,planned_latitude,surveyed_longitude,surveyed_latitude,depth_m";

    /**
     * One drop. Longitudes and latitudes in degrees on WGS 84.
     *
     * @param name as the file has it, or {@code line 7} where it has none
     * @param depthM of the bottom, above 0; empty where the file has none
     */
    public record Row(String name, double plannedLongitudeDeg, double plannedLatitudeDeg, double surveyedLongitudeDeg,
            double surveyedLatitudeDeg, OptionalDouble depthM) {}

    private record DepthColumn(int index, double metresPerUnit) {}

    private final Path file;
    private final CsvRows rows;

    private LandingsCsv(Path file, CsvRows rows) {
        this.file = file;
        this.rows = rows;
    }

    /**
     * @return a row for each drop, in the file's order; at least one
     * @throws InputException if the file cannot be read, lacks a column, or a row is bad; all bad rows at once
     */
    public static List<Row> read(Path file) {
        VectorLayers.requireExisting(file, "landings");
        VectorLayers.requireContent(file, "landings");
        return new LandingsCsv(file, CsvRows.open(file)).read();
    }

    private List<Row> read() {
        CoordinateHeaders.partOfCoordinate(rows.header()).ifPresent(part -> {
            throw problem("its column \"" + part + "\" looks like minutes or hemisphere kept apart from their degrees;"
                    + " join them in one value such as 27 14.620 N");
        });
        CsvColumns planned = columns("planned");
        CsvColumns surveyed = columns("surveyed");
        Optional<DepthColumn> depth = depthColumn();
        int name = rows.header().stream().map(LandingsCsv::plain).toList().indexOf("name");
        String header = rows.place();
        List<Row> read = new ArrayList<>();
        boolean any = false;
        for (CSVRecord row = rows.next(); row != null; row = rows.next()) {
            any = true;
            if (rows.isWhole(row)) {
                row(row, planned, surveyed, depth, name).ifPresent(read::add);
            }
        }
        rows.refuseIfProblems();
        if (!any) {
            throw VectorReader.problem(file, header, "has no row below its header; give a row for each drop");
        }
        return List.copyOf(read);
    }

    private Optional<Row> row(CSVRecord row, CsvColumns planned, CsvColumns surveyed, Optional<DepthColumn> depth, int name) {
        double plannedX = longitude(row, planned.x());
        double plannedY = number(planned.y(), rows.numberText(row, planned.y()), CoordinateText::parseLatitude);
        double surveyedX = longitude(row, surveyed.x());
        double surveyedY = number(surveyed.y(), rows.numberText(row, surveyed.y()), CoordinateText::parseLatitude);
        OptionalDouble depthM = depth.map(column -> depthM(row, column)).orElse(OptionalDouble.empty());
        if (Double.isNaN(plannedX + plannedY + surveyedX + surveyedY + depthM.orElse(0))) {
            return Optional.empty();
        }
        double miss = Geodesic.WGS84.Inverse(plannedY, plannedX, surveyedY, surveyedX).s12;
        if (miss > FARTHEST_MISS_M) {
            rows.note(rows.place(), String.format(Locale.ROOT, "the surveyed place lies %.1f km from the planned one, more than %.0f km;"
                    + " check for swapped columns, signs and digits", miss / 1000, FARTHEST_MISS_M / 1000));
            return Optional.empty();
        }
        String called = name < 0 ? "" : CsvRows.unguarded(row.get(name));
        return Optional.of(new Row(called.isEmpty() ? rows.place() : called, plannedX, plannedY, surveyedX, surveyedY, depthM));
    }

    private double longitude(CSVRecord row, int column) {
        double degrees = number(column, rows.numberText(row, column), CoordinateText::parseLongitude);
        return degrees > 180 ? degrees - 360 : degrees;
    }

    private OptionalDouble depthM(CSVRecord row, DepthColumn column) {
        String text = rows.numberText(row, column.index());
        return text.isEmpty() ? OptionalDouble.empty()
                : OptionalDouble.of(number(column.index(), text, value -> parseDepthM(value, column.metresPerUnit())));
    }

    /** What a cell holds, or NaN after a problem was noted. */
    private double number(int column, String text, ToDoubleFunction<String> parser) {
        try {
            return parser.applyAsDouble(text);
        } catch (InputException e) {
            rows.note(rows.place(column), e.getMessage());
            return Double.NaN;
        }
    }

    private static double parseDepthM(String text, double metresPerUnit) {
        double depth = DegreeText.DECIMAL.matcher(text).matches() ? Double.parseDouble(text) * metresPerUnit : Double.NaN;
        if (!(depth > 0 && depth <= DEEPEST_M)) {
            throw new InputException("\"" + text + "\" is no depth of a bottom; write a number above 0, positive down and no deeper than "
                    + Math.round(DEEPEST_M) + " m, or leave it empty");
        }
        return depth;
    }

    /** The pair of columns whose names begin with a word. */
    private CsvColumns columns(String word) {
        List<String> rest = rows.header().stream().map(name -> plain(name).startsWith(word) ? name.strip().substring(word.length()) : "").toList();
        return CoordinateHeaders.pair(rest, CoordinateHeaders.Kind.DEGREES).orElseThrow(() ->
                problem("no columns \"" + word + "_longitude\" and \"" + word + "_latitude\"; " + EXAMPLE));
    }

    private Optional<DepthColumn> depthColumn() {
        DepthColumn found = null;
        for (int i = 0; i < rows.header().size(); i++) {
            String name = plain(rows.header().get(i));
            if (!name.equals("depth") && !name.startsWith("depth_")) {
                continue;
            }
            if (found != null) {
                throw problem("columns \"" + rows.header().get(found.index()) + "\" and \"" + rows.header().get(i)
                        + "\" both hold depths; keep one of them");
            }
            found = new DepthColumn(i, metresPerUnit(rows.header().get(i), name));
        }
        return Optional.ofNullable(found);
    }

    /** By what follows {@code depth_} in a column's name. */
    private double metresPerUnit(String column, String name) {
        try {
            return Quantity.si(column, "1 " + name.substring(Math.min(name.length(), "depth_".length())), Quantity.Kind.LENGTH);
        } catch (InputException e) {
            throw VectorReader.problem(file, rows.place(), "its column \"" + column
                    + "\" names no unit of length; name it depth_m, depth_ft or depth_fathom", e);
        }
    }

    private InputException problem(String whatAndRemedy) {
        return VectorReader.problem(file, rows.place(), whatAndRemedy);
    }

    /** {@code Planned Longitude (deg)} becomes {@code planned_longitude_deg}. */
    private static String plain(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "_").replaceAll("^_+|_+$", "");
    }
}
