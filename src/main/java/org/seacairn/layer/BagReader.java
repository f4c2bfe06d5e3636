package org.seacairn.layer;

import io.jhdf.api.Dataset;
import io.jhdf.api.Node;
import io.jhdf.object.datatype.StringData;
import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan.Values;

/**
 * Bathymetry from a Bathymetric Attributed Grid, versions 1.0 to 2.0 (Open Navigation Surface, BAG Format
 * Specification Document): elevations in metres, positive up, rows from south to north, no-data 1,000,000,
 * values at nodes that are taken for the centres of cells. A grid of variable resolution is read by
 * {@link BagRefinements}.
 */
final class BagReader {
    static final float NO_DATA = 1e6f;

    private static final String GROUP = "BAG_root";
    private static final int MOST_METADATA_BYTES = 16 << 20;
    private static final int MOST_CELLS_A_SIDE = 1 << 30;
    private static final StoredNumber CHARACTER = new StoredNumber(StoredNumber.Form.UNSIGNED, 1, ByteOrder.LITTLE_ENDIAN);

    private final HdfStore store;
    private final Map<String, Node> nodes;

    private BagReader(HdfStore store) {
        this.store = store;
        this.nodes = store.children(GROUP);
    }

    static boolean takes(String lowerName) {
        return lowerName.endsWith(".bag");
    }

    /** @param cellM the cell that is wanted, or empty: the file's own */
    static Bathymetry open(Path file, Optional<Crs> stated, OptionalDouble cellM) {
        HdfStore store = HdfStore.open(file);
        try {
            return new BagReader(store).grid(stated, cellM);
        } catch (RuntimeException e) {
            store.close();
            throw e;
        }
    }

    private StoredGrid grid(Optional<Crs> stated, OptionalDouble cellM) {
        Path file = store.file();
        BagMetadata metadata = BagMetadata.parse(file, metadataText());
        List<String> notes = new ArrayList<>();
        StoredArray coarse = array("elevation");
        Optional<StoredArray> uncertainty = nodes.containsKey("uncertainty") ? Optional.of(array("uncertainty")) : Optional.empty();
        Crs crs = stated.orElseGet(metadata::crs);
        double cellWidth = metadata.cellWidth();
        double cellHeight = metadata.cellHeight();
        StoredArray values = coarse;
        if (nodes.containsKey("varres_metadata") && nodes.containsKey("varres_refinements")) {
            BagRefinements fine = new BagRefinements(file, store, dataset("varres_metadata"), dataset("varres_refinements"));
            double wantedM = crs.isGeographic() ? Double.POSITIVE_INFINITY : cellM.orElse(Double.POSITIVE_INFINITY);
            int across = parts(cellWidth, wantedM, coarse.cols());
            int along = parts(cellHeight, wantedM, coarse.rows());
            String cells = "the grid is of variable resolution: each of its cells of " + Shown.number(cellWidth) + " x " + Shown.number(cellHeight);
            if (across > 1 || along > 1) {
                values = fine.finer(cellWidth, cellHeight, across, along);
                uncertainty = uncertainty.map(u -> fine.finerUncertainty(metadata.cellWidth(), metadata.cellHeight(), across, along));
                cellWidth /= across;
                cellHeight /= along;
                notes.add(cells + " is read as " + across + " x " + along + " cells, since the plan's are smaller; each takes the shallowest of"
                        + " the finer depths in it, or the nearest where they are farther apart"
                        + gaps(fine, spread(fine, cellWidth, cellHeight)));
            } else {
                values = fine.shallowest(coarse);
                uncertainty = uncertainty.map(fine::mostUncertain);
                notes.add(cells + " takes the shallowest of the finer cells in it, and the largest of their uncertainties; slope and"
                        + " ruggedness are those of the coarse cells" + (crs.isGeographic() ? "" : finer(spread(fine, cellWidth, cellHeight))));
            }
        }
        if (uncertainty.isPresent() && (uncertainty.get().rows() != values.rows() || uncertainty.get().cols() != values.cols())) {
            throw VectorReader.problem(file, "uncertainty", "has " + uncertainty.get().cols() + " x " + uncertainty.get().rows()
                    + " cells and the elevation " + values.cols() + " x " + values.rows() + "; the file is damaged, get it again");
        }
        checkCorners(metadata, coarse, notes);
        double west = metadata.westNode() - metadata.cellWidth() / 2;
        double north = metadata.southNode() + (coarse.rows() - 0.5) * metadata.cellHeight();
        Packing packing = Packing.plain(NO_DATA);
        Optional<CellUncertainty> layer = uncertainty.map(u -> new Layer(file, u, packing, metadata.uncertaintyKind()));
        return new StoredGrid(file, "BAG", crs, west, north, cellWidth, cellHeight, true, values, packing, "m", Optional.of(Values.ELEVATION), metadata.verticalDatum(), layer, List.copyOf(notes), store);
    }

    /** Into how many parts a coarse cell is cut, so that none is larger than wanted. */
    private int parts(double sizeM, double wantedM, int cells) {
        double parts = Math.max(1, Math.ceil(sizeM / wantedM - 1e-9));
        if (parts * cells > MOST_CELLS_A_SIDE) {
            throw VectorReader.problem(store.file(), "varres_metadata", String.format(Locale.ROOT, "would have %.0f cells of %s m side by side, more"
                    + " than %d; state a larger cell in the plan", parts * cells, Shown.number(wantedM), MOST_CELLS_A_SIDE));
        }
        return (int) parts;
    }

    private BagRefinements.Spread spread(BagRefinements fine, double cellWidth, double cellHeight) {
        try {
            return fine.spread(cellWidth, cellHeight);
        } catch (IOException e) {
            throw VectorReader.problem(store.file(), "varres_metadata", "cannot be read (" + e.getMessage() + "); the file is damaged, get it again", e);
        }
    }

    private static String finer(BagRefinements.Spread spread) {
        return Double.isNaN(spread.leastSpacing()) ? "" : "; its finer depths are " + Shown.number(spread.leastSpacing()) + " to "
                + Shown.number(spread.mostSpacing()) + " apart, and a smaller cell in the plan would have them";
    }

    private static String gaps(BagRefinements fine, BagRefinements.Spread spread) {
        long without = (long) fine.rows() * fine.cols() - spread.refined();
        return (without == 0 ? "" : "; " + without + " of the coarse cells have no finer depths, and none here")
                + (spread.coarser() == 0 ? "" : "; in " + spread.coarser() + " of " + spread.refined() + " they lie farther apart than a cell, so"
                + " that depths repeat and slopes come in steps there: a larger cell in the plan avoids it");
    }

    /** The corner points are nodes; files whose points lie a cell too far apart mean something else by them. */
    private static void checkCorners(BagMetadata metadata, StoredArray values, List<String> notes) {
        if (metadata.corners().size() < 4) {
            return;
        }
        double across = (metadata.eastNode() - metadata.westNode()) / metadata.cellWidth();
        double along = (metadata.northNode() - metadata.southNode()) / metadata.cellHeight();
        if (Math.abs(across - (values.cols() - 1)) > 0.01 || Math.abs(along - (values.rows() - 1)) > 0.01) {
            notes.add(String.format(Locale.ROOT, "the corner points of the metadata are %.6g x %.6g cells apart, and %d x %d cells have"
                    + " centres %d x %d apart; the south-western point is taken for the centre of the first cell, as BAG has it:"
                    + " positions may be off by half a cell or more, compare them with a chart", across, along, values.cols(),
                    values.rows(), values.cols() - 1, values.rows() - 1));
        }
    }

    private String metadataText() {
        Dataset dataset = dataset("metadata");
        boolean characters = store.ask("metadata", () -> dataset.getDataType() instanceof StringData text && text.getSize() == 1);
        if (!characters) {
            throw VectorReader.problem(store.file(), "metadata", "is no list of single characters, as in a BAG; get the file again");
        }
        StoredArray array = store.array(dataset, CHARACTER);
        if (array.cols() > MOST_METADATA_BYTES || array.rows() > 1) {
            throw VectorReader.problem(store.file(), "metadata", "has " + array.cols() + " characters; a BAG has some thousands, get the file again");
        }
        byte[] text = new byte[array.cols()];
        int[] length = {0};
        try {
            array.read(0, 0, text.length, 1, (row, col, number) -> text[col] = (byte) number);
        } catch (IOException e) {
            throw VectorReader.problem(store.file(), "metadata", "cannot be read (" + e.getMessage() + "); the file is damaged, get it again", e);
        }
        while (length[0] < text.length && text[length[0]] != 0) {
            length[0]++;
        }
        return new String(text, 0, length[0], StandardCharsets.UTF_8).strip();
    }

    private StoredArray array(String name) {
        Dataset dataset = dataset(name);
        StoredNumber number = store.number(dataset).orElseThrow(() -> VectorReader.problem(store.file(), name,
                "holds no numbers; get the file again"));
        return store.array(dataset, number);
    }

    private Dataset dataset(String name) {
        if (nodes.get(name) instanceof Dataset dataset) {
            return dataset;
        }
        throw new InputException(store.file().getFileName() + ", " + GROUP + ": has no " + name
                + ", so this is no whole BAG; get the file again");
    }

    /** The uncertainty beside the elevation, cell for cell. */
    private record Layer(Path file, StoredArray array, Packing packing, String kind) implements CellUncertainty {
        @Override
        public void read(int col, int row, int cols, int rows, float[] into) {
            StoredGrid.read(file, array, packing, true, col, row, cols, rows, into);
            for (int i = 0; i < cols * rows; i++) {
                // 0 is the unknown state of the uncertainty in the format, and nothing is known without any.
                into[i] = into[i] > 0 ? into[i] : Float.NaN;
            }
        }
    }
}
