package org.seacairn.export;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.export.FeatureTable.Shape;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.place.Area;
import org.seacairn.plan.SitingPlan;
import org.seacairn.review.Finding;
import org.seacairn.review.Verdict;

/** Candidate permit areas as tables: one row an area, and one row a module that there is room for. */
public final class AreaTables {
    /** The international acre: 4840 square yards of 0.9144 m. */
    private static final double M2_PER_ACRE = 4840 * 0.9144 * 0.9144;
    private static final double M2_PER_SQUARE_NAUTICAL_MILE = 1852.0 * 1852.0;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private AreaTables() {}

    /**
     * An area that was chosen.
     *
     * @param corners longitude and latitude on WGS 84, clockwise, the north-western first
     * @param modules places that a packing found room for, longitude and latitude on WGS 84
     * @param capacityBound no arrangement has more
     * @param findings of its review
     */
    public record Candidate(String name, Area area, List<Coordinate> corners, List<Coordinate> modules, int capacityBound,
            List<Finding> findings) {
        /** What the review says of the distance to a layer: {@code keep-off:} and its label, or {@code reefs}. */
        public Optional<Finding> distance(String rule) {
            return findings.stream().filter(f -> f.rule().name().equals(rule)).findFirst();
        }

        /** The worst verdict of its review. */
        public Verdict verdict() {
            return findings.stream().map(Finding::verdict).max(Verdict::compareTo).orElseThrow();
        }

        public double km2() {
            return area.areaM2() / 1e6;
        }

        public double acres() {
            return area.areaM2() / M2_PER_ACRE;
        }

        public double nmi2() {
            return area.areaM2() / M2_PER_SQUARE_NAUTICAL_MILE;
        }

        /** As {@code sand 82.1 %; mud 17.9 %}. */
        public String bottomShares() {
            return area.bottomShares().entrySet().stream().map(AreaTables::share).collect(Collectors.joining("; "));
        }
    }

    private record Module(String area, String name, Coordinate at) {}

    private static String share(Map.Entry<String, Double> e) {
        return (e.getKey().isEmpty() ? "unmapped" : e.getKey()) + String.format(Locale.ROOT, " %.1f %%", 100 * e.getValue());
    }

    /** The rectangles. */
    public static FeatureTable<Candidate> areas(SitingPlan plan, List<Candidate> areas) {
        return new FeatureTable<>("areas", "Candidate permit areas; " + Cautions.SHORT, Shape.POLYGON, Decimals.SITE_DEG,
                columns(plan), areas, Candidate::name, area -> {
                    double firstDeg = area.corners().get(0).x;
                    List<Coordinate> ring = new ArrayList<>();
                    // Clockwise turned about.
                    for (int i = 0; i <= area.corners().size(); i++) {
                        Coordinate c = area.corners().get((area.corners().size() - i) % area.corners().size());
                        ring.add(new Coordinate(c.x - 360 * Math.rint((c.x - firstDeg) / 360), c.y));
                    }
                    return FACTORY.createPolygon(ring.toArray(Coordinate[]::new));
                });
    }

    /** The modules that there is room for. */
    public static FeatureTable<?> capacity(List<Candidate> areas) {
        return new FeatureTable<Module>("capacity", "Room for modules in the areas, not chosen sites; " + Cautions.SHORT, Shape.POINT,
                Decimals.SITE_DEG, capacityColumns(), modules(areas), Module::name, module -> FACTORY.createPoint(module.at()));
    }

    /**
     * Writes {@code areas.csv}.
     *
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void writeCsv(Path file, SitingPlan plan, List<Candidate> areas) {
        CsvTable.write(file, columns(plan), areas);
    }

    /**
     * Writes {@code capacity.csv}.
     *
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void writeCapacity(Path file, List<Candidate> areas) {
        CsvTable.write(file, capacityColumns(), modules(areas));
    }

    private static List<Module> modules(List<Candidate> areas) {
        return areas.stream().flatMap(area -> IntStream.range(0, area.modules().size()).mapToObj(i -> new Module(area.name(),
                String.format(Locale.ROOT, "%s-%02d", area.name(), i + 1), area.modules().get(i)))).toList();
    }

    private static List<Column<Module>> capacityColumns() {
        return List.of(Column.text("area", Module::area), Column.text("module", Module::name),
                Column.real("longitude_deg", Decimals.SITE_DEG, m -> m.at().x),
                Column.real("latitude_deg", Decimals.SITE_DEG, m -> m.at().y),
                Column.text("longitude_ddm", m -> CoordinateText.formatLongitudeDdm(m.at().x)),
                Column.text("latitude_ddm", m -> CoordinateText.formatLatitudeDdm(m.at().y)));
    }

    private static List<Column<Candidate>> columns(SitingPlan plan) {
        List<Column<Candidate>> columns = new ArrayList<>(List.of(Column.text("area", Candidate::name)));
        for (int i = 0; i < 4; i++) {
            int corner = i;
            String name = "corner_" + (i + 1) + "_";
            columns.add(Column.real(name + "longitude_deg", Decimals.SITE_DEG, a -> a.corners().get(corner).x));
            columns.add(Column.real(name + "latitude_deg", Decimals.SITE_DEG, a -> a.corners().get(corner).y));
            columns.add(Column.text(name + "longitude_ddm", a -> CoordinateText.formatLongitudeDdm(a.corners().get(corner).x)));
            columns.add(Column.text(name + "latitude_ddm", a -> CoordinateText.formatLatitudeDdm(a.corners().get(corner).y)));
            columns.add(Column.real(name + "easting_m", Decimals.METRES, a -> a.area().corners().get(corner).x));
            columns.add(Column.real(name + "northing_m", Decimals.METRES, a -> a.area().corners().get(corner).y));
        }
        columns.addAll(List.of(
                Column.real("area_km2", Decimals.SCORE, Candidate::km2),
                Column.real("area_acres", Decimals.METRES, Candidate::acres),
                Column.real("area_nmi2", Decimals.SCORE, Candidate::nmi2),
                Column.real("length_m", Decimals.METRES, a -> a.area().size().lengthM()),
                Column.real("width_m", Decimals.METRES, a -> a.area().size().widthM()),
                Column.real("turn_deg", Decimals.METRES, a -> a.area().turnDeg()),
                Column.real("depth_least_m", Decimals.METRES, a -> a.area().depthM().least()),
                Column.real("depth_most_m", Decimals.METRES, a -> a.area().depthM().most()),
                Column.real("slope_least_deg", Decimals.METRES, a -> a.area().slopeDeg().least()),
                Column.real("slope_most_deg", Decimals.METRES, a -> a.area().slopeDeg().most())));
        columns.addAll(List.of(
                Column.text("bottom_shares", Candidate::bottomShares),
                Column.real("mean_score", Decimals.SCORE, a -> a.area().meanScore()),
                Column.real("lowest_score", Decimals.SCORE, a -> a.area().lowestScore()),
                Column.integer("cells", a -> a.area().cells()),
                Column.real("ruled_out_share", Decimals.SCORE, a -> a.area().ruledOutShare()),
                Column.integer("capacity", a -> a.modules().size()),
                Column.integer("capacity_bound", Candidate::capacityBound)));
        List<String> layers = plan.keepOff().stream().map(layer -> layer.source().label()).toList();
        // nearest_stone is the column of the existing reefs.
        List<String> names = ColumnName.distinct(layers, Set.of("stone"));
        for (int i = 0; i < layers.size(); i++) {
            String rule = "keep-off:" + layers.get(i);
            columns.add(distance("distance_" + names.get(i) + "_m", rule));
            columns.add(nearest("nearest_" + names.get(i), rule));
        }
        columns.add(nearest("nearest_stone", "reefs"));
        columns.add(distance("stone_distance_m", "reefs"));
        columns.add(Column.text("review", a -> a.verdict().toString()));
        columns.add(Column.text("caution", a -> Cautions.SHORT));
        return List.copyOf(columns);
    }

    private static Column<Candidate> distance(String name, String rule) {
        return Column.real(name, Decimals.METRES, a -> a.distance(rule).map(f -> f.figures().measured()).orElse(Double.NaN));
    }

    private static Column<Candidate> nearest(String name, String rule) {
        return Column.text(name, a -> a.distance(rule).map(Finding::nearestFeature).orElse(""));
    }
}
