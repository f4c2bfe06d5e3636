package org.seacairn.export;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.seacairn.drop.PlannedDrop;
import org.seacairn.drop.Standing;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.place.Clearance;
import org.seacairn.place.LeastWater;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Criterion;

/** What is said of a site, in every format: the columns of {@code sites.csv}. */
final class SiteColumns {
    private SiteColumns() {}

    /** The columns of a plan's sites, in order; new ones are added at the end. */
    static List<Column<Site>> of(SitingPlan plan) {
        List<Column<Site>> columns = new ArrayList<>(List.of(
                Column.integer("rank", Site::rank),
                Column.text("site", Site::name),
                Column.real("longitude_deg", Decimals.SITE_DEG, Site::longitudeDeg),
                Column.real("latitude_deg", Decimals.SITE_DEG, Site::latitudeDeg),
                Column.text("longitude_ddm", site -> CoordinateText.formatLongitudeDdm(site.longitudeDeg())),
                Column.text("latitude_ddm", site -> CoordinateText.formatLatitudeDdm(site.latitudeDeg())),
                Column.real("easting_m", Decimals.METRES, Site::eastingM),
                Column.real("northing_m", Decimals.METRES, Site::northingM),
                Column.real("depth_m", Decimals.METRES, Site::depthM),
                Column.real("slope_deg", Decimals.METRES, Site::slopeDeg),
                Column.text("bottom", Site::bottom),
                Column.real("score", Decimals.SCORE, Site::score)));
        for (Criterion criterion : plan.criteria()) {
            columns.add(Column.real(
                    "suitability_" + criterion.measure().name().toLowerCase(Locale.ROOT), Decimals.SCORE,
                    site -> site.suitability().getOrDefault(criterion.measure(), Double.NaN)));
        }
        List<String> layers = plan.keepOff().stream().map(layer -> layer.source().label()).toList();
        // nearest_stone is the column of the existing reefs.
        List<String> names = ColumnName.distinct(layers, Set.of("stone"));
        for (int i = 0; i < layers.size(); i++) {
            String layer = layers.get(i);
            columns.add(Column.real("distance_" + names.get(i) + "_m", Decimals.METRES,
                    site -> clearance(site, layer).map(Clearance::distanceM).orElse(Double.NaN)));
            columns.add(Column.text("nearest_" + names.get(i),
                    site -> clearance(site, layer).map(Clearance::nearest).orElse("")));
        }
        columns.add(Column.text("nearest_stone", site -> site.stone().map(Clearance::nearest).orElse("")));
        columns.add(Column.real("stone_distance_m", Decimals.METRES,
                site -> site.stone().map(Clearance::distanceM).orElse(Double.NaN)));
        columns.add(Column.real("landing_radius_m", Decimals.METRES, Site::landingRadiusM));
        columns.add(drop("release_longitude_deg", Decimals.RELEASE_DEG, PlannedDrop::releaseLongitudeDeg));
        columns.add(drop("release_latitude_deg", Decimals.RELEASE_DEG, PlannedDrop::releaseLatitudeDeg));
        for (int i = 0; i < layers.size(); i++) {
            String layer = layers.get(i);
            columns.add(Column.real("required_" + names.get(i) + "_m", Decimals.METRES,
                    site -> clearance(site, layer).map(Clearance::requiredM).orElse(Double.NaN)));
        }
        columns.add(Column.real("stone_required_m", Decimals.METRES,
                site -> site.stone().map(Clearance::requiredM).orElse(Double.NaN)));
        for (int i = 0; i < layers.size(); i++) {
            if (plan.keepOff().get(i).surface()) {
                release(columns, names.get(i), layers.get(i));
            }
        }
        columns.add(drop("release_bearing_deg", 0, PlannedDrop::bearingDeg));
        columns.add(drop("release_distance_m", 0, d -> d.touchdown().driftM()));
        columns.add(drop("sink_time_s", 0, d -> d.touchdown().timeS()));
        columns.add(standing("impact_speed_m_s", 1, Standing::impactSpeedMPerS));
        columns.add(standing("impact_energy_kj", 0, s -> s.impactEnergyJ() / 1000));
        columns.add(standing("tilt_deg", 0, Standing::tiltDeg));
        columns.add(standing("embedment_m", 1, s -> s.embedment().depthM()));
        columns.add(standing("relief_m", 1, Standing::reliefM));
        columns.add(standing("stability", 1, Standing::stability));
        columns.add(Column.text("standing_note", site -> site.standing().map(s -> StandingNote.of(s.embedment())).orElse("")));
        columns.add(Column.real("depth_uncertainty_m", Decimals.METRES, Site::depthUncertaintyM));
        columns.add(Column.real("least_water_m", Decimals.METRES, site -> LeastWater.overM(plan, site)));
        return List.copyOf(columns);
    }

    private static void release(List<Column<Site>> columns, String name, String layer) {
        columns.add(release("release_distance_" + name + "_m", layer, Clearance::distanceM));
        columns.add(release("release_required_" + name + "_m", layer, Clearance::requiredM));
    }

    private static Column<Site> release(String name, String layer, ToDoubleFunction<Clearance> figure) {
        return Column.real(name, 1, site -> site.releaseClearances().stream().filter(c -> c.layer().equals(layer)).findFirst()
                .map(c -> Decimals.rounded(figure.applyAsDouble(c), 1)).orElse(Double.NaN));
    }

    /** A figure of the planned drop. */
    private static Column<Site> drop(String name, int decimals, ToDoubleFunction<PlannedDrop> figure) {
        return Column.real(name, decimals, site -> site.drops().isEmpty() ? Double.NaN
                : Decimals.rounded(figure.applyAsDouble(site.drops().get(0)), decimals));
    }

    private static Column<Site> standing(String name, int decimals, ToDoubleFunction<Standing> figure) {
        return Column.real(name, decimals, site -> site.standing()
                .map(s -> Decimals.rounded(figure.applyAsDouble(s), decimals)).orElse(Double.NaN));
    }

    private static Optional<Clearance> clearance(Site site, String layer) {
        return site.clearances().stream().filter(clearance -> clearance.layer().equals(layer)).findFirst();
    }
}
