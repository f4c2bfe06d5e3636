package org.seacairn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.LayerFile;

/** The distances that the plan keeps, each with where it comes from and whether anybody has checked that. */
record RulesSection(SitingPlan plan) implements Section {
    private record Rule(LayerFile layer, double distanceM, OptionalDouble comfortableM, double positionM, Optional<String> source,
            boolean confirmed, Optional<LayerFile> coverage) {}

    @Override
    public String id() {
        return "rules";
    }

    @Override
    public String heading() {
        return "Rules and their sources";
    }

    @Override
    public void write(Html html) {
        List<Rule> rules = new ArrayList<>();
        plan.reefs().ifPresent(reefs -> rules.add(new Rule(reefs.source(), reefs.keepOffM(), OptionalDouble.empty(),
                reefs.positionUncertaintyM(), reefs.ruleSource(), reefs.confirmed(), Optional.empty())));
        plan.keepOff().forEach(layer -> rules.add(new Rule(layer.source(), layer.distanceM(), layer.comfortableM(),
                layer.positionUncertaintyM(), layer.ruleSource(), layer.confirmed(), layer.coverage())));
        if (rules.isEmpty()) {
            html.element("p", "The plan keeps no distance to anything.").newLine();
            return;
        }
        Units units = new Units(plan.display());
        new PageTable<Rule>("Distances to keep, in " + units.length())
                .name("Layer", rule -> rule.layer().label())
                .figure("Keep off", rule -> units.length(rule.distanceM()))
                .figure("Comfortable from", rule -> rule.comfortableM().isPresent() ? units.length(rule.comfortableM().getAsDouble()) : "–")
                .figure("Position uncertainty", rule -> units.length(rule.positionM()))
                .cell("Source", (h, rule) -> source(h, rule.source()))
                .cell("Source checked", (h, rule) -> h.element(rule.confirmed() ? "span" : "strong", confirmed(rule)))
                .text("Edges", rule -> rule.layer().edges().name().toLowerCase(Locale.ROOT).replace('_', ' '))
                .cell("Surveyed within", (h, rule) -> rule.coverage().ifPresentOrElse(
                        coverage -> h.name(coverage.file().getFileName().toString()), () -> h.text("not stated")))
                .write(html, rules);
        html.element("p", "Required at a place: the distance to keep, and beside it the root of the squares of position uncertainty, survey"
                + " uncertainty and landing radius (each 95 %). No distance is built into Seacairn.", "class", "note").newLine();
    }

    private static void source(Html html, Optional<String> source) {
        source.ifPresentOrElse(html::line, () -> html.text("the plan names none"));
    }

    private static String confirmed(Rule rule) {
        return rule.source().isEmpty() ? "no source" : rule.confirmed() ? "yes" : "not confirmed";
    }
}
