package org.seacairn.export;

import java.nio.file.Path;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.export.FeatureTable.Shape;
import org.seacairn.geodesy.CoordinateText;

/** A chain as tables: its gaps, and what more modules would bring. */
public final class ChainTables {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private ChainTables() {}

    /**
     * From one stone of a chain to the next; longitudes and latitudes in degrees on WGS 84.
     *
     * @param leg from 1: between two reefs that were named one after the other
     * @param from a reef or a site
     * @param bearingDeg true, at its start
     * @param driftMissM how far the straight drift passes from {@code to}, which lies to its right; negative to
     *     the left; NaN without a heading, and at a reef
     * @param parallelMissM the same of the parallel drift whose largest miss is least
     */
    public record Gap(int leg, String from, String to, double distanceM, double bearingDeg, double driftMissM, double parallelMissM,
            double fromLongitudeDeg, double fromLatitudeDeg, double toLongitudeDeg, double toLatitudeDeg) {}

    /**
     * The best chain of a number of modules.
     *
     * @param meanScore NaN without modules
     * @param boundScore no chain of as many modules has a higher mean
     * @param chosen whether it is the chain of the other outputs
     */
    public record Tradeoff(int leg, String from, String to, int modules, double meanScore, double boundScore, boolean chosen) {
        double totalScore() {
            return modules == 0 ? 0 : meanScore * modules;
        }
    }

    /** One line a gap. */
    public static FeatureTable<Gap> chains(List<Gap> gaps) {
        return new FeatureTable<>("chains", "Gaps of a chain of modules; " + Cautions.SHORT, Shape.LINESTRING, Decimals.SITE_DEG,
                columns(), gaps, gap -> gap.from() + " – " + gap.to(), gap -> {
                    double turn = 360 * Math.rint((gap.toLongitudeDeg() - gap.fromLongitudeDeg()) / 360);
                    return FACTORY.createLineString(new Coordinate[] {
                        new Coordinate(gap.fromLongitudeDeg(), gap.fromLatitudeDeg()),
                        new Coordinate(gap.toLongitudeDeg() - turn, gap.toLatitudeDeg())});
                });
    }

    /**
     * Writes {@code chains.csv}.
     *
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void writeCsv(Path file, List<Gap> gaps) {
        CsvTable.write(file, columns(), gaps);
    }

    /**
     * Writes {@code tradeoff.csv}.
     *
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void writeTradeoff(Path file, List<Tradeoff> tradeoff) {
        CsvTable.write(file, List.of(
                Column.integer("leg", Tradeoff::leg), Column.text("from", Tradeoff::from), Column.text("to", Tradeoff::to),
                Column.integer("modules", Tradeoff::modules),
                Column.real("mean_score", Decimals.SCORE, Tradeoff::meanScore),
                Column.real("total_score", Decimals.SCORE, Tradeoff::totalScore),
                Column.real("bound_mean_score", Decimals.SCORE, Tradeoff::boundScore),
                Column.bool("chosen", Tradeoff::chosen)), tradeoff);
    }

    private static List<Column<Gap>> columns() {
        return List.of(
                Column.integer("leg", Gap::leg), Column.text("from", Gap::from), Column.text("to", Gap::to),
                Column.real("gap_m", Decimals.METRES, Gap::distanceM),
                Column.real("bearing_deg", Decimals.METRES, Gap::bearingDeg),
                Column.real("drift_miss_m", Decimals.METRES, Gap::driftMissM),
                Column.real("parallel_drift_miss_m", Decimals.METRES, Gap::parallelMissM),
                Column.real("from_longitude_deg", Decimals.SITE_DEG, Gap::fromLongitudeDeg),
                Column.real("from_latitude_deg", Decimals.SITE_DEG, Gap::fromLatitudeDeg),
                Column.real("to_longitude_deg", Decimals.SITE_DEG, Gap::toLongitudeDeg),
                Column.real("to_latitude_deg", Decimals.SITE_DEG, Gap::toLatitudeDeg),
                Column.text("to_longitude_ddm", gap -> CoordinateText.formatLongitudeDdm(gap.toLongitudeDeg())),
                Column.text("to_latitude_ddm", gap -> CoordinateText.formatLatitudeDdm(gap.toLatitudeDeg())));
    }
}
