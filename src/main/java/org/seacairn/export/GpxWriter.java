package org.seacairn.export;

import io.jenetics.jpx.GPX;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.seacairn.place.Site;

/**
 * GPX 1.1 for chart plotters: one waypoint a site, best first. It holds no time, so that the same
 * sites give the same bytes, and no elevation: a plotter would take a depth there for a height.
 */
public final class GpxWriter {
    private static final GPX.Writer WRITER = GPX.Writer.of(new GPX.Writer.Indent("  "), Decimals.SITE_DEG);

    private GpxWriter() {}

    /**
     * @param title the plan's title
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void write(Path file, String title, List<Site> sites) {
        GPX.Builder gpx = GPX.builder(GPX.Version.V11, RunJson.PROGRAM)
                .metadata(metadata -> metadata.name(XmlText.clean(title)).desc("Screening aid, not for navigation"));
        for (Site site : sites) {
            gpx.addWayPoint(waypoint -> waypoint
                    .lon(site.longitudeDeg())
                    .lat(site.latitudeDeg())
                    .name(XmlText.clean(site.name()))
                    .desc("Depth " + Decimals.text(site.depthM(), 1) + " m, score " + Decimals.text(site.score(), 3)));
        }
        OutputFile.text(file, out -> {
            ByteArrayOutputStream xml = new ByteArrayOutputStream();
            WRITER.write(gpx.build(), xml);
            // The library ends lines as the machine does.
            out.write(xml.toString(StandardCharsets.UTF_8).replace(System.lineSeparator(), "\n"));
            out.write('\n');
        });
    }
}
