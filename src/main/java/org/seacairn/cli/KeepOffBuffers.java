package org.seacairn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.export.KeepOffBuffer;
import org.seacairn.geodesy.Crs;
import org.seacairn.geodesy.GeodesicBuffer;
import org.seacairn.grid.GridGeometry;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.KeepOff;
import org.seacairn.plan.SitingPlan.Reefs;
import org.seacairn.score.WorkingLayers;

/** The ground inside each keep-off distance of a plan, the reefs' first. */
final class KeepOffBuffers {
    private KeepOffBuffers() {}

    static List<KeepOffBuffer> of(SitingPlan plan, WorkingLayers layers, GridGeometry grid) {
        List<KeepOffBuffer> buffers = new ArrayList<>();
        if (plan.reefs().isPresent()) {
            Reefs rule = plan.reefs().get();
            buffer("reefs", layers.reefs().orElseThrow(), rule.keepOffM(), rule.ruleSource(), rule.confirmed(), grid)
                    .ifPresent(buffers::add);
        }
        for (int i = 0; i < plan.keepOff().size(); i++) {
            KeepOff rule = plan.keepOff().get(i);
            buffer(rule.source().label(), layers.keepOff().get(i), rule.distanceM(), rule.ruleSource(),
                    rule.confirmed(), grid).ifPresent(buffers::add);
        }
        return buffers;
    }

    /** The buffer of what of a layer comes near the grid, or empty where nothing does. */
    private static Optional<KeepOffBuffer> buffer(String label, WorkingLayer layer, double distanceM,
            Optional<String> source, boolean confirmed, GridGeometry grid) {
        List<Geometry> near = layer.nearLonLat();
        if (near.isEmpty() || distanceM == 0) {
            return Optional.empty();
        }
        Geometry polygon = GeodesicBuffer.of(near, grid.crs().geodesic(), distanceM);
        return Optional.of(new KeepOffBuffer(label, distanceM, source, confirmed,
                grid.crs().geographic().to(Crs.WGS84).apply(polygon)));
    }
}
