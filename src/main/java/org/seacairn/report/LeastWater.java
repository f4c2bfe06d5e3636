package org.seacairn.report;

import org.seacairn.plan.SitingPlan;

/** The least water over a module: the figure that a chart office asks for. */
final class LeastWater {
    private LeastWater() {}

    /**
     * Depth less the survey's vertical uncertainty (95 %) less the module's height: metres over its top, to the datum of
     * the bathymetry.
     *
     * @return NaN where there is no depth
     */
    static double overM(SitingPlan plan, double depthM) {
        return depthM - plan.bathymetry().uncertainty().verticalM(depthM) - plan.module().heightM();
    }
}
