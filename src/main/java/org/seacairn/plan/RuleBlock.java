package org.seacairn.plan;

import java.util.Optional;
import org.seacairn.plan.Quantity.Kind;

/** What a rule about a distance has besides the distance: where it comes from, and how sure its layer is. */
record RuleBlock(double positionUncertaintyM, Optional<String> source, boolean confirmed) {
    static final String[] KEYS = {"position-uncertainty", "source", "confirmed"};

    /** @param rule the rule's name in a warning */
    static RuleBlock read(Block block, String rule) {
        Optional<String> source = block.text("source").filter(text -> !text.isEmpty());
        boolean confirmed = block.get("confirmed").map(Value::flag).orElse(source.isPresent());
        if (source.isEmpty()) {
            if (confirmed) {
                block.problem("confirmed is true and no source is named; add it, for example \"source: permit, condition 4\"");
            }
            block.findings().warning(rule + ": the rule names no source");
        } else if (!confirmed) {
            block.findings().warning(rule + ": the rule's source is not confirmed");
        }
        return new RuleBlock(block.quantity("position-uncertainty", Kind.LENGTH).orElse(0), source, confirmed);
    }
}
