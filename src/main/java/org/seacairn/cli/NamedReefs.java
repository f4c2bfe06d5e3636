package org.seacairn.cli;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.seacairn.InputException;
import org.seacairn.layer.Feature;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Reefs;
import org.seacairn.plan.Suggestion;
import org.seacairn.score.WorkingLayers;

/** The existing reefs of a plan by their names; one without a name goes by its number, as {@code #3}. */
final class NamedReefs {
    private static final int LISTED = 20;

    private final Reefs plan;
    private final List<Feature> features;

    /**
     * @param option that names a reef, for the message
     * @throws InputException if the plan has no reefs
     */
    NamedReefs(SitingPlan plan, WorkingLayers layers, String option) {
        this.plan = plan.reefs().orElseThrow(() -> new InputException(plan.file().getFileName()
                + ": the plan names no reefs, so " + option + " can mean none; add the layer of existing reefs, reefs: {file: …, name: …}"));
        this.features = layers.reefs().orElseThrow().lonLat();
    }

    /** A reef and what it is called. */
    record Reef(String name, Feature feature) {}

    /** @throws InputException if no reef has the name, or several have */
    Reef find(String option, String asked) {
        String name = asked.strip();
        List<Feature> found = features.stream().filter(f -> nameOf(f).equals(name)).toList();
        if (found.isEmpty()) {
            found = features.stream().filter(f -> nameOf(f).equalsIgnoreCase(name)).toList();
        }
        String met = option + " is " + Shown.quoted(asked) + "; ";
        String file = plan.source().file().getFileName().toString();
        if (found.isEmpty()) {
            throw new InputException(met + "no reef of " + file + " has that name; " + advice(name));
        }
        if (found.size() > 1) {
            throw new InputException(met + found.size() + " reefs of " + file + " have that name ("
                    + found.stream().map(f -> "feature " + f.id()).collect(Collectors.joining(", ")) + "); give each a name of its own");
        }
        return new Reef(nameOf(found.get(0)), found.get(0));
    }

    private String advice(String name) {
        Set<String> known = new LinkedHashSet<>();
        features.forEach(f -> known.add(nameOf(f)));
        return Suggestion.nearest(name, known).map(near -> "did you mean " + Shown.quoted(near) + "?")
                .orElseGet(() -> "it has " + known.stream().limit(LISTED).map(Shown::quoted).collect(Collectors.joining(", "))
                        + (known.size() > LISTED ? " and " + (known.size() - LISTED) + " more" : ""));
    }

    private String nameOf(Feature feature) {
        return feature.name(plan.nameAttribute());
    }

    /** @throws InputException if one of them is named twice */
    static void requireDistinct(List<Reef> reefs) {
        for (int i = 0; i < reefs.size(); i++) {
            for (int j = 0; j < i; j++) {
                if (reefs.get(i).feature() == reefs.get(j).feature()) {
                    throw new InputException("the reef " + Shown.quoted(reefs.get(i).name())
                            + " is named twice; a chain runs between different reefs");
                }
            }
        }
    }
}
