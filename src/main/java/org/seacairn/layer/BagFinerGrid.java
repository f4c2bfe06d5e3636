package org.seacairn.layer;

import java.io.IOException;
import java.util.Arrays;
import org.seacairn.layer.BagRefinements.Nodes;

/**
 * A BAG of variable resolution on one grid that parts every coarse cell alike. A part takes the greatest figure (the shallowest elevation, the largest
 * uncertainty) of the nodes in it; where the nodes lie farther apart than that, that of the node within half a spacing of its
 * centre. Coarse cells without nodes have no data: one depth for so large a cell is no survey of its parts.
 */
final class BagFinerGrid implements StoredArray {
    /** Nodes of a row of coarse cells stand one after the other in a sound file; more than this are read cell by cell. */
    private static final int MOST_AT_ONCE = 1 << 22;
    private static final int BLOCK = 256;

    private final BagRefinements refinements;
    private final StoredArray figures;
    private final double cellWidth;
    private final double cellHeight;
    private final int acrossParts;
    private final int alongParts;

    /**
     * @param figures one of each node, in the order of the list of all
     * @param cellWidth of a coarse cell, in CRS units; so with the height
     * @param acrossParts into how many parts a coarse cell is cut from west to east; along: from south to north
     */
    BagFinerGrid(BagRefinements refinements, StoredArray figures, double cellWidth, double cellHeight, int acrossParts, int alongParts) {
        this.refinements = refinements;
        this.figures = figures;
        this.cellWidth = cellWidth;
        this.cellHeight = cellHeight;
        this.acrossParts = acrossParts;
        this.alongParts = alongParts;
    }

    @Override
    public int rows() {
        return refinements.rows() * alongParts;
    }

    @Override
    public int cols() {
        return refinements.cols() * acrossParts;
    }

    /** Whole coarse cells, since the nodes of one are read together. */
    @Override
    public int blockRows() {
        return Math.min(rows(), Math.max(1, BLOCK / alongParts) * alongParts);
    }

    @Override
    public int blockCols() {
        return Math.min(cols(), Math.max(1, BLOCK / acrossParts) * acrossParts);
    }

    @Override
    public void read(int col, int row, int cols, int rows, Sink into) throws IOException {
        int firstCol = col / acrossParts;
        int coarseCols = (col + cols - 1) / acrossParts - firstCol + 1;
        for (int coarseRow = row / alongParts; coarseRow <= (row + rows - 1) / alongParts; coarseRow++) {
            Nodes[] nodes = refinements.nodes(coarseRow, firstCol, coarseCols);
            NodeFigures read = NodeFigures.of(nodes, figures);
            for (int i = 0; i < coarseCols; i++) {
                double[] parts = parts(nodes[i], read);
                int west = (firstCol + i) * acrossParts;
                int south = coarseRow * alongParts;
                for (int r = Math.max(row, south); r < Math.min(row + rows, south + alongParts); r++) {
                    for (int c = Math.max(col, west); c < Math.min(col + cols, west + acrossParts); c++) {
                        into.put(r - row, c - col, parts[(r - south) * acrossParts + c - west]);
                    }
                }
            }
        }
    }

    /** The parts of a coarse cell row by row from the south; NaN for none. */
    private double[] parts(Nodes nodes, NodeFigures read) throws IOException {
        double[] parts = new double[acrossParts * alongParts];
        Arrays.fill(parts, Double.NaN);
        if (nodes.from() < 0) {
            return parts;
        }
        double[] own = read.of(nodes);
        boolean[] held = new boolean[parts.length];
        double partWidth = cellWidth / acrossParts;
        double partHeight = cellHeight / alongParts;
        for (int i = 0; i < own.length; i++) {
            int c = part(nodes.offsetX() + i % nodes.countX() * nodes.spacingX(), partWidth, acrossParts);
            int r = part(nodes.offsetY() + i / nodes.countX() * nodes.spacingY(), partHeight, alongParts);
            int at = r * acrossParts + c;
            held[at] = true;
            if (own[i] > parts[at] || Double.isNaN(parts[at])) {
                parts[at] = own[i];
            }
        }
        for (int at = 0; at < parts.length; at++) {
            if (!held[at]) {
                int c = nearest((at % acrossParts + 0.5) * partWidth - nodes.offsetX(), nodes.spacingX(), nodes.countX());
                int r = nearest((at / acrossParts + 0.5) * partHeight - nodes.offsetY(), nodes.spacingY(), nodes.countY());
                parts[at] = c < 0 || r < 0 ? Double.NaN : own[r * nodes.countX() + c];
            }
        }
        return parts;
    }

    /** A node on the far edge of a cell belongs to it. */
    private static int part(double offset, double size, int parts) {
        return (int) Math.max(0, Math.min(parts - 1, Math.ceil(offset / size) - 1));
    }

    /** The node within half a spacing, or -1. */
    private static int nearest(double fromFirst, double spacing, int count) {
        double index = fromFirst / spacing;
        int nearest = (int) Math.round(Math.max(-1, Math.min(count, index)));
        return nearest >= 0 && nearest < count ? nearest : -1;
    }

    /** The figures of a row's nodes, read at once where they stand together. */
    private record NodeFigures(StoredArray all, int from, double[] figures) {
        static NodeFigures of(Nodes[] cells, StoredArray all) throws IOException {
            long from = Long.MAX_VALUE;
            long to = 0;
            for (Nodes nodes : cells) {
                if (nodes.from() >= 0) {
                    from = Math.min(from, nodes.from());
                    to = Math.max(to, (long) nodes.from() + nodes.count());
                }
            }
            boolean together = to > from && to - from <= MOST_AT_ONCE;
            return new NodeFigures(all, together ? (int) from : 0, together ? list(all, (int) from, (int) (to - from)) : new double[0]);
        }

        double[] of(Nodes nodes) throws IOException {
            return figures.length == 0 ? list(all, nodes.from(), nodes.count())
                    : Arrays.copyOfRange(figures, nodes.from() - from, nodes.from() - from + nodes.count());
        }

        private static double[] list(StoredArray all, int from, int count) throws IOException {
            double[] numbers = new double[count];
            all.read(from, 0, count, 1, (r, c, number) -> numbers[c] = number == BagReader.NO_DATA ? Double.NaN : number);
            return numbers;
        }
    }
}
