package org.seacairn.export;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.drop.PlannedDrop;
import org.seacairn.place.Site;

/** Where modules must leave the deck: one point for each site and profile of the current. */
public final class ReleaseTable {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** A release point, and the target it is for. */
    public record Release(String site, double targetLongitudeDeg, double targetLatitudeDeg, double depthM, PlannedDrop drop) {
        /** The site's name, and the profile where there are several. */
        String label() {
            return "release " + site + (drop.profile().isEmpty() ? "" : " " + drop.profile());
        }
    }

    private ReleaseTable() {}

    /** The sites' release points, in the order of sites, then of profiles. */
    public static List<Release> releases(List<Site> sites) {
        return sites.stream().flatMap(site -> site.drops().stream().map(drop ->
                new Release(site.name(), site.longitudeDeg(), site.latitudeDeg(), site.depthM(), drop))).toList();
    }

    public static FeatureTable<Release> of(List<Release> releases) {
        return new FeatureTable<>("release_points", "Where modules leave the deck, by site and profile of the current",
                FeatureTable.Shape.POINT, Decimals.RELEASE_DEG, List.of(
                        Column.text("site", Release::site),
                        Column.text("profile", r -> r.drop().profile()),
                        figure("release_bearing_deg", 0, r -> r.drop().bearingDeg()),
                        figure("release_distance_m", 0, r -> r.drop().touchdown().driftM()),
                        figure("sink_time_s", 0, r -> r.drop().touchdown().timeS()),
                        figure("impact_speed_m_s", 1, r -> r.drop().touchdown().sinkSpeedMPerS()),
                        figure("landing_radius_computed_m", 0, r -> r.drop().landing().radiusM()),
                        figure("landing_scatter_m", 0, r -> r.drop().landing().scatterM()),
                        figure("landing_drift_m", 0, r -> r.drop().landing().driftM()),
                        figure("landing_drag_m", 0, r -> r.drop().landing().dragM()),
                        figure("landing_barge_m", 0, r -> r.drop().landing().bargeM()),
                        Column.real("target_longitude_deg", Decimals.SITE_DEG, Release::targetLongitudeDeg),
                        Column.real("target_latitude_deg", Decimals.SITE_DEG, Release::targetLatitudeDeg),
                        Column.real("depth_m", 1, Release::depthM),
                        Column.text("caution", r -> Cautions.DROP_SHORT)),
                releases, Release::label, r -> FACTORY.createPoint(new Coordinate(
                        Decimals.rounded(r.drop().releaseLongitudeDeg(), Decimals.RELEASE_DEG),
                        Decimals.rounded(r.drop().releaseLatitudeDeg(), Decimals.RELEASE_DEG))));
    }

    private static Column<Release> figure(String name, int decimals, ToDoubleFunction<Release> figure) {
        return Column.real(name, decimals, r -> Decimals.rounded(figure.applyAsDouble(r), decimals));
    }
}
