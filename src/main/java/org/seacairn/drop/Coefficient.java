package org.seacairn.drop;

/**
 * A drag or added-mass coefficient that a sinking was computed with, for the report.
 *
 * @param name as in "base, axial drag"
 * @param reference area or volume that it multiplies
 * @param referenceUnit m2 of a drag coefficient, m3 of an added-mass coefficient
 * @param source publication of a default, or {@link #STATED}
 */
public record Coefficient(String name, double value, double reference, String referenceUnit, String source) {
    /** Source of a coefficient that the module file states. */
    public static final String STATED = "stated in the module file";

    /** Coefficient times reference: m2 of drag area, or m3 of water that moves along. */
    double product() {
        return value * reference;
    }
}
