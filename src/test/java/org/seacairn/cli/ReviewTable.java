package org.seacairn.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.seacairn.cli.PlainReview.Row;

/** A {@code review.csv}, and what of one of its rows contradicts the oracle. */
final class ReviewTable {
    static final List<String> COLUMNS = List.of("site", "rule", "source", "required_m", "measured_m", "allowance_m", "margin_m",
            "verdict", "nearest_feature", "nearest_longitude_deg", "nearest_latitude_deg", "bearing_deg", "longitude_deg", "latitude_deg",
            "longitude_ddm", "latitude_ddm", "required_deg", "measured_deg", "margin_deg", "required_vrm", "measured_vrm", "margin_vrm",
            "required_factor", "measured_factor", "margin_factor",
            "confirmed", "edges", "note", "caution");
    /** Two roundings to the millimetre, and what the oracle itself is off by. */
    private static final double DISTANCE_TOLERANCE_M = 1.5e-3;
    /** Where two borders, each right to half a millimetre, cross at a sharp angle. */
    private static final double CORNER_TOLERANCE_M = 4e-3;
    /** Positions have nine decimals: 0.06 mm. */
    private static final double POSITION_TOLERANCE_M = 2e-3;

    final List<String> header;
    final List<CSVRecord> records;

    ReviewTable(Path file) {
        try (CSVParser parser = CSVParser.parse(file, StandardCharsets.UTF_8, CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).build())) {
            header = parser.getHeaderNames();
            records = parser.getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What contradicts the oracle, each with the column it stands in first; empty if nothing does. */
    static List<String> differences(CSVRecord record, Row row, PlainPlane plane) {
        List<String> found = new ArrayList<>();
        if (row.aside) {
            return found;
        }
        boolean noData = row.verdict.equals("no data");
        if (!row.inDoubt && !row.verdict.equals(record.get("verdict"))) {
            found.add("verdict: " + record.get("verdict") + " and not " + row.verdict);
        }
        if (row.verdictOnly) {
            return found;
        }
        if (!row.rule.equals("duplicate") && !row.rule.equals("overlap")) {
            figure(record, "required_" + row.unit, row.required, row, noData, found);
        }
        figure(record, "measured_" + row.unit, row.measured, row, noData, found);
        if (row.unit.equals("m") && !row.rule.equals("duplicate") && !row.rule.equals("overlap")) {
            figure(record, "allowance_m", row.allowance, row, noData, found);
        }
        itself(record, row, found);
        String source = record.get("source");
        if (row.source != null && !(row.source.equals("plan.yaml") ? source.startsWith(row.source) : source.equals(row.source))) {
            found.add("source: " + source + " and not " + row.source);
        }
        // The rules of the command do not tell how the column spells it.
        if (row.edges != null && !record.get("edges").replace(' ', '-').equals(row.edges)) {
            found.add("edges: " + record.get("edges") + " and not " + row.edges);
        }
        if (row.nearest != null && !noData && !row.nearest.equals(record.get("nearest_feature"))) {
            found.add("nearest_feature: " + record.get("nearest_feature") + " and not " + row.nearest);
        }
        nearest(record, row, plane, found);
        return found;
    }

    private static void figure(CSVRecord record, String column, double expected, Row row, boolean mayBeEmpty, List<String> found) {
        String text = record.get(column);
        double tolerance = switch (row.unit) {
            case "deg" -> 0.0010001;
            case "vrm" -> 2.001e-6;
            // Depths are rounded and nothing more; where the last bit decides which way, by one millimetre.
            default -> row.rule.matches("depth-.*|clearance-above|height-share") ? halfway(expected) ? 1.01e-3 : 1e-9
                    : row.rule.matches("inside|bottom") ? CORNER_TOLERANCE_M : DISTANCE_TOLERANCE_M;
        };
        double rounded = row.unit.equals("vrm") ? expected : Math.round(expected * 1000) / 1000.0;
        if (text.isEmpty() ? !Double.isNaN(expected) && !mayBeEmpty : Double.isNaN(expected) || Math.abs(Double.parseDouble(text) - rounded) > tolerance) {
            found.add(column + ": " + (text.isEmpty() ? "empty" : text) + " and not " + expected);
        }
    }

    private static boolean halfway(double m) {
        double mm = m * 1000;
        return Math.abs(mm - Math.floor(mm) - 0.5) < 0.02;
    }

    /** A row must agree with itself, to the last digit. */
    private static void itself(CSVRecord record, Row row, List<String> found) {
        if (record.get("verdict").equals("no data")
                || record.get("required_" + row.unit).isEmpty() || record.get("measured_" + row.unit).isEmpty()) {
            return;
        }
        double step = row.unit.equals("vrm") ? 1e6 : 1e3;
        long required = Math.round(Double.parseDouble(record.get("required_" + row.unit)) * step);
        long measured = Math.round(Double.parseDouble(record.get("measured_" + row.unit)) * step);
        String allowed = row.unit.equals("m") ? record.get("allowance_m") : "";
        long allowance = allowed.isEmpty() ? 0 : Math.round(Double.parseDouble(allowed) * step);
        long margin = (row.atMost ? required - measured : measured - required) - allowance;
        String text = record.get("margin_" + row.unit);
        if (text.isEmpty() || Math.round(Double.parseDouble(text) * step) != margin) {
            found.add("margin_" + row.unit + ": " + text + " and not " + margin / step);
        }
        String verdict = margin >= 0 ? "pass" : margin + allowance >= 0 ? "marginal" : "fail";
        boolean byFigures = !row.rule.equals("duplicate") && !row.rule.equals("overlap") && !(row.rule.equals("depth-least") && measured <= 0);
        if (byFigures && !verdict.equals(record.get("verdict"))) {
            found.add("verdict: " + record.get("verdict") + " where the row's own figures say " + verdict);
        }
    }

    private static void nearest(CSVRecord record, Row row, PlainPlane plane, List<String> found) {
        double[] place = position(record, "longitude_deg", "latitude_deg");
        if (place == null) {
            found.add("longitude_deg: empty");
            return;
        }
        if (row.site.isPoint() && (row.nearestOn != null || row.rule.equals("apart")) && PlainFigure.inverseM(place, row.site.point()) > POSITION_TOLERANCE_M) {
            found.add("longitude_deg: the place is not that of the site");
        }
        double[] onPlane = plane.of(place);
        if (!row.site.isPoint() && row.nearestOn != null && !row.site.figure().holds(onPlane)
                && row.site.figure().roughEdgeM(onPlane) > POSITION_TOLERANCE_M) {
            found.add("longitude_deg: the place is not within the site");
        }
        double[] nearest = position(record, "nearest_longitude_deg", "nearest_latitude_deg");
        if (nearest == null) {
            if (row.nearestOn != null && row.measured != 0 && !row.verdict.equals("no data")) {
                found.add("nearest_longitude_deg: empty");
            }
            return;
        }
        GeodesicData toNearest = Geodesic.WGS84.Inverse(place[1], place[0], nearest[1], nearest[0]);
        String measured = record.get("measured_m");
        if (!measured.isEmpty() && Math.abs(toNearest.s12 - Math.abs(Double.parseDouble(measured))) > POSITION_TOLERANCE_M) {
            found.add("nearest_longitude_deg: " + toNearest.s12 + " m from the place, and not the " + measured + " m measured");
        }
        double[] xy = plane.of(nearest);
        if (row.nearestOn != null && toNearest.s12 > 0.01 && PlainFigure.edgeM(nearest, xy, row.nearestOn) > CORNER_TOLERANCE_M) {
            found.add("nearest_longitude_deg: " + PlainFigure.edgeM(nearest, xy, row.nearestOn) + " m off " + row.nearest);
        }
        String bearing = record.get("bearing_deg");
        if (bearing.isEmpty() ? toNearest.s12 > 0.01 : wrong(Double.parseDouble(bearing), toNearest)) {
            found.add("bearing_deg: " + bearing + " and not " + (toNearest.azi1 + 360) % 360);
        }
    }

    private static boolean wrong(double bearingDeg, GeodesicData line) {
        // A tenth of a millimetre of either end turns a short line by so much.
        double toleranceDeg = 0.0006 + Math.toDegrees(4e-4 / Math.max(line.s12, 1e-9));
        return bearingDeg < 0 || bearingDeg >= 360 || Math.abs(Math.IEEEremainder(bearingDeg - line.azi1, 360)) > toleranceDeg;
    }

    private static double[] position(CSVRecord record, String lon, String lat) {
        return record.get(lon).isEmpty() || record.get(lat).isEmpty() ? null
                : new double[] {Double.parseDouble(record.get(lon)), Double.parseDouble(record.get(lat))};
    }

    /** Sites and rules, one a row. */
    List<String> rowNames() {
        return records.stream().map(record -> record.get("site") + " / " + record.get("rule")).toList();
    }

    long count(String... verdicts) {
        return records.stream().filter(record -> Arrays.asList(verdicts).contains(record.get("verdict"))).count();
    }
}
