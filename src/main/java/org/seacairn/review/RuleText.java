package org.seacairn.review;

import java.util.Optional;

/**
 * What is said of a rule beside its figures.
 *
 * @param name for example {@code keep-off:cables}
 * @param source where it comes from, never empty: the plan, if it names nothing else
 * @param confirmed whether somebody has checked the source's text; empty for limits that are the plan's own
 * @param edges how an edge between two vertices of its layer was taken, as in the plan, or empty text
 */
public record RuleText(String name, String source, Optional<Boolean> confirmed, String edges) {}
