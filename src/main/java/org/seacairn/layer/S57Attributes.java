package org.seacairn.layer;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A feature's attributes by acronym. Integers and decimal numbers become numbers, except where what is written is none;
 * codes and lists of codes stay the text that they are, such as {@code 4,1,17}; a value left empty, which S-57 means as
 * unknown, is null. {@code NATSUR_words} says in words what {@code NATSUR} says in codes, in the same order: a plan may
 * map either.
 */
final class S57Attributes {
    private static final String NATURE_OF_SURFACE = "NATSUR";
    /** What a sounding's depth goes by, in metres where the chart's depths are; positive down. */
    static final String DEPTH = "DEPTH";

    /** NATSUR 1 to 18, S-57 edition 3.1, appendix A, chapter 2 (attribute 113). */
    private static final List<String> SURFACES = List.of("mud", "clay", "silt", "sand", "stone", "gravel", "pebbles", "cobbles",
            "rock", "marsh", "lava", "snow", "ice", "coral", "swamp", "bog", "shells", "boulder");

    private S57Attributes() {}

    static Map<String, Object> of(S57Feature feature) {
        Map<String, Object> attributes = new LinkedHashMap<>();
        feature.attributes().forEach((code, text) -> {
            String acronym = S57Catalogue.attribute(code);
            attributes.put(acronym, value(code, text));
            if (acronym.equals(NATURE_OF_SURFACE)) {
                attributes.put(NATURE_OF_SURFACE + "_words", words(text));
            }
        });
        return attributes;
    }

    private static Object value(int code, String text) {
        if (text.isEmpty()) {
            return null;
        }
        if (!S57Catalogue.isNumber(code) || !text.strip().matches("[+-]?[0-9]{1,15}(\\.[0-9]{0,15})?")) {
            return text;
        }
        BigDecimal number = new BigDecimal(text.strip());
        return text.contains(".") ? (Number) number.doubleValue() : (Number) number.longValue();
    }

    /** Codes that have no word stay codes. */
    private static String words(String codes) {
        return codes.isEmpty() ? null : Arrays.stream(codes.split(",", -1)).map(S57Attributes::word).collect(Collectors.joining(", "));
    }

    private static String word(String code) {
        String digits = code.strip();
        if (digits.matches("[0-9]{1,2}")) {
            int number = Integer.parseInt(digits);
            if (number >= 1 && number <= SURFACES.size()) {
                return SURFACES.get(number - 1);
            }
        }
        return digits;
    }
}
