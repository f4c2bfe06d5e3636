package org.seacairn.report;

import java.util.List;
import org.seacairn.export.Run;

/** What stands at the end of every page. */
final class Closing {
    private Closing() {}

    static List<Section> sections(Run run) {
        return List.of(new RulesSection(run.plan()), new CriteriaSection(run.plan()), new PlanSection(run.plan()), new ProvenanceSection(run));
    }
}
