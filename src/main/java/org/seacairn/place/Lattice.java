package org.seacairn.place;

import java.util.ArrayList;
import java.util.List;

/**
 * Rows of places in a rectangle: {@code inRow} of them in the even rows, {@code inOddRow} in the odd ones,
 * which are shifted by {@code shiftM}.
 *
 * @param turned whether the rows run along the short side
 * @param firstM distance of the first place of an even row from the rows' beginning
 * @param firstRowM distance of the first row from the edge
 */
record Lattice(boolean turned, int inRow, int inOddRow, int rows, double stepM, double shiftM, double rowStepM,
        double firstM, double firstRowM) {
    /** A side that is a whole multiple of the distance but for rounding takes the multiple. */
    private static final double ROUNDING = 1e-9;
    /** Offsets of an unstretched lattice tried along each side. */
    private static final int OFFSETS = 4;

    /**
     * Square and hexagonal lattices in a rectangle, rows along either side. Stretched: every spacing is
     * as wide as the side allows, and hexagonal rows that are wide apart within move closer together.
     * Unstretched: the spacing is {@code apartM}, and the lattice is shifted to several places.
     */
    static List<Lattice> all(double lengthM, double widthM, double apartM) {
        List<Lattice> all = new ArrayList<>();
        for (boolean turned : new boolean[] {false, true}) {
            double along = turned ? widthM : lengthM;
            double across = turned ? lengthM : widthM;
            int most = times(along, apartM) + 1;
            add(all, turned, most, most, 0, along, across, apartM, apartM);
            for (int n = 1; n <= most; n++) {
                if (n > 1) {
                    add(all, turned, n, n - 1, 0.5, along, across, rowStep(along / (n - 1), apartM), apartM);
                }
                if (along / (n - 0.5) >= apartM * (1 - ROUNDING)) {
                    add(all, turned, n, n, 0.5, along, across, rowStep(along / (n - 0.5), apartM), apartM);
                }
            }
        }
        return all;
    }

    /** How many whole times a length goes into a side. */
    private static int times(double side, double length) {
        return (int) Math.floor(side / length * (1 + ROUNDING));
    }

    /** How near rows may be whose places are {@code stepM} apart and shifted by half of that. */
    private static double rowStep(double stepM, double apartM) {
        // Two rows on, places stand straight across from each other.
        return Math.max(apartM / 2, Math.sqrt(Math.max(0, apartM * apartM - stepM * stepM / 4)));
    }

    private static void add(List<Lattice> all, boolean turned, int inRow, int inOddRow, double shift, double along,
            double across, double rowStepM, double apartM) {
        double steps = inRow - 1 + (inOddRow == inRow ? shift : 0);
        double stretched = steps == 0 ? 0 : along / steps;
        int rows = times(across, rowStepM) + 1;
        all.add(new Lattice(turned, inRow, inOddRow, rows, stretched, shift * stretched,
                rows == 1 ? 0 : across / (rows - 1), 0, 0));
        double tightRows = shift == 0 ? apartM : rowStep(apartM, apartM);
        int manyRows = times(across, tightRows) + 1;
        if (steps * apartM > along * (1 + ROUNDING)) {
            return;
        }
        for (int i = 0; i < OFFSETS; i++) {
            for (int k = 0; k < OFFSETS; k++) {
                all.add(new Lattice(turned, inRow, inOddRow, manyRows, apartM, shift * apartM, tightRows,
                        Math.max(0, along - steps * apartM) * i / (OFFSETS - 1),
                        Math.max(0, across - (manyRows - 1) * tightRows) * k / (OFFSETS - 1)));
            }
        }
    }

    /** Number of places. */
    long size() {
        return (rows + 1) / 2 * (long) inRow + rows / 2 * (long) inOddRow;
    }

    /** The places, from the rectangle's centre, row by row. */
    List<Packing.Place> places(double lengthM, double widthM) {
        List<Packing.Place> places = new ArrayList<>();
        double along = turned ? widthM : lengthM;
        double across = turned ? lengthM : widthM;
        for (int row = 0; row < rows; row++) {
            double v = onSide(firstRowM + row * rowStepM, across);
            for (int i = 0; i < (row % 2 == 0 ? inRow : inOddRow); i++) {
                double u = onSide(firstM + (row % 2 == 0 ? 0 : shiftM) + i * stepM, along);
                places.add(turned ? new Packing.Place(v, u) : new Packing.Place(u, v));
            }
        }
        return places;
    }

    /** From the middle of a side, and not beyond it by rounding. */
    private static double onSide(double fromEnd, double side) {
        return Math.min(fromEnd, side) - side / 2;
    }
}
