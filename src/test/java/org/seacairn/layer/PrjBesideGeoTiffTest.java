package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

class PrjBesideGeoTiffTest {
    @TempDir
    private Path folder;

    /** The image library's reader would let the .prj win, without a word. */
    @Test
    void crsInsideTheFileWinsOverAContradictingPrj() throws Exception {
        Path tif = Files.copy(Path.of("sample-layers", "bathymetry.tif"), folder.resolve("bathymetry.tif"));
        Files.writeString(folder.resolve("bathymetry.prj"), Crs.ofEpsg(32611).wkt());
        LayerFile source = new LayerFile("bathymetry", tif, Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), 1, Edges.GEODESIC);
        try (Bathymetry opened = Bathymetries.open(source)) {
            assertEquals(OptionalInt.of(32617), opened.crs().epsg());
        }
    }
}
