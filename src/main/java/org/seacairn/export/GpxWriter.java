package org.seacairn.export;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.WayPoint;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.seacairn.place.Site;

/**
 * GPX 1.1 for chart plotters: one waypoint a site, best first, and routes. It holds no time, so that the same
 * sites give the same bytes, and no elevation: a plotter would take a depth there for a height.
 */
public final class GpxWriter {
    private static final GPX.Writer WRITER = GPX.Writer.of(new GPX.Writer.Indent("  "), Decimals.SITE_DEG);

    private GpxWriter() {}

    /** A line to follow. */
    public record Route(String name, List<RoutePoint> points) {}

    /** A place on a route, in degrees on WGS 84. */
    public record RoutePoint(String name, double longitudeDeg, double latitudeDeg) {}

    /**
     * @param title the plan's title
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void write(Path file, String title, List<Site> sites, List<Route> routes) {
        GPX.Builder gpx = GPX.builder(GPX.Version.V11, RunJson.PROGRAM)
                .metadata(metadata -> metadata.name(XmlText.clean(title)).desc("Screening aid, not for navigation"));
        for (Site site : sites) {
            gpx.addWayPoint(waypoint -> waypoint
                    .lon(site.longitudeDeg())
                    .lat(site.latitudeDeg())
                    .name(XmlText.clean(site.name()))
                    .desc("Depth " + Decimals.text(site.depthM(), 1) + " m, score " + Decimals.text(site.score(), 3)));
        }
        for (Route route : routes) {
            gpx.addRoute(line -> {
                line.name(XmlText.clean(route.name()));
                route.points().forEach(p -> line.addPoint(WayPoint.builder().lon(p.longitudeDeg()).lat(p.latitudeDeg())
                        .name(XmlText.clean(p.name())).build()));
            });
        }
        write(file, gpx.build());
    }

    /**
     * Release points, in a file of their own: one who reads sites must not take them for targets.
     *
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void writeReleases(Path file, String title, List<ReleaseTable.Release> releases) {
        GPX.Builder gpx = GPX.builder(GPX.Version.V11, RunJson.PROGRAM)
                .metadata(metadata -> metadata.name(XmlText.clean(title)).desc(XmlText.clean(Cautions.DROP_SHORT)));
        for (ReleaseTable.Release release : releases) {
            gpx.addWayPoint(waypoint -> waypoint
                    .lon(Decimals.rounded(release.drop().releaseLongitudeDeg(), Decimals.RELEASE_DEG))
                    .lat(Decimals.rounded(release.drop().releaseLatitudeDeg(), Decimals.RELEASE_DEG))
                    .name(XmlText.clean(release.label()))
                    .desc("Target " + Decimals.text(release.drop().touchdown().driftM(), 0) + " m down-current, depth "
                            + Decimals.text(release.depthM(), 0) + " m; " + Cautions.DROP_SHORT));
        }
        write(file, gpx.build());
    }

    private static void write(Path file, GPX gpx) {
        OutputFile.text(file, out -> {
            ByteArrayOutputStream xml = new ByteArrayOutputStream();
            WRITER.write(gpx, xml);
            // The library ends lines as the machine does.
            out.write(xml.toString(StandardCharsets.UTF_8).replace(System.lineSeparator(), "\n"));
            out.write('\n');
        });
    }
}
