package org.seacairn.export;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.seacairn.export.FeatureTable.Shape;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.review.Figures;
import org.seacairn.review.Figures.Unit;
import org.seacairn.review.Finding;
import org.seacairn.review.SiteReview;
import org.seacairn.review.Verdict;

/** What a review found, as tables: the findings, the sites that were proposed, and the nearest approaches. */
public final class ReviewTables {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    /** A line to something farther off would only cross the map. */
    private static final double FAR_M = 50_000;

    private ReviewTables() {}

    /**
     * Writes {@code review.csv}: one line a site and rule.
     *
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void writeCsv(Path file, List<SiteReview> reviews) {
        CsvTable.write(file, columns(), findings(reviews));
    }

    /** The layers of {@code review.gpkg}. */
    public static List<FeatureTable<?>> of(List<SiteReview> reviews) {
        List<Finding> findings = findings(reviews);
        List<SiteReview> points = reviews.stream().filter(r -> r.site().isPoint()).toList();
        List<SiteReview> polygons = reviews.stream().filter(r -> !r.site().isPoint()).toList();
        List<FeatureTable<?>> tables = new ArrayList<>();
        tables.add(new FeatureTable<>("review", "What each rule says of each proposed site; " + Cautions.SHORT, Shape.POINT,
                Decimals.SITE_DEG, columns(), findings, Finding::site, f -> point(f.longitudeDeg(), f.latitudeDeg())));
        tables.add(new FeatureTable<>("proposed_points", "Proposed points and their worst verdict; " + Cautions.SHORT,
                Shape.POINT, Decimals.SITE_DEG, siteColumns(), points, r -> r.site().name(), SiteReview::wgs84));
        tables.add(new FeatureTable<>("proposed_polygons", "Proposed polygons and their worst verdict; " + Cautions.SHORT,
                Shape.MULTIPOLYGON, Decimals.SITE_DEG, siteColumns(), polygons, r -> r.site().name(),
                r -> r.wgs84() instanceof Polygon polygon ? FACTORY.createMultiPolygon(new Polygon[] {polygon}) : r.wgs84()));
        tables.add(new FeatureTable<>("approaches", "From each place that does not pass to the nearest feature of the layer",
                Shape.LINESTRING, Decimals.SITE_DEG,
                List.of(Column.text("site", Finding::site), Column.text("rule", f -> f.rule().name()),
                        Column.text("nearest_feature", Finding::nearestFeature),
                        Column.real("measured_m", Decimals.METRES, f -> f.figures().measured()),
                        Column.text("verdict", f -> f.verdict().toString())),
                findings.stream().filter(ReviewTables::hasApproach).toList(), Finding::site, ReviewTables::approach));
        return List.copyOf(tables);
    }

    private static List<Finding> findings(List<SiteReview> reviews) {
        return reviews.stream().flatMap(review -> review.findings().stream()).toList();
    }

    private static Geometry point(double lonDeg, double latDeg) {
        return FACTORY.createPoint(new Coordinate(lonDeg, latDeg));
    }

    private static boolean hasApproach(Finding finding) {
        double measured = Math.abs(finding.figures().measured());
        return finding.verdict() != Verdict.PASS && Double.isFinite(finding.nearestLongitudeDeg())
                && measured > 0 && measured <= FAR_M;
    }

    private static Geometry approach(Finding f) {
        double turn = 360 * Math.rint((f.nearestLongitudeDeg() - f.longitudeDeg()) / 360);
        return FACTORY.createLineString(new Coordinate[] {
            new Coordinate(f.longitudeDeg(), f.latitudeDeg()), new Coordinate(f.nearestLongitudeDeg() - turn, f.nearestLatitudeDeg())});
    }

    private static List<Column<SiteReview>> siteColumns() {
        List<Column<SiteReview>> columns = new ArrayList<>(List.of(
                Column.text("site", r -> r.site().name()),
                Column.text("verdict", r -> r.verdict().toString())));
        for (Verdict verdict : Verdict.values()) {
            columns.add(Column.integer(verdict.toString().replace(' ', '_'), r -> r.count(verdict)));
        }
        return columns;
    }

    private static List<Column<Finding>> columns() {
        List<Column<Finding>> columns = new ArrayList<>(List.of(
                Column.text("site", Finding::site),
                Column.text("rule", f -> f.rule().name()),
                Column.text("source", f -> f.rule().source()),
                figure("required_m", Unit.METRES, Figures::required),
                figure("measured_m", Unit.METRES, Figures::measured),
                figure("allowance_m", Unit.METRES, Figures::allowance),
                figure("margin_m", Unit.METRES, Figures::margin),
                Column.text("verdict", f -> f.verdict().toString()),
                Column.text("nearest_feature", Finding::nearestFeature),
                Column.real("nearest_longitude_deg", Decimals.SITE_DEG, Finding::nearestLongitudeDeg),
                Column.real("nearest_latitude_deg", Decimals.SITE_DEG, Finding::nearestLatitudeDeg),
                Column.real("bearing_deg", Decimals.METRES, Finding::bearingDeg),
                Column.real("longitude_deg", Decimals.SITE_DEG, Finding::longitudeDeg),
                Column.real("latitude_deg", Decimals.SITE_DEG, Finding::latitudeDeg),
                Column.text("longitude_ddm", f -> CoordinateText.formatLongitudeDdm(f.longitudeDeg())),
                Column.text("latitude_ddm", f -> CoordinateText.formatLatitudeDdm(f.latitudeDeg()))));
        columns.addAll(List.of(
                figure("required_deg", Unit.DEGREES, Figures::required),
                figure("measured_deg", Unit.DEGREES, Figures::measured),
                figure("margin_deg", Unit.DEGREES, Figures::margin),
                figure("required_vrm", Unit.VRM, Figures::required),
                figure("measured_vrm", Unit.VRM, Figures::measured),
                figure("margin_vrm", Unit.VRM, Figures::margin),
                figure("required_factor", Unit.FACTOR, Figures::required),
                figure("measured_factor", Unit.FACTOR, Figures::measured),
                figure("margin_factor", Unit.FACTOR, Figures::margin),
                Column.text("confirmed", f -> f.rule().confirmed().map(Object::toString).orElse("")),
                Column.text("edges", f -> f.rule().edges()),
                Column.text("note", Finding::note),
                Column.text("caution", f -> Cautions.SHORT)));
        return List.copyOf(columns);
    }

    private static Column<Finding> figure(String name, Unit unit, ToDoubleFunction<Figures> figure) {
        return Column.real(name, unit.decimals(),
                f -> f.figures().unit() == unit ? figure.applyAsDouble(f.figures()) : Double.NaN);
    }
}
