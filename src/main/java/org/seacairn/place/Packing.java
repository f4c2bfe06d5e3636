package org.seacairn.place;

import java.util.Comparator;
import java.util.List;
import org.seacairn.InputException;
import org.seacairn.plan.Shown;

/**
 * How many modules fit into a rectangle, where they stand, and how many could fit at most. Not exact: the
 * places are the best of square and hexagonal lattices, stretched to the sides or shifted.
 *
 * @param places from the rectangle's centre
 * @param upperBound no arrangement has more, see {@link #bound}
 */
public record Packing(List<Place> places, int upperBound) {
    private static final int MOST = 1_000_000;

    /** A place in a rectangle: metres from its centre along the long side, and clockwise from that across. */
    public record Place(double alongM, double acrossM) {}

    /** Where a module may stand. */
    @FunctionalInterface
    public interface Ground {
        boolean isFree(Place place);
    }

    /**
     * Packs the inside and the edge of a rectangle.
     *
     * @param apartM least distance between modules, above 0
     * @throws InputException if there would be more than a million
     */
    public static Packing of(AreaSize size, double apartM, Ground ground) {
        double bound = size.lengthM() * size.widthM() / (apartM * apartM);
        if (!(apartM > 0) || bound > MOST) {
            throw new InputException("apart is " + Shown.metres(apartM) + ", at which more than a million modules fit into "
                    + size.text() + "; state a larger distance");
        }
        // The largest first: once one is found that the rest cannot beat, the rest need not be laid out.
        List<Lattice> lattices = Lattice.all(size.lengthM(), size.widthM(), apartM);
        lattices.sort(Comparator.comparingLong(Lattice::size).reversed());
        List<Place> best = List.of();
        for (Lattice lattice : lattices) {
            if (lattice.size() <= best.size()) {
                break;
            }
            List<Place> places = lattice.places(size.lengthM(), size.widthM()).stream().filter(ground::isFree).toList();
            best = places.size() > best.size() ? places : best;
        }
        return new Packing(best, bound(size, apartM));
    }

    /**
     * The most points at mutual distance d in a rectangle of area A and perimeter P:
     * 2/sqrt(3) A/d² + P/(2d) + 1. Oler (1961): An inequality in the geometry of numbers. Acta Math. 105,
     * 19-48, from memory; sharp for triangles of a hexagonal lattice.
     */
    static int bound(AreaSize size, double apartM) {
        double l = size.lengthM() / apartM;
        double w = size.widthM() / apartM;
        return (int) Math.floor((2 / Math.sqrt(3) * l * w + l + w + 1) * (1 + 1e-9));
    }
}
