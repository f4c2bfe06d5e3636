package org.seacairn.place;

import java.util.List;

/**
 * Modules about a stone.
 *
 * <p>Of all rings of the asked number, every two of whose modules stand the asked distance apart, the best is
 * the one with (1) the largest evenness: the smallest difference of bearing between neighbours, in whole
 * degrees, rounded down; 360 for a single module; (2) of those the highest total score, scores counted in
 * units of 1e-9; (3) of those the one whose modules, taken from north, come first: the first that differs
 * has the smaller bearing, then stands nearer to the stone, then more northern, then more western.
 *
 * @param modules in order of bearing from north
 * @param leastStepDeg the smallest difference of bearing between neighbours, 360 for a single module
 * @param gapsM ground distance from each module to the next, the last to the first; empty for a single module
 * @param total sum of the scores
 * @param totalBound no ring that is as even as this one has a higher total
 * @param evennessBoundDeg no ring is more even than this, in whole degrees
 */
public record Ring(
        List<RingModule> modules, double leastStepDeg, List<Double> gapsM, double total, double totalBound,
        int evennessBoundDeg) {

    /** The smallest difference of bearing between neighbours in whole degrees. */
    public int evennessDeg() {
        return (int) Math.floor(leastStepDeg);
    }

    /** Whether this ring is proved to be the best; otherwise the bounds say how far from it it can be. */
    public boolean exact() {
        return evennessDeg() == evennessBoundDeg && total == totalBound;
    }
}
