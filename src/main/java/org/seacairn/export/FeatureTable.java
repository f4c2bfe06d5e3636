package org.seacairn.export;

import java.util.List;
import java.util.function.Function;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.PrecisionModel;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;

/**
 * One layer of the vector output, for every format alike.
 *
 * @param name of the layer: lower case, digits and {@code _}
 * @param description one line for people
 * @param decimals of a degree where coordinates are written as text
 * @param rows in the order they are written
 * @param label a row's name on a map
 * @param geometry a row's geometry of this {@code shape}: longitude and latitude in degrees on WGS 84,
 *     shells counterclockwise, holes clockwise; never empty
 */
public record FeatureTable<T>(
        String name, String description, Shape shape, int decimals, List<Column<T>> columns, List<T> rows,
        Function<T, String> label, Function<T, Geometry> geometry) {

    /** Geometry types, named as in GeoPackage. */
    public enum Shape { POINT, LINESTRING, POLYGON, MULTIPOLYGON }

    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** The chosen sites. */
    public static FeatureTable<Site> sites(SitingPlan plan, List<Site> sites) {
        return new FeatureTable<>("sites", "Ranked sites", Shape.POINT, Decimals.SITE_DEG, SiteColumns.of(plan), sites,
                Site::name, site -> FACTORY.createPoint(new Coordinate(site.longitudeDeg(), site.latitudeDeg())));
    }

    /** The circle about each site that holds 95 % of landings; none where the radius is zero or unknown. */
    public static FeatureTable<Site> landingCircles(List<Site> sites) {
        return new FeatureTable<>("landing_circles", "Circles that hold 95 % of landings", Shape.POLYGON,
                Decimals.OUTLINE_DEG,
                List.of(Column.integer("rank", Site::rank), Column.text("site", Site::name),
                        Column.real("landing_radius_m", Decimals.METRES, Site::landingRadiusM)),
                sites.stream().filter(site -> site.landingRadiusM() > 0).toList(), Site::name,
                site -> LandingCircle.around(site.longitudeDeg(), site.latitudeDeg(), site.landingRadiusM(), FACTORY));
    }

    /**
     * The ground inside each keep-off distance, vertices rounded to {@link Decimals#OUTLINE_DEG} so
     * that every format has the same, valid outline. A layer with no such ground has no row.
     */
    public static FeatureTable<KeepOffBuffer> keepOffBuffers(List<KeepOffBuffer> buffers) {
        PrecisionModel grid = new PrecisionModel(Math.pow(10, Decimals.OUTLINE_DEG));
        return new FeatureTable<>("keep_off_buffers", "Ground inside a keep-off distance", Shape.MULTIPOLYGON,
                Decimals.OUTLINE_DEG,
                List.of(Column.text("layer", KeepOffBuffer::layer),
                        Column.real("distance_m", Decimals.METRES, KeepOffBuffer::distanceM),
                        Column.text("source", buffer -> buffer.source().orElse("")),
                        Column.bool("confirmed", KeepOffBuffer::confirmed)),
                buffers.stream()
                        .map(buffer -> new KeepOffBuffer(buffer.layer(), buffer.distanceM(), buffer.source(),
                                buffer.confirmed(), Outline.of(buffer.polygon(), grid)))
                        .filter(buffer -> !buffer.polygon().isEmpty())
                        .toList(),
                KeepOffBuffer::layer, KeepOffBuffer::polygon);
    }
}
