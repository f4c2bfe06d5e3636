package org.seacairn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.seacairn.report.StyleFilter.Operator;

/** Reads the {@code ogc:Filter} of a rule. */
final class StyleFilterReader {
    private static final Map<String, Operator> OPERATORS = Map.of(
            "PropertyIsEqualTo", Operator.EQUAL,
            "PropertyIsNotEqualTo", Operator.NOT_EQUAL,
            "PropertyIsLessThan", Operator.LESS,
            "PropertyIsGreaterThan", Operator.GREATER,
            "PropertyIsLessThanOrEqualTo", Operator.AT_MOST,
            "PropertyIsGreaterThanOrEqualTo", Operator.AT_LEAST);
    private static final String[] CONDITIONS = {"PropertyIsEqualTo*", "PropertyIsNotEqualTo*", "PropertyIsLessThan*", "PropertyIsGreaterThan*",
        "PropertyIsLessThanOrEqualTo*", "PropertyIsGreaterThanOrEqualTo*", "And*", "Or*", "Not*"};

    private final StyleElements in;

    StyleFilterReader(StyleElements in) {
        this.in = in;
    }

    /** The one condition in the element in hand. */
    StyleFilter filter() {
        String parent = in.name();
        List<StyleFilter> conditions = conditions();
        if (conditions.size() != 1) {
            throw in.problem("\"" + parent + "\" has " + conditions.size() + " conditions; write one, or join them by \"And\" or \"Or\"");
        }
        return conditions.get(0);
    }

    private List<StyleFilter> conditions() {
        StyleElements.Children children = in.children(CONDITIONS);
        List<StyleFilter> conditions = new ArrayList<>();
        while (children.next()) {
            conditions.add(switch (in.name()) {
                case "And" -> new StyleFilter.And(several());
                case "Or" -> new StyleFilter.Or(several());
                case "Not" -> new StyleFilter.Not(filter());
                default -> comparison(OPERATORS.get(in.name()));
            });
        }
        return conditions;
    }

    private List<StyleFilter> several() {
        String parent = in.name();
        List<StyleFilter> conditions = conditions();
        if (conditions.size() < 2) {
            throw in.problem("\"" + parent + "\" has fewer than two conditions; write two or more");
        }
        return conditions;
    }

    private StyleFilter comparison(Operator operator) {
        StyleElements.Children children = in.children("PropertyName", "Literal");
        String property = "";
        String literal = "";
        while (children.next()) {
            switch (in.name()) {
                case "PropertyName" -> property = in.text();
                default -> literal = in.text();
            }
        }
        children.require("PropertyName");
        children.require("Literal");
        return new StyleFilter.Comparison(property, operator, literal);
    }
}
