package org.seacairn.export;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.export.FeatureTable.Shape;
import org.seacairn.place.Ring;
import org.seacairn.place.Site;

/** A ring as tables: its line, and where each module stands about the reef. */
public final class RingTables {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private RingTables() {}

    /** @param sites of the ring's modules, in their order */
    public record AroundReef(String reef, Ring ring, List<Site> sites) {}

    private record Module(Site site, Site next, double bearingDeg, double distanceM, double gapM) {}

    /** One line a ring, closed: from the first module to the last and back; none about a single module. */
    public static FeatureTable<AroundReef> rings(List<AroundReef> rings) {
        return new FeatureTable<>("rings", "Modules about a reef, in order of bearing; " + Cautions.SHORT, Shape.LINESTRING,
                Decimals.SITE_DEG, List.of(
                        Column.text("around", AroundReef::reef),
                        Column.integer("modules", r -> r.sites().size()),
                        Column.real("least_step_deg", Decimals.METRES, r -> r.ring().leastStepDeg()),
                        Column.integer("evenness_bound_deg", r -> r.ring().evennessBoundDeg()),
                        Column.real("total_score", Decimals.SCORE, r -> r.ring().total()),
                        Column.real("bound_total_score", Decimals.SCORE, r -> r.ring().totalBound()),
                        Column.bool("proven_best", r -> r.ring().exact())),
                rings.stream().filter(r -> r.sites().size() > 1).toList(), r -> "Around " + r.reef(), RingTables::line);
    }

    private static Geometry line(AroundReef around) {
        double firstDeg = around.sites().get(0).longitudeDeg();
        List<Coordinate> line = new ArrayList<>();
        for (Site site : around.sites()) {
            line.add(new Coordinate(site.longitudeDeg() - 360 * Math.rint((site.longitudeDeg() - firstDeg) / 360), site.latitudeDeg()));
        }
        line.add(line.get(0));
        return FACTORY.createLineString(line.toArray(Coordinate[]::new));
    }

    /**
     * Writes {@code ring.csv}: one line a module; without a ring the header alone.
     *
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void writeCsv(Path file, Optional<AroundReef> around) {
        CsvTable.write(file, List.of(
                Column.text("site", m -> m.site().name()),
                Column.real("bearing_deg", Decimals.METRES, Module::bearingDeg),
                Column.real("distance_m", Decimals.METRES, Module::distanceM),
                Column.text("next", m -> m.next() == m.site() ? "" : m.next().name()),
                Column.real("gap_m", Decimals.METRES, Module::gapM)), around.map(RingTables::modules).orElse(List.of()));
    }

    private static List<Module> modules(AroundReef around) {
        List<Site> sites = around.sites();
        Ring ring = around.ring();
        return IntStream.range(0, sites.size()).mapToObj(i -> new Module(sites.get(i), sites.get((i + 1) % sites.size()),
                ring.modules().get(i).bearingDeg(), ring.modules().get(i).distanceM(),
                ring.gapsM().isEmpty() ? Double.NaN : ring.gapsM().get(i))).toList();
    }
}
