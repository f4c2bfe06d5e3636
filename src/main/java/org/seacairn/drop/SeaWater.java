package org.seacairn.drop;

import org.seacairn.plan.ModuleBody;

/** The water that a module sinks through, of one density from the surface to the bottom. */
public record SeaWater(double densityKgPerM3, double gravityMPerS2) {
    /** 1025 kg/m3, the density that plans are checked with, and 9.81 m/s2. */
    public static final SeaWater USUAL = new SeaWater(ModuleBody.SEA_WATER_KG_PER_M3, 9.81);

    public SeaWater {
        if (!(densityKgPerM3 > 0 && gravityMPerS2 > 0)) {
            throw new IllegalArgumentException("density " + densityKgPerM3 + " kg/m3, gravity " + gravityMPerS2 + " m/s2");
        }
    }
}
