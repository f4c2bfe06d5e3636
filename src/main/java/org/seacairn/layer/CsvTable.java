package org.seacairn.layer;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVRecord;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.LayerFile;

/** One CSV file of points while its rows are being read. */
final class CsvTable {
    private static final GeometryFactory GEOMETRIES = new GeometryFactory();

    private final LayerFile source;
    private final CsvRows rows;
    private int wrapped;

    CsvTable(LayerFile source, CsvRows rows) {
        this.source = source;
        this.rows = rows;
    }

    VectorLayer read() {
        Optional<Crs> stated = source.crs().map(text -> LayerCrs.byPlan(source));
        CsvColumns columns = columns(stated);
        Crs crs = stated.orElse(Crs.WGS84);
        List<Feature> features = new ArrayList<>();
        int count = 0;
        int without = 0;
        for (CSVRecord row = rows.next(); row != null; row = rows.next()) {
            count++;
            if (!rows.isWhole(row)) {
                continue;
            }
            if (row.get(columns.x()).isBlank() && row.get(columns.y()).isBlank()) {
                without++;
                continue;
            }
            Coordinate point = point(row, columns, crs.isGeographic());
            if (point != null) {
                features.add(new Feature(count, GEOMETRIES.createPoint(point), attributes(row)));
            }
        }
        rows.refuseIfProblems();
        return new VectorLayer(source.label(), source.file(), "CSV", crs, source.edges(), List.copyOf(features), without, notes(stated));
    }

    private CsvColumns columns(Optional<Crs> stated) {
        try {
            return CsvColumns.find(rows.header(), source, stated);
        } catch (InputException e) {
            throw VectorReader.problem(source.file(), rows.place(), e.getMessage(), e);
        }
    }

    private Coordinate point(CSVRecord row, CsvColumns columns, boolean geographic) {
        String xText = rows.numberText(row, columns.x());
        String yText = rows.numberText(row, columns.y());
        String place = rows.place(columns.x());
        try {
            double x = geographic ? longitude(xText) : number(xText);
            place = rows.place(columns.y());
            return new Coordinate(x, geographic ? CoordinateText.parseLatitude(yText) : number(yText));
        } catch (InputException e) {
            rows.note(place, e.getMessage() + (geographic && isPlace(yText, xText)
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
            throw new InputException("\"" + XmlElements.shown(text) + "\" is no number; write it like 583960.25");
        }
        return Double.parseDouble(text.strip());
    }

    private Map<String, Object> attributes(CSVRecord row) {
        Map<String, Object> attributes = new LinkedHashMap<>();
        for (int i = 0; i < rows.header().size(); i++) {
            attributes.put(rows.header().get(i), row.get(i).isBlank() ? null : CsvRows.unguarded(row.get(i)));
        }
        return Collections.unmodifiableMap(attributes);
    }

    private List<String> notes(Optional<Crs> stated) {
        List<String> notes = new ArrayList<>(rows.notes());
        if (stated.isEmpty()) {
            notes.add("its longitudes and latitudes are taken as WGS 84, since a CSV file states no CRS");
        }
        if (wrapped > 0) {
            notes.add(wrapped + " longitudes above 180 are taken less 360");
        }
        return List.copyOf(notes);
    }
}
