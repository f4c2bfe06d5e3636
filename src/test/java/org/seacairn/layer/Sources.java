package org.seacairn.layer;

import java.nio.file.Path;
import java.util.Optional;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

/** Layer files as a plan would name them. */
final class Sources {
    private Sources() {}

    static LayerFile plain(Path file) {
        return new LayerFile("trial", file, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), 12, Edges.GEODESIC);
    }

    static LayerFile repaired(Path file) {
        return new LayerFile("trial", file, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), 12, Edges.GEODESIC, true);
    }

    static LayerFile withCrs(Path file, String crs) {
        return new LayerFile("trial", file, Optional.empty(), Optional.of(crs), Optional.empty(), Optional.empty(), 12, Edges.GEODESIC);
    }

    static LayerFile withTable(Path file, String table) {
        return new LayerFile("trial", file, Optional.of(table), Optional.empty(), Optional.empty(), Optional.empty(), 12, Edges.GEODESIC);
    }

    static LayerFile withColumns(Path file, String crs, String x, String y) {
        return new LayerFile("trial", file, Optional.empty(), Optional.ofNullable(crs), Optional.ofNullable(x), Optional.ofNullable(y), 12, Edges.GEODESIC);
    }
}
