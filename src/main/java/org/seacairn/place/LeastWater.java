package org.seacairn.place;

import org.seacairn.plan.SitingPlan;

/**
 * The least water over a module: the figure that a chart office asks for. Depth less its vertical uncertainty (95 %) less the
 * module's height: metres over its top, to the datum of the plan's depths; NaN where one of them is not known.
 */
public final class LeastWater {
    private LeastWater() {}

    public static double overM(SitingPlan plan, Site site) {
        return site.depthM() - site.depthUncertaintyM() - plan.module().heightM();
    }

    /** Over the module that would have the least. */
    public static double overM(SitingPlan plan, Area area) {
        return area.sureDepthM() - plan.module().heightM();
    }
}
