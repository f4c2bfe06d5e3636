package org.seacairn.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.seacairn.drop.LandingRadius;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.GeographicExtent;
import org.seacairn.grid.Disc;
import org.seacairn.grid.GridGeometry;
import org.seacairn.layer.Bathymetry;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;

/**
 * What the working grid of a plan will be.
 *
 * @param lonLat its box in degrees on WGS 84, or empty where that cannot be told
 * @param resampled whether its depths are drawn from cells of another grid
 * @param largestScaleError the largest relative error of a length measured on the map
 * @param notes how the grid was laid out, one line each
 * @param warnings one line each
 */
public record GridFacts(
        GridGeometry grid, Optional<Envelope> lonLat, boolean resampled, double largestScaleError,
        List<String> notes, List<String> warnings) {
    /** A metre in a kilometre: the distances of rules are stated no finer. */
    private static final double LARGE_SCALE_ERROR = 1e-3;
    private static final long MANY_CELLS = 1_000_000_000L;
    /** How many times coarser or finer than the file a working cell may be. */
    private static final double UNLIKE_CELLS = 2;

    static GridFacts of(SitingPlan plan, WorkingDepth depth) {
        GridGeometry grid = depth.grid();
        Envelope box = new Envelope(grid.west(), grid.east(), grid.south(), grid.north());
        return new GridFacts(grid, GeographicExtent.ofRectangle(box, grid.crs()), depth.resampled(),
                depth.largestScaleError(), depth.notes(), warnings(plan, depth));
    }

    private static List<String> warnings(SitingPlan plan, WorkingDepth depth) {
        List<String> warnings = new ArrayList<>();
        double cellM = depth.grid().cellM();
        double landingM = LandingRadius.of(plan).largestM();
        if (depth.grid().cells() > MANY_CELLS) {
            warnings.add(String.format(Locale.ROOT, "it has %,d cells, more than %,d; a larger cell takes less time",
                    depth.grid().cells(), MANY_CELLS));
        }
        if (depth.largestScaleError() > LARGE_SCALE_ERROR) {
            warnings.add(String.format(Locale.ROOT, "lengths on it are off by up to %.2f %%, for which distances are corrected"
                    + " but slopes, landing room and areas are not; name a crs made for the area, or plan a smaller area",
                    100 * depth.largestScaleError()));
        }
        if (new Disc(landingM, cellM).reach() == 0) {
            warnings.add("its cell of " + Shown.metres(cellM) + " is larger than the landing radius of " + Shown.metres(landingM)
                    + ", so landing room looks at one cell alone; choose a smaller cell");
        }
        if (plan.sites().apartM() < cellM) {
            warnings.add("its cell of " + Shown.metres(cellM) + " is larger than apart, " + Shown.metres(plan.sites().apartM())
                    + ", so sites can stand no nearer than a cell; choose a smaller cell or a larger apart");
        }
        if (depth.resampled()) {
            cells(depth, warnings);
        }
        return List.copyOf(warnings);
    }

    /** What is lost or only seems to be gained where working cells and file cells differ much. */
    private static void cells(WorkingDepth depth, List<String> warnings) {
        double cellM = depth.grid().cellM();
        double fileCellM = fileCellM(depth);
        String cells = "its cell of " + Shown.metres(cellM);
        String ofFile = "the file's of about " + Shown.metres(Math.round(fileCellM * 100) / 100.0);
        if (cellM > UNLIKE_CELLS * fileCellM) {
            warnings.add(cells + " is much larger than " + ofFile + "; each depth is drawn from the four file cells"
                    + " nearest to its centre, and ledges between go unseen; choose a smaller cell");
        } else if (cellM < fileCellM / UNLIKE_CELLS) {
            warnings.add(cells + " is much smaller than " + ofFile
                    + "; depths and slopes between are interpolated, not surveyed");
        }
    }

    /** The side in working metres of a square with the area of a file cell at the grid's middle. */
    private static double fileCellM(WorkingDepth depth) {
        GridGeometry grid = depth.grid();
        Bathymetry file = depth.bathymetry();
        double x = file.west() + file.cols() * file.cellWidth() / 2;
        double y = file.north() - file.rows() * file.cellHeight() / 2;
        CoordinateTransform toWorking = file.crs().to(grid.crs());
        double across = toWorking.apply(x, y).distance(toWorking.apply(x + file.cellWidth(), y));
        double along = toWorking.apply(x, y).distance(toWorking.apply(x, y + file.cellHeight()));
        return Math.sqrt(across * along);
    }
}
