package org.seacairn.score;

import java.io.Closeable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.geodesy.GroundScale;
import org.seacairn.grid.BlockCache;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Resampler;
import org.seacairn.grid.Window;
import org.seacairn.grid.WindowSource;
import org.seacairn.layer.Bathymetries;
import org.seacairn.layer.Bathymetry;
import org.seacairn.layer.WorkingCrs;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Values;

/**
 * Depths in metres, positive down, to the plan's vertical datum, on the working grid. Bathymetry that is already in the working CRS
 * at the working cell is used cell for cell; any other is resampled bilinearly onto a grid aligned to
 * whole multiples of the cell. Safe for several threads at once.
 */
public final class WorkingDepth implements Closeable {
    /** Blocks smaller than this are joined, so that a strip of one row is not a block of its own. */
    private static final int LEAST_BLOCK_CELLS = 1 << 16;
    private static final long MOST_CELLS = 20_000_000_000L;

    private final Bathymetry bathymetry;
    private final GridGeometry grid;
    private final PaddedSource source;
    private final VerticalUncertainty uncertainty;
    private final boolean resampled;
    private final double metresDown;
    private final double datumOffsetM;
    private final double largestScaleError;
    private final List<String> notes;

    private WorkingDepth(SitingPlan plan, Bathymetry bathymetry) {
        this.bathymetry = bathymetry;
        this.notes = new ArrayList<>();
        bathymetry.notes().forEach(note -> notes.add(plan.bathymetry().source().file().getFileName() + ": " + note));
        double sign = plan.bathymetry().values() == Values.ELEVATION ? -1 : 1;
        this.metresDown = sign * plan.bathymetry().metresPerUnit();
        this.datumOffsetM = plan.bathymetry().datumOffsetM();
        if (datumOffsetM != 0) {
            notes.add(datumNote(plan.bathymetry()));
        }
        Crs crs = WorkingCrs.of(plan, bathymetry.crs(), bathymetry.west() + bathymetry.cols() * bathymetry.cellWidth() / 2,
                bathymetry.north() - bathymetry.rows() * bathymetry.cellHeight() / 2);
        double cellM = plan.cellM().orElseGet(() -> ownCell(crs));
        this.resampled = !isOn(crs, cellM);
        this.grid = resampled ? alignedGrid(crs, cellM)
                : new GridGeometry(crs, bathymetry.west(), bathymetry.north(), cellM, bathymetry.cols(), bathymetry.rows());
        this.source = onGrid(bathymetry::read);
        this.uncertainty = VerticalUncertainty.of(plan.bathymetry(), bathymetry, this::onGrid);
        if (!uncertainty.note().isEmpty()) {
            notes.add(uncertainty.note());
        }
        this.largestScaleError = scaleError(grid);
    }

    /** @throws InputException if the bathymetry or the plan's CRS cannot serve as a working grid */
    public static WorkingDepth open(SitingPlan plan) {
        Bathymetry bathymetry = Bathymetries.open(plan);
        try {
            return new WorkingDepth(plan, bathymetry);
        } catch (RuntimeException e) {
            bathymetry.close();
            throw e;
        }
    }

    /** The side in working metres of a square with the area of the file's own cell at its centre. */
    private double ownCell(Crs crs) {
        double w = bathymetry.cellWidth();
        double h = bathymetry.cellHeight();
        if (bathymetry.crs().equals(crs) && Math.abs(w - h) <= 1e-9 * w) {
            return w;
        }
        double x = bathymetry.west() + bathymetry.cols() * w / 2;
        double y = bathymetry.north() - bathymetry.rows() * h / 2;
        CoordinateTransform toWorking = bathymetry.crs().to(crs);
        double across;
        double along;
        try {
            across = toWorking.apply(x - w / 2, y).distance(toWorking.apply(x + w / 2, y));
            along = toWorking.apply(x, y - h / 2).distance(toWorking.apply(x, y + h / 2));
        } catch (InputException e) {
            throw new InputException(bathymetry.file().getFileName() + ": " + e.getMessage(), e);
        }
        double side = new java.math.BigDecimal(Math.sqrt(across * along))
                .round(new java.math.MathContext(3)).doubleValue();
        notes.add("cell: the bathymetry's cell is " + shown(across) + " m x " + shown(along) + " m in " + crs.label()
                + "; the working cell is " + shown(side) + " m (state cell in the plan to choose another)");
        return side;
    }

    private boolean isOn(Crs crs, double cellM) {
        return bathymetry.crs().equals(crs)
                && Math.abs(bathymetry.cellWidth() - cellM) <= 1e-9 * cellM
                && Math.abs(bathymetry.cellHeight() - cellM) <= 1e-9 * cellM;
    }

    private GridGeometry alignedGrid(Crs crs, double cellM) {
        CoordinateTransform toWorking = bathymetry.crs().to(crs);
        double west = bathymetry.west();
        double north = bathymetry.north();
        double width = bathymetry.cols() * bathymetry.cellWidth();
        double height = bathymetry.rows() * bathymetry.cellHeight();
        Envelope box = new Envelope();
        int steps = 64;
        try {
            for (int i = 0; i <= steps; i++) {
                double fx = west + width * i / steps;
                double fy = north - height * i / steps;
                box.expandToInclude(toWorking.apply(fx, north));
                box.expandToInclude(toWorking.apply(fx, north - height));
                box.expandToInclude(toWorking.apply(west, fy));
                box.expandToInclude(toWorking.apply(west + width, fy));
            }
        } catch (InputException e) {
            throw new InputException(bathymetry.file().getFileName() + ": " + e.getMessage(), e);
        }
        double left = Math.floor(box.getMinX() / cellM + 1e-9);
        double right = Math.ceil(box.getMaxX() / cellM - 1e-9);
        double bottom = Math.floor(box.getMinY() / cellM + 1e-9);
        double top = Math.ceil(box.getMaxY() / cellM - 1e-9);
        double cols = Math.max(1, right - left);
        double rows = Math.max(1, top - bottom);
        if (cols * rows > MOST_CELLS || cols > Integer.MAX_VALUE / 2 || rows > Integer.MAX_VALUE / 2) {
            throw new InputException(bathymetry.file().getFileName() + ": a grid of " + shown(cellM) + " m cells over it has "
                    + String.format(Locale.ROOT, "%.0f x %.0f", cols, rows) + " cells, more than "
                    + MOST_CELLS + "; state a larger cell in the plan");
        }
        return new GridGeometry(crs, left * cellM, top * cellM, cellM, (int) cols, (int) rows);
    }

    /** Cells of the file's grid on the working grid. */
    private PaddedSource onGrid(WindowSource cells) {
        WindowSource cached = cached(cells);
        return new PaddedSource(resampled ? new Resampler(cached, bathymetry.cols(), bathymetry.rows(), bathymetry.west(),
                bathymetry.north(), bathymetry.cellWidth(), bathymetry.cellHeight(), grid,
                grid.crs().to(bathymetry.crs()), bathymetry.crs().isGeographic()) : cached, grid.cols(), grid.rows());
    }

    private WindowSource cached(WindowSource cells) {
        int blockCols = bathymetry.blockCols();
        int blockRows = bathymetry.blockRows();
        if (blockCols == 0) {
            return cells;
        }
        while ((long) blockCols * blockRows < LEAST_BLOCK_CELLS) {
            if (blockCols < bathymetry.cols() && blockCols <= blockRows) {
                blockCols *= 2;
            } else if (blockRows < bathymetry.rows()) {
                blockRows *= 2;
            } else {
                break;
            }
        }
        // Tiles are scored row by row: two rows of blocks and a little serve them all. More would only
        // fill the heap, and a full heap costs more in collections than a block read twice.
        long twoRows = 2L * blockRows * bathymetry.cols() + 4L * blockCols * blockRows;
        long quarterOfHeap = Runtime.getRuntime().maxMemory() / 4 / Float.BYTES;
        return new BlockCache(cells, bathymetry.cols(), bathymetry.rows(), blockCols, blockRows,
                Math.min(twoRows, quarterOfHeap));
    }

    private static double scaleError(GridGeometry grid) {
        GroundScale scale = new GroundScale(grid.crs());
        double most = 0;
        int steps = 8;
        for (int i = 0; i <= steps; i++) {
            for (int k = 0; k <= steps; k++) {
                most = Math.max(most, scale.scaleError(grid.west() + (grid.east() - grid.west()) * i / steps,
                        grid.south() + (grid.north() - grid.south()) * k / steps));
            }
        }
        return most;
    }

    /**
     * Fills a window, which may reach over the grid's edge, with depths.
     *
     * @param into receives metres, positive down; NaN for no-data and off the grid
     */
    public void read(Window window, float[] into) {
        source.read(window, into);
        if (metresDown != 1 || datumOffsetM != 0) {
            for (int i = 0; i < window.cells(); i++) {
                into[i] = (float) (into[i] * metresDown + datumOffsetM);
            }
        }
    }

    /** The one place where the offset is applied is {@link #read}: whoever asks for depths has them to the plan's datum. */
    private static String datumNote(SitingPlan.Bathymetry plan) {
        return Shown.metres(Math.abs(plan.datumOffsetM())) + (plan.datumOffsetM() < 0 ? " taken off" : " added to")
                + " every depth: the plan's datum-offset brings the file's depths to " + Shown.printable(plan.datum().orElse("its datum"));
    }

    /** Of the depths, on the same grid. */
    public VerticalUncertainty uncertainty() {
        return uncertainty;
    }

    public GridGeometry grid() {
        return grid;
    }

    /** The file behind the depths. */
    public Bathymetry bathymetry() {
        return bathymetry;
    }

    public boolean resampled() {
        return resampled;
    }

    /** The largest relative error over the grid of a length measured on the map. */
    public double largestScaleError() {
        return largestScaleError;
    }

    /** What the reader of the results should know, one line each. */
    public List<String> notes() {
        return List.copyOf(notes);
    }

    /** Geodesics on the working CRS's ellipsoid. */
    public Geodesic geodesic() {
        return grid.crs().geodesic();
    }

    private static String shown(double metres) {
        return String.format(Locale.ROOT, "%.6g", metres).replaceFirst("(\\.\\d*?)0+$", "$1").replaceFirst("\\.$", "");
    }

    @Override
    public void close() {
        bathymetry.close();
    }
}
