package org.seacairn.layer;

import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Names of units of length as data files write them, which no standard fixes. */
public final class UnitName {
    private static final double US_SURVEY_FOOT_M = 1200.0 / 3937;

    /** Common spellings; in lower case, joined by blanks. */
    private static final Map<String, Double> METRES = Map.ofEntries(
            Map.entry("m", 1.0), Map.entry("metre", 1.0), Map.entry("meter", 1.0),
            Map.entry("km", 1000.0), Map.entry("kilometre", 1000.0), Map.entry("kilometer", 1000.0),
            Map.entry("cm", 0.01), Map.entry("centimetre", 0.01), Map.entry("centimeter", 0.01),
            Map.entry("ft", 0.3048), Map.entry("foot", 0.3048), Map.entry("feet", 0.3048),
            Map.entry("international foot", 0.3048), Map.entry("international feet", 0.3048),
            Map.entry("us ft", US_SURVEY_FOOT_M), Map.entry("ft us", US_SURVEY_FOOT_M), Map.entry("ftus", US_SURVEY_FOOT_M),
            Map.entry("us survey foot", US_SURVEY_FOOT_M), Map.entry("us survey feet", US_SURVEY_FOOT_M),
            Map.entry("foot us", US_SURVEY_FOOT_M), Map.entry("foot us survey", US_SURVEY_FOOT_M),
            Map.entry("fathom", 1.8288), Map.entry("fath", 1.8288));

    private UnitName() {}

    /** What one unit of that name is in metres; empty if the name is not known. */
    public static OptionalDouble metres(String name) {
        String plain = name.toLowerCase(Locale.ROOT).replace(".", "").replaceAll("[^\\p{L}]+", " ").strip();
        Double metres = METRES.getOrDefault(plain, METRES.get(plain.replaceFirst("s$", "")));
        return metres == null ? OptionalDouble.empty() : OptionalDouble.of(metres);
    }
}
