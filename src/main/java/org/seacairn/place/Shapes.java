package org.seacairn.place;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seacairn.InputException;
import org.seacairn.geodesy.GroundScale;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PatchFrames;
import org.seacairn.grid.Window;

/**
 * The rectangles to try about each cell: every size in every turn. All cells of a patch of the grid share
 * them (see {@link PatchFrames}): within one, a side's ground length is off by less than 1 in 40,000.
 * Their numbers order alike rectangles: by size, then by turn. Safe for several threads at once.
 */
final class Shapes {
    private static final int KEPT_PATCHES = 256;
    private static final int STEPS = 8;
    /** Beyond what the scale can change between the places where it is sampled. */
    private static final double SCALE_MARGIN = 1e-3;

    private final GridGeometry grid;
    private final AreaRequest request;
    private final PatchFrames frames;
    private final int halo;
    private final Map<Long, Patch> kept = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, Patch> eldest) {
            return size() > KEPT_PATCHES;
        }
    };

    /** The rectangles of one patch. */
    record Patch(GroundScale.Frame frame, List<Footprint> footprints) {}

    /** @throws InputException if a size fits nowhere on the grid, or has too many cells */
    Shapes(GridGeometry grid, AreaRequest request) {
        this.grid = grid;
        this.request = request;
        this.frames = new PatchFrames(grid);
        for (AreaSize size : request.sizes()) {
            requireFit(size);
        }
        double diagonalM = request.sizes().stream().mapToDouble(AreaSize::diagonalM).max().orElseThrow();
        this.halo = (int) Math.ceil(diagonalM / 2 * mostMapMetres() * (1 + SCALE_MARGIN) / grid.cellM());
    }

    private void requireFit(AreaSize size) {
        Patch middle = at(grid.cols() / 2, grid.rows() / 2);
        double cells = size.lengthM() * size.widthM() / Math.pow(middle.frame.mean() * grid.cellM(), 2);
        if (cells > CellSums.MOST_CELLS) {
            throw new InputException("an area of " + size.text() + " has more than " + CellSums.MOST_CELLS
                    + " cells; state a larger cell in the plan, or ask for a smaller area");
        }
        int number = request.sizes().indexOf(size);
        if (middle.footprints.stream().noneMatch(f -> f.size() == number && fits(f))) {
            throw new InputException("an area of " + size.text() + ", turned as asked, does not fit on the grid, which is "
                    + new AreaSize(grid.cols() * grid.cellM() * middle.frame.mean(),
                            grid.rows() * grid.cellM() * middle.frame.mean()).text() + "; ask for a smaller area");
        }
    }

    private boolean fits(Footprint f) {
        return firstCol(f) <= grid.cols() - 1 - firstCol(f) && firstRow(f) <= grid.rows() - 1 - firstRow(f);
    }

    /** Map metres for a ground metre at most, anywhere on the grid and in any direction. */
    private double mostMapMetres() {
        GroundScale scale = new GroundScale(grid.crs());
        double most = 0;
        for (int i = 0; i <= STEPS; i++) {
            for (int k = 0; k <= STEPS; k++) {
                most = Math.max(most, scale.scaleError(grid.west() + (grid.east() - grid.west()) * i / STEPS,
                        grid.south() + (grid.north() - grid.south()) * k / STEPS));
            }
        }
        return 1 + most;
    }

    /** How many cells beyond its centre any rectangle reaches. */
    int halo() {
        return halo;
    }

    /** Cells along the side of a patch, a power of two of at most 64. */
    int patchSide() {
        return frames.side();
    }

    /** The rectangles about a cell. */
    Patch at(int col, int row) {
        long key = (long) (row / frames.side()) << 32 | col / frames.side();
        synchronized (kept) {
            Patch known = kept.get(key);
            if (known != null) {
                return known;
            }
        }
        Patch made = make(frames.over(new Window(col, row, 1, 1)).frames()[0]);
        synchronized (kept) {
            kept.put(key, made);
        }
        return made;
    }

    private Patch make(GroundScale.Frame frame) {
        List<Footprint> footprints = new ArrayList<>();
        for (int size = 0; size < request.sizes().size(); size++) {
            for (double turnDeg : request.turns().of(request.sizes().get(size))) {
                footprints.add(Footprint.of(size, request.sizes().get(size), turnDeg, frame, grid.cellM()));
            }
        }
        return new Patch(frame, List.copyOf(footprints));
    }

    /** The first column about which a rectangle lies wholly on the grid; the last is as far from the other side. */
    int firstCol(Footprint f) {
        return Math.max(0, (int) Math.ceil(f.halfAcrossM() / grid.cellM() - 0.5 - Spans.ON_EDGE));
    }

    /** The first row about which a rectangle lies wholly on the grid; the last is as far from the other side. */
    int firstRow(Footprint f) {
        return Math.max(0, (int) Math.ceil(f.halfDownM() / grid.cellM() - 0.5 - Spans.ON_EDGE));
    }
}
