package org.seacairn.layer;

import io.jhdf.api.Dataset;
import java.io.IOException;
import java.nio.file.Path;
import org.seacairn.InputException;

/**
 * The finer grids within the cells of a BAG of variable resolution (BAG Format Specification Document 1.6,
 * "Variable Resolution"), brought back to the coarse grid or, by {@link BagFinerGrid}, to a finer one. A coarse cell takes the
 * shallowest of its finer cells: a mean would put water over a rock that is in the data, and what a module needs is least water.
 */
final class BagRefinements {
    /** What a finer cell without a value has. */
    private static final double NO_DATA = BagReader.NO_DATA;

    private final Path file;
    private final StoredArray first;
    private final StoredArray countX;
    private final StoredArray countY;
    private final StoredArray spacingX;
    private final StoredArray spacingY;
    private final StoredArray offsetX;
    private final StoredArray offsetY;
    private final StoredArray elevations;
    private final StoredArray uncertainties;

    BagRefinements(Path file, HdfStore store, Dataset metadata, Dataset refinements) {
        this.file = file;
        this.first = member(file, store, metadata, "index");
        this.countX = member(file, store, metadata, "dimensions_x");
        this.countY = member(file, store, metadata, "dimensions_y");
        this.spacingX = member(file, store, metadata, "resolution_x");
        this.spacingY = member(file, store, metadata, "resolution_y");
        this.offsetX = member(file, store, metadata, "sw_corner_x");
        this.offsetY = member(file, store, metadata, "sw_corner_y");
        // Called a depth in the format, and positive up as everything in it.
        this.elevations = member(file, store, refinements, "depth");
        this.uncertainties = member(file, store, refinements, "depth_uncrt");
    }

    private static StoredArray member(Path file, HdfStore store, Dataset dataset, String name) {
        StoredNumber number = store.member(dataset, name).orElseThrow(() -> VectorReader.problem(file, dataset.getName(),
                "has no member " + name + ", so this is no whole BAG; get the file again"));
        return store.array(dataset, number);
    }

    /** The highest elevation in each coarse cell; where it has no finer cells, that of the coarse grid. */
    StoredArray shallowest(StoredArray coarse) {
        return new Folded(coarse, elevations);
    }

    /** The largest uncertainty in each coarse cell. */
    StoredArray mostUncertain(StoredArray coarse) {
        return new Folded(coarse, uncertainties);
    }

    /** The elevations on a grid that parts each coarse cell. */
    BagFinerGrid finer(double cellWidth, double cellHeight, int acrossParts, int alongParts) {
        return new BagFinerGrid(this, elevations, cellWidth, cellHeight, acrossParts, alongParts);
    }

    /** The uncertainties on such a grid. */
    BagFinerGrid finerUncertainty(double cellWidth, double cellHeight, int acrossParts, int alongParts) {
        return new BagFinerGrid(this, uncertainties, cellWidth, cellHeight, acrossParts, alongParts);
    }

    int rows() {
        return first.rows();
    }

    int cols() {
        return first.cols();
    }

    /**
     * The finer grid of a coarse cell.
     *
     * @param from its first node in the list of all, -1 for a cell without any
     * @param spacingX between its nodes, in CRS units; so with y
     * @param offsetX of the south-western node from the cell's south-western corner; so with y
     */
    record Nodes(int from, int countX, int countY, double spacingX, double spacingY, double offsetX, double offsetY) {
        static final Nodes NONE = new Nodes(-1, 0, 0, 0, 0, 0, 0);

        int count() {
            return countX * countY;
        }
    }

    /** Of some coarse cells of a row, counted from the south. */
    Nodes[] nodes(int row, int col, int cols) throws IOException {
        double[] from = window(first, col, row, cols, 1);
        double[] x = window(countX, col, row, cols, 1);
        double[] y = window(countY, col, row, cols, 1);
        double[] dx = window(spacingX, col, row, cols, 1);
        double[] dy = window(spacingY, col, row, cols, 1);
        double[] atX = window(offsetX, col, row, cols, 1);
        double[] atY = window(offsetY, col, row, cols, 1);
        Nodes[] nodes = new Nodes[cols];
        for (int i = 0; i < cols; i++) {
            double count = x[i] * y[i];
            if (!(count > 0)) {
                nodes[i] = Nodes.NONE;
                continue;
            }
            requireListed(from[i], count, row, col + i);
            if (!(dx[i] > 0 && dy[i] > 0 && Math.abs(atX[i]) < Float.MAX_VALUE && Math.abs(atY[i]) < Float.MAX_VALUE)) {
                throw VectorReader.problem(file, "varres_metadata, row " + row + ", column " + (col + i), "has finer cells " + dx[i] + " x "
                        + dy[i] + " apart, " + atX[i] + ", " + atY[i] + " from its corner; the file is damaged, get it again");
            }
            nodes[i] = new Nodes((int) from[i], (int) x[i], (int) y[i], dx[i], dy[i], atX[i], atY[i]);
        }
        return nodes;
    }

    /**
     * How fine the survey is.
     *
     * @param refined coarse cells that have nodes
     * @param coarser those of them whose nodes lie more than half again as far apart as a finer grid's cells
     * @param leastSpacing between nodes, in CRS units, NaN where there are none; so with the most
     */
    record Spread(long refined, long coarser, double leastSpacing, double mostSpacing) {}

    Spread spread(double partWidth, double partHeight) throws IOException {
        long refined = 0;
        long coarser = 0;
        double least = Double.NaN;
        double most = Double.NaN;
        for (int row = 0; row < rows(); row++) {
            for (Nodes nodes : nodes(row, 0, cols())) {
                if (nodes.from() >= 0) {
                    refined++;
                    coarser += nodes.spacingX() > 1.5 * partWidth || nodes.spacingY() > 1.5 * partHeight ? 1 : 0;
                    least = least <= Math.min(nodes.spacingX(), nodes.spacingY()) ? least : Math.min(nodes.spacingX(), nodes.spacingY());
                    most = most >= Math.max(nodes.spacingX(), nodes.spacingY()) ? most : Math.max(nodes.spacingX(), nodes.spacingY());
                }
            }
        }
        return new Spread(refined, coarser, least, most);
    }

    private void requireListed(double from, double count, int row, int col) {
        if (!(from >= 0 && from + count <= elevations.cols())) {
            throw new InputException(file.getFileName() + ", varres_metadata, row " + row + ", column " + col + ": names the finer cells "
                    + (long) from + " to " + (long) (from + count - 1) + " of " + elevations.cols() + "; the file is damaged, get it again");
        }
    }

    private static double[] window(StoredArray array, int col, int row, int cols, int rows) throws IOException {
        double[] numbers = new double[cols * rows];
        array.read(col, row, cols, rows, (r, c, number) -> numbers[r * cols + c] = number);
        return numbers;
    }

    /** The greatest of the finer figures in each coarse cell. */
    private final class Folded implements StoredArray {
        private final StoredArray coarse;
        private final StoredArray fine;

        Folded(StoredArray coarse, StoredArray fine) {
            if (coarse.rows() != first.rows() || coarse.cols() != first.cols()) {
                throw VectorReader.problem(file, "varres_metadata", "has " + first.cols() + " x " + first.rows()
                        + " cells and the coarse grid " + coarse.cols() + " x " + coarse.rows() + "; the file is damaged, get it again");
            }
            this.coarse = coarse;
            this.fine = fine;
        }

        @Override
        public int rows() {
            return coarse.rows();
        }

        @Override
        public int cols() {
            return coarse.cols();
        }

        @Override
        public int blockRows() {
            return first.blockRows();
        }

        @Override
        public int blockCols() {
            return first.blockCols();
        }

        @Override
        public void read(int col, int row, int cols, int rows, Sink into) throws IOException {
            double[] base = window(coarse, col, row, cols, rows);
            double[] from = window(first, col, row, cols, rows);
            double[] across = window(countX, col, row, cols, rows);
            double[] along = window(countY, col, row, cols, rows);
            for (int i = 0; i < base.length; i++) {
                double count = across[i] * along[i];
                into.put(i / cols, i % cols, count > 0 ? greatest(from[i], count, row + i / cols, col + i % cols) : base[i]);
            }
        }

        private double greatest(double from, double count, int row, int col) throws IOException {
            requireListed(from, count, row, col);
            double[] most = {Double.NaN};
            fine.read((int) from, 0, (int) count, 1, (r, c, number) -> {
                if (number != NO_DATA && !(number <= most[0])) {
                    most[0] = number;
                }
            });
            return most[0];
        }
    }
}
