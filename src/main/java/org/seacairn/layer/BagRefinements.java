package org.seacairn.layer;

import io.jhdf.api.Dataset;
import java.io.IOException;
import java.nio.file.Path;
import org.seacairn.InputException;

/**
 * The finer grids within the cells of a BAG of variable resolution (BAG Format Specification Document 1.6,
 * "Variable Resolution"), brought back to the coarse grid. A coarse cell takes the shallowest of its finer
 * cells: a mean would put water over a rock that is in the data, and what a module needs is least water.
 */
final class BagRefinements {
    /** What a finer cell without a value has. */
    private static final double NO_DATA = BagReader.NO_DATA;

    private final Path file;
    private final StoredArray first;
    private final StoredArray countX;
    private final StoredArray countY;
    private final StoredArray elevations;
    private final StoredArray uncertainties;

    BagRefinements(Path file, HdfStore store, Dataset metadata, Dataset refinements) {
        this.file = file;
        this.first = member(file, store, metadata, "index");
        this.countX = member(file, store, metadata, "dimensions_x");
        this.countY = member(file, store, metadata, "dimensions_y");
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
            if (!(from >= 0 && from + count <= fine.cols())) {
                throw new InputException(file.getFileName() + ", varres_metadata, row " + row + ", column " + col + ": names the finer cells "
                        + (long) from + " to " + (long) (from + count - 1) + " of " + fine.cols() + "; the file is damaged, get it again");
            }
            double[] most = {Double.NaN};
            fine.read((int) from, 0, (int) count, 1, (r, c, number) -> {
                if (number != NO_DATA && !(number <= most[0])) {
                    most[0] = number;
                }
            });
            return most[0];
        }

        private static double[] window(StoredArray array, int col, int row, int cols, int rows) throws IOException {
            double[] numbers = new double[cols * rows];
            array.read(col, row, cols, rows, (r, c, number) -> numbers[r * cols + c] = number);
            return numbers;
        }
    }
}
