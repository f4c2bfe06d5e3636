package org.seacairn.export;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The styles of the output layers (OGC SLD 1.0.0), as they are bundled with the program. */
public final class Styles {
    /** File names: one for each layer and raster of the output, and for each layer that only the map of a report has. */
    public static final List<String> NAMES = List.of("approaches.sld", "areas.sld", "capacity.sld", "chains.sld", "contours.sld", "depth.sld",
            "features.sld", "graticule.sld", "keep_off_buffers.sld", "landing_circles.sld", "picked_reason.sld", "proposed_points.sld",
            "proposed_polygons.sld", "reasons.sld", "release_points.sld", "review.sld", "rings.sld", "score.sld", "sites.sld");

    private Styles() {}

    /** Opens one of {@link #NAMES}. */
    public static InputStream open(String name) {
        InputStream style = Styles.class.getResourceAsStream("/styles/" + name);
        if (style == null) {
            throw new IllegalStateException("the program lacks its style " + name);
        }
        return style;
    }

    /**
     * Copies styles to {@code styles/} of an output folder.
     *
     * @param layers names of vector and raster layers
     * @throws org.seacairn.InputException if that cannot be written
     */
    public static void copyTo(Path outputFolder, List<String> layers) {
        Path folder = outputFolder.resolve("styles");
        try {
            Files.createDirectory(folder);
        } catch (IOException e) {
            throw OutputFile.cannotWrite(folder, e);
        }
        for (String name : layers.stream().map(layer -> layer + ".sld").toList()) {
            OutputFile.bytes(folder.resolve(name), out -> {
                try (InputStream style = open(name)) {
                    style.transferTo(out);
                }
            });
        }
    }
}
