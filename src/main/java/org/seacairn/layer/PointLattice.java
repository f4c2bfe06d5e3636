package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;

/**
 * The lattice that all points of a layer stand on, which tells how far their coordinates were rounded.
 *
 * @param step the lattice's step for people, for example {@code whole minutes}
 * @param roundingM the most that rounding to it moved a point north or south, metres
 */
public record PointLattice(String step, double roundingM) {
    private record Step(double size, String name) {}

    /** Coarsest first. Finer ones are no longer coarse: a thousandth of a minute moves a point by 0.9 m. */
    private static final List<Step> DEGREES = List.of(
            new Step(1, "whole degrees"), new Step(0.1, "tenths of a degree"), new Step(1 / 60.0, "whole minutes"),
            new Step(0.01, "hundredths of a degree"), new Step(1 / 600.0, "tenths of a minute"),
            new Step(1e-3, "thousandths of a degree"), new Step(1 / 3600.0, "whole seconds"),
            new Step(1 / 6000.0, "hundredths of a minute"), new Step(1e-4, "ten-thousandths of a degree"));
    private static final List<Step> LENGTHS = List.of(
            new Step(1000, "whole thousands"), new Step(100, "whole hundreds"), new Step(10, "whole tens"));

    /** Rounding to the printed digits may leave a point this share of a step off the lattice. */
    private static final double TOLERANCE_STEPS = 0.005;

    /** One point may stand on a lattice by chance; that two do so has odds of 1 in 10,000 or less. */
    private static final int LEAST_POINTS = 2;

    private static final double METRES_PER_DEGREE = 111_320;

    /** The coarsest lattice that holds every point; empty for fewer than two places or none that is coarse. */
    public static Optional<PointLattice> of(VectorLayer layer) {
        List<Coordinate> points = new ArrayList<>();
        for (Feature feature : layer.features()) {
            if (feature.geometry().getDimension() == 0) {
                points.addAll(List.of(feature.geometry().getCoordinates()));
            }
        }
        if (points.stream().distinct().count() < LEAST_POINTS) {
            return Optional.empty();
        }
        boolean degrees = layer.crs().isGeographic();
        double metres = degrees ? METRES_PER_DEGREE : layer.crs().metresPerUnit();
        return (degrees ? DEGREES : LENGTHS).stream()
                .filter(step -> points.stream().allMatch(p -> isOn(p.x, step.size) && isOn(p.y, step.size)))
                .findFirst().map(step -> new PointLattice(step.name, step.size / 2 * metres));
    }

    private static boolean isOn(double ordinate, double step) {
        double steps = ordinate / step;
        return Math.abs(steps - Math.rint(steps)) <= TOLERANCE_STEPS;
    }
}
