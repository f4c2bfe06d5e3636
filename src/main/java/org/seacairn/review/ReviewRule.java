package org.seacairn.review;

import java.util.List;
import java.util.Optional;

/** One rule of the plan; implementations are safe for several threads at once. */
interface ReviewRule {
    /**
     * Judges a site.
     *
     * @param index place of the site in the proposal
     * @param cells its cells; empty where it lies off the grid
     * @return one finding, or none where the rule does not concern this kind of site
     */
    List<Finding> judge(int index, ProposedSite site, Optional<SiteCells> cells);
}
