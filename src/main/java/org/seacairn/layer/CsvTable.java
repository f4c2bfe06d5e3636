package org.seacairn.layer;

import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * One CSV file while its rows are being read. All bad rows are found before the file is refused, so that
 * they can be corrected in one go.
 */
final class CsvTable {
    /** More problems than this are counted and not told one by one. */
    private static final int PROBLEMS_TOLD = 20;

    private static final String FORMULA_STARTS = "=+-@\t\r";
    private static final GeometryFactory GEOMETRIES = new GeometryFactory();

    private final LayerFile source;
    private final CSVParser parser;
    private final Iterator<CSVRecord> records;
    private final boolean decimalComma;
    private final List<String> problems = new ArrayList<>();
    private int badRows;
    private int wrapped;
    private long line;

    CsvTable(LayerFile source, CSVParser parser, boolean decimalComma) {
        this.source = source;
        this.parser = parser;
        this.records = parser.iterator();
        this.decimalComma = decimalComma;
    }

    VectorLayer read(List<String> decodingNotes) {
        Optional<Crs> stated = source.crs().map(text -> LayerCrs.byPlan(source));
        List<String> header = header();
        CsvColumns columns = columns(header, stated);
        Crs crs = stated.orElse(Crs.WGS84);
        List<Feature> features = new ArrayList<>();
        int rows = 0;
        int without = 0;
        for (CSVRecord row = next(); row != null; row = next()) {
            rows++;
            if (!isWhole(row, header)) {
                continue;
            }
            if (row.get(columns.x()).isBlank() && row.get(columns.y()).isBlank()) {
                without++;
                continue;
            }
            Coordinate point = point(row, columns, header, crs.isGeographic());
            if (point != null) {
                features.add(new Feature(rows, GEOMETRIES.createPoint(point), attributes(row, header)));
            }
        }
        refuseIfProblems();
        return new VectorLayer(source.label(), source.file(), "CSV", crs, source.edges(), List.copyOf(features), without,
                notes(decodingNotes, stated));
    }

    /** The next record that is not an empty line, or null at the end. */
    private CSVRecord next() {
        try {
            while (true) {
                line = parser.getCurrentLineNumber() + 1;
                if (!records.hasNext()) {
                    return null;
                }
                CSVRecord row = records.next();
                if (row.size() > 1 || !row.get(0).isBlank()) {
                    return row;
                }
            }
        } catch (UncheckedIOException | IllegalStateException e) {
            throw VectorReader.problem(source.file(), "line " + line,
                    "its quotes do not match; put a value in quotes and write a quote inside it twice", e);
        }
    }

    private List<String> header() {
        CSVRecord first = next();
        if (first != null && first.size() == 2 && first.get(0).equalsIgnoreCase("sep=") && first.get(1).isEmpty()) {
            first = next();
        }
        if (first == null) {
            throw VectorReader.problem(source.file(), "line 1", "holds no column name; export it again with a header line");
        }
        List<String> names = new ArrayList<>();
        for (String name : first) {
            String text = unguarded(name);
            names.add(text.isEmpty() ? "column " + (names.size() + 1) : text);
        }
        Set<String> seen = new HashSet<>();
        names.stream().filter(name -> !seen.add(name)).findFirst().ifPresent(twice -> {
            throw VectorReader.problem(source.file(), "line " + line, "two columns are named \"" + twice + "\"; rename one of them");
        });
        return names;
    }

    private CsvColumns columns(List<String> header, Optional<Crs> stated) {
        try {
            return CsvColumns.find(header, source, stated);
        } catch (InputException e) {
            throw VectorReader.problem(source.file(), "line " + line, e.getMessage(), e);
        }
    }

    private boolean isWhole(CSVRecord row, List<String> header) {
        boolean whole = row.size() >= header.size();
        for (int i = header.size(); i < row.size(); i++) {
            whole &= row.get(i).isBlank();
        }
        if (!whole) {
            note("line " + line, "has " + row.size() + " values where the header has " + header.size()
                    + "; complete the row, or quote values that hold the delimiter");
        }
        return whole;
    }

    private Coordinate point(CSVRecord row, CsvColumns columns, List<String> header, boolean geographic) {
        String xText = withPoint(unguarded(row.get(columns.x())));
        String yText = withPoint(unguarded(row.get(columns.y())));
        String place = "line " + line + ", column \"" + header.get(columns.x()) + "\"";
        try {
            double x = geographic ? longitude(xText) : number(xText);
            place = "line " + line + ", column \"" + header.get(columns.y()) + "\"";
            return new Coordinate(x, geographic ? CoordinateText.parseLatitude(yText) : number(yText));
        } catch (InputException e) {
            note(place, e.getMessage() + (geographic && isPlace(yText, xText)
                    ? "; it reads well the other way round, so longitude and latitude look swapped" : ""));
            return null;
        }
    }

    private double longitude(String text) {
        double degrees = CoordinateText.parseLongitude(text);
        if (degrees <= 180) {
            return degrees;
        }
        wrapped++;
        return degrees - 360;
    }

    private static boolean isPlace(String longitude, String latitude) {
        try {
            CoordinateText.parseLongitude(longitude);
            CoordinateText.parseLatitude(latitude);
            return true;
        } catch (InputException e) {
            return false;
        }
    }

    private static double number(String text) {
        if (!DegreeText.DECIMAL.matcher(text.strip()).matches()) {
            throw new InputException("\"" + text + "\" is no number; write it like 583960.25");
        }
        return Double.parseDouble(text.strip());
    }

    private String withPoint(String value) {
        return decimalComma && value.indexOf('.') < 0 ? value.replace(',', '.') : value;
    }

    private static Map<String, Object> attributes(CSVRecord row, List<String> header) {
        Map<String, Object> attributes = new LinkedHashMap<>();
        for (int i = 0; i < header.size(); i++) {
            attributes.put(header.get(i), row.get(i).isBlank() ? null : unguarded(row.get(i)));
        }
        return Collections.unmodifiableMap(attributes);
    }

    /**
     * A value without white space about it, and without the apostrophe that exports put before a text that a
     * spreadsheet would run as a formula (OWASP, CSV injection), ours among them: {@code '=A} is read as {@code =A}, so that a name
     * is the same in the layer it came from and in a table of results. An apostrophe before anything else stays.
     */
    private static String unguarded(String value) {
        String text = value.strip();
        boolean guarded = text.length() > 1 && text.charAt(0) == '\'' && FORMULA_STARTS.indexOf(text.charAt(1)) >= 0;
        return guarded ? text.substring(1) : text;
    }

    private void note(String place, String whatAndRemedy) {
        badRows++;
        if (badRows <= PROBLEMS_TOLD) {
            problems.add(source.file().getFileName() + ", " + place + ": " + whatAndRemedy);
        }
    }

    private void refuseIfProblems() {
        if (badRows > PROBLEMS_TOLD) {
            problems.add(source.file().getFileName() + ": and " + (badRows - PROBLEMS_TOLD) + " more rows like these");
        }
        if (badRows > 0) {
            throw new InputException(problems);
        }
    }

    private List<String> notes(List<String> decodingNotes, Optional<Crs> stated) {
        List<String> notes = new ArrayList<>(decodingNotes);
        if (stated.isEmpty()) {
            notes.add("its longitudes and latitudes are taken as WGS 84, since a CSV file states no CRS");
        }
        if (wrapped > 0) {
            notes.add(wrapped + " longitudes above 180 are taken less 360");
        }
        return List.copyOf(notes);
    }
}
