package org.seacairn.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.seacairn.criterion.Reasons;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.export.AreaTables.Candidate;
import org.seacairn.export.ChainTables;
import org.seacairn.export.Column;
import org.seacairn.export.FeatureTable;
import org.seacairn.export.ReviewTables;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.place.Site;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.review.SiteReview;
import org.seacairn.score.WorkingLayers;

/** The map of a run: what the plan names, and over it what came of it, from the very tables that the files are written from. */
public final class RunMap {
    /** As many keep-off layers as {@code features.sld} tells apart; then it begins again. */
    private static final int KEEP_OFF_LOOKS = 6;

    /** More marks would only cover each other, and the ground. */
    static final int MOST_ROWS = 1000;

    private final ReducedRasters rasters;
    private final StyleSet styles;
    private final List<MapLayer> layers = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    public RunMap(ReducedRasters rasters, StyleSet styles) {
        this.rasters = rasters;
        this.styles = styles;
    }

    /** Adds a table above what is there, drawn in the style of its name. */
    public <T> RunMap add(FeatureTable<T> table, String title) {
        return add(table, title, RunMap::id);
    }

    /** @param id of a row and its place among the rows: what joins it with the page, or empty text */
    public <T> RunMap add(FeatureTable<T> table, String title, BiFunction<T, Integer, String> id) {
        List<MapFeature> features = new ArrayList<>();
        if (table.rows().size() > MOST_ROWS) {
            notes.add("Of " + title.toLowerCase(Locale.ROOT) + " the first " + MOST_ROWS + " of " + table.rows().size() + " are drawn.");
        }
        for (int i = 0; i < Math.min(MOST_ROWS, table.rows().size()); i++) {
            T row = table.rows().get(i);
            Map<String, String> properties = new HashMap<>();
            for (Column<T> column : table.columns()) {
                properties.put(column.name(), column.text(row));
            }
            features.add(new MapFeature(id.apply(row, i), table.label().apply(row), table.geometry().apply(row), properties));
        }
        layers.add(new MapLayer(table.name(), title, table.name(), true, features));
        return this;
    }

    /** Adds proposed sites and what is too near them, the worst first where there are many. */
    public RunMap addReviews(List<SiteReview> reviews) {
        Map<SiteReview, String> ids = new IdentityHashMap<>();
        for (int i = 0; i < reviews.size(); i++) {
            ids.put(reviews.get(i), FeatureId.proposed(i));
        }
        List<SiteReview> drawn = reviews.stream().sorted(Comparator.comparing(SiteReview::verdict).reversed()).limit(MOST_ROWS).toList();
        if (drawn.size() < reviews.size()) {
            notes.add("The " + MOST_ROWS + " worst of " + reviews.size() + " proposed sites are drawn.");
        }
        Map<String, FeatureTable<?>> tables = ReviewTables.of(drawn).stream().collect(Collectors.toMap(FeatureTable::name, Function.identity()));
        return add(tables.get("proposed_polygons"), "Proposed polygons", (row, i) -> ids.get(row))
                .add(tables.get("approaches"), "To what is too near", (row, i) -> "")
                .add(tables.get("proposed_points"), "Proposed points", (row, i) -> ids.get(row));
    }

    private static String id(Object row, int index) {
        return row instanceof Site site ? FeatureId.of(site) : row instanceof Candidate area ? FeatureId.of(area)
                : row instanceof ChainTables.Gap ? FeatureId.gap(index) : "";
    }

    /** Adds the plan's own layers: permit areas, what is kept off, reefs. */
    public RunMap addPlan(SitingPlan plan, WorkingLayers working) {
        CoordinateTransform toWgs84 = rasters.grid().crs().geographic().to(Crs.WGS84);
        working.inside().ifPresent(inside -> add("inside", "Permit areas", inside, Optional.empty(), Map.of("role", "permit-area"), toWgs84));
        for (int i = 0; i < working.keepOff().size(); i++) {
            add("keep-off-" + i, plan.keepOff().get(i).source().label(), working.keepOff().get(i), plan.keepOff().get(i).nameAttribute(),
                    Map.of("role", "keep-off", "index", Integer.toString(i % KEEP_OFF_LOOKS)), toWgs84);
        }
        working.reefs().ifPresent(reefs -> add("reefs", "Existing reefs", reefs, plan.reefs().orElseThrow().nameAttribute(),
                Map.of("role", "reef"), toWgs84));
        return this;
    }

    private void add(String id, String title, WorkingLayer layer, Optional<String> nameAttribute, Map<String, String> properties,
            CoordinateTransform toWgs84) {
        layers.add(new MapLayer(id, title, "features", true, layer.pieces().stream().map(piece ->
                new MapFeature("", piece.feature().name(nameAttribute), toWgs84.apply(piece.lonLat()), properties)).toList()));
    }

    /** Draws it. */
    public MapSection section(SitingPlan plan, Display display) {
        PageMap map = new PageMap(rasters.grid(), Optional.of(rasters), layers, display, Reasons.of(plan).names());
        String note = rasters.cellsPerPixel() == 1 ? "Rasters are drawn cell for cell, " + Shown.metres(rasters.pixelM()) + " each."
                : "Rasters are drawn with pixels of " + Shown.metres(rasters.pixelM()) + ": the mean of " + rasters.cellsPerPixel() + " x "
                + rasters.cellsPerPixel() + " cells" + (rasters.reasons().isPresent() ? ", a reason where it stands on half of them or more. The files have every cell." : ".");
        notes.add(0, note);
        return new MapSection(MapSvg.of(map, styles::style), String.join(" ", notes));
    }
}
