package org.seacairn.report;

import java.util.List;
import java.util.Map;

/** Which features a rule is for: the part of OGC Filter Encoding 1.0.0 that {@link LayerStyle} knows. */
public sealed interface StyleFilter {

    boolean matches(Map<String, String> properties);

    /** What a comparison asks. */
    enum Operator { EQUAL, NOT_EQUAL, LESS, GREATER, AT_MOST, AT_LEAST }

    /**
     * A property against a fixed value: as numbers where both are numbers, else as texts, which have no order. A property that a
     * feature lacks matches no comparison.
     */
    record Comparison(String property, Operator operator, String literal) implements StyleFilter {
        @Override
        public boolean matches(Map<String, String> properties) {
            String met = properties.get(property);
            if (met == null) {
                return false;
            }
            double number = number(met);
            double wanted = number(literal);
            boolean numbers = !Double.isNaN(number) && !Double.isNaN(wanted);
            boolean equal = numbers ? number == wanted : met.equals(literal);
            return switch (operator) {
                case EQUAL -> equal;
                case NOT_EQUAL -> !equal;
                case LESS -> numbers && number < wanted;
                case GREATER -> numbers && number > wanted;
                case AT_MOST -> numbers && number <= wanted;
                case AT_LEAST -> numbers && number >= wanted;
            };
        }

        private static double number(String text) {
            // A plain decimal only: parseDouble would take the names "NaN" and "12d" for numbers.
            return text.matches("[+-]?(\\d{1,300}(\\.\\d{0,300})?|\\.\\d{1,300})([eE][+-]?\\d{1,3})?") ? Double.parseDouble(text) : Double.NaN;
        }
    }

    /** Matches where all of its parts do. */
    record And(List<StyleFilter> parts) implements StyleFilter {
        @Override
        public boolean matches(Map<String, String> properties) {
            return parts.stream().allMatch(part -> part.matches(properties));
        }
    }

    /** Matches where one of its parts does. */
    record Or(List<StyleFilter> parts) implements StyleFilter {
        @Override
        public boolean matches(Map<String, String> properties) {
            return parts.stream().anyMatch(part -> part.matches(properties));
        }
    }

    /** Matches where its part does not. */
    record Not(StyleFilter part) implements StyleFilter {
        @Override
        public boolean matches(Map<String, String> properties) {
            return !part.matches(properties);
        }
    }
}
