package org.seacairn.export;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.place.Clearance;
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
        // Empty until the drop is computed.
        columns.add(Column.real("release_longitude_deg", Decimals.SITE_DEG, site -> Double.NaN));
        columns.add(Column.real("release_latitude_deg", Decimals.SITE_DEG, site -> Double.NaN));
        for (int i = 0; i < layers.size(); i++) {
            String layer = layers.get(i);
            columns.add(Column.real("required_" + names.get(i) + "_m", Decimals.METRES,
                    site -> clearance(site, layer).map(Clearance::requiredM).orElse(Double.NaN)));
        }
        columns.add(Column.real("stone_required_m", Decimals.METRES,
                site -> site.stone().map(Clearance::requiredM).orElse(Double.NaN)));
        return List.copyOf(columns);
    }

    private static Optional<Clearance> clearance(Site site, String layer) {
        return site.clearances().stream().filter(clearance -> clearance.layer().equals(layer)).findFirst();
    }
}
