package org.seacairn.export;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.plan.SitingPlan;

/**
 * What there is to say of one run; {@link RunJson} writes it, component by component.
 *
 * @param version of Seacairn
 * @param command the arguments it was called with
 * @param counts what came of it, one of the records below
 * @param crs null where no grid was opened, as {@code grid}
 * @param largestScaleError over the working grid, as a share of a distance
 * @param warnings one line each
 * @param timingsS seconds by stage, in the order of the map; the only part that may differ between
 *     two runs on the same inputs
 */
public record Run(
        String version, String command, SitingPlan plan, List<InputFile> inputs, WorkingCrs crs, WorkingGrid grid,
        double largestScaleError, Record counts, List<String> warnings, Map<String, Double> timingsS) {

    /** @param file relative to the plan's folder where it lies below it */
    public record InputFile(String file, String sha256, long bytes) {
        /**
         * @param plan the plan file
         * @throws InputException if the file cannot be read
         */
        public static InputFile of(Path plan, Path file) {
            try {
                return new InputFile(RecordJson.relative(plan, file), Sha256.of(file), Files.size(file));
            } catch (IOException e) {
                throw new InputException(file.getFileName() + ": cannot be read (" + OutputFile.reason(e)
                        + "); check that the file is there and may be read", e);
            }
        }
    }

    /** @param wkt well-known text, version 1 */
    public record WorkingCrs(String label, String wkt) {
        public static WorkingCrs of(Crs crs) {
            return new WorkingCrs(crs.label(), crs.wkt());
        }
    }

    /**
     * @param westM western edge in the working CRS
     * @param northM northern edge in the working CRS
     */
    public record WorkingGrid(int cols, int rows, double cellM, double westM, double northM) {
        public static WorkingGrid of(GridGeometry grid) {
            return new WorkingGrid(grid.cols(), grid.rows(), grid.cellM(), grid.west(), grid.north());
        }
    }

    /**
     * @param cells of the working grid
     * @param withDepth cells that have a depth
     * @param scored cells with no reason against them
     */
    public record Counts(long cells, long withDepth, long scored, int sites, List<ReasonCount> reasons) {}

    /** @param unbridgedM length of the stretch that no chain crosses, 0 for none */
    public record ChainCounts(int sites, int legs, double meanScore, double unbridgedM) {}

    /**
     * @param cells between the two distances
     * @param scored of them with no reason against them
     * @param atMost no ring has more modules
     */
    public record RingCounts(int sites, long cells, long scored, int atMost, Map<String, Long> reasons) {}

    /**
     * @param refused candidates that a review would not pass
     * @param capacity modules in all areas
     */
    public record AreaCounts(long cells, long withDepth, long scored, int areas, long refused, long capacity) {}

    /** Findings by verdict. */
    public record ReviewCounts(long sites, long findings, long pass, long marginal, long noData, long fail) {}

    /**
     * @param profiles of the current
     * @param draws of landings at random, 0 for none
     */
    public record DropCounts(int profiles, int draws, long seed) {}
}
