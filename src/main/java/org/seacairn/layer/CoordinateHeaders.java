package org.seacairn.layer;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Which names of columns mean coordinates: words of several languages for longitude, latitude, easting and
 * northing, in any letter case, with or without accents, with units or the like beside them ({@code Geogr. Länge [°]},
 * {@code GPS lat (ddm)}). A name with a word that is not known here means something else. Words are those of
 * everyday tables (common practice, no source).
 */
final class CoordinateHeaders {
    enum Kind { DEGREES, METRES, EITHER }

    /**
     * Words for one pair of axes in one language.
     *
     * @param leastForm of a name to count at all
     */
    private record Family(Kind kind, Set<String> x, Set<String> y, int leastForm) {
        Family(Kind kind, String x, String y) {
            this(kind, words(x), words(y), 0);
        }
    }

    /** A family of which the table has both axes goes before those below it: a German table of wrecks may give their length and breadth too. */
    private static final List<Family> FAMILIES = List.of(
            new Family(Kind.DEGREES, "longitude", "latitude"), // English, French, Portuguese
            new Family(Kind.DEGREES, "longitude lon long lng", "latitude lat"),
            new Family(Kind.DEGREES, "longitud", "latitud"), // Spanish, Swedish
            new Family(Kind.DEGREES, "longitudine", "latitudine"), // Italian
            new Family(Kind.DEGREES, "langengrad laengengrad", "breitengrad"), // German
            new Family(Kind.DEGREES, "lange laenge", "breite"),
            new Family(Kind.DEGREES, "lengtegraad", "breedtegraad"), // Dutch
            new Family(Kind.DEGREES, "lengdegrad laengdegrad", "breddegrad"), // Norwegian, Danish
            new Family(Kind.DEGREES, "langdgrad", "breddgrad"), // Swedish
            new Family(Kind.METRES, "easting", "northing"),
            new Family(Kind.METRES, "east", "north"),
            new Family(Kind.METRES, "ostwert", "nordwert"), // German
            new Family(Kind.METRES, "rechtswert", "hochwert"),
            new Family(Kind.METRES, "este leste", "norte"), // Spanish, Portuguese
            new Family(Kind.METRES, "est ost oest", "nord"), // French, Italian, German, Swedish, Norwegian, Danish
            new Family(Kind.METRES, "oost", "noord"), // Dutch
            new Family(Kind.METRES, words("x"), words("y"), 1),
            new Family(Kind.EITHER, "x", "y"));

    /** Where nothing, decimal degrees, minutes or seconds are told. */
    private static final int FORMS = 4;

    /** What may stand beside the word, and the form that it tells. A place in minutes may be the rounded copy of one in decimals. */
    private static final Map<Kind, Map<String, Integer>> BESIDE = Map.of(
            Kind.DEGREES, forms("gps geo geogr geographic geographische geografisch geografica wgs84 wgs 84 e n",
                    "deg degree degrees dd dec decimal grad grade grader graden grados gradi graus degres", "ddm dmm dm", "dms gms"),
            Kind.METRES, forms("utm coord coordinate", "m metre metres meter meters metros metri"),
            Kind.EITHER, forms("point coord coordinate"));

    private static final Set<String> MINUTES = words("min mins minute minutes minuten minutos minuti minuter sec secs second seconds sek sekunden segundos secondi secondes");
    private static final Set<String> HEMISPHERE = words("hemisphere hemi hem dir direction ref ns ew");
    private static final Set<String> HEMISPHERE_ALONE = words("n_s s_n ns e_w w_e ew o_w e_o hemisphere");
    private static final Set<String> NEGATIVE = words("w west ouest oeste ovest s south sud sur sul");

    private CoordinateHeaders() {}

    /** The columns of x and y of one kind, those in decimals first; empty if there is no such pair. */
    static Optional<CsvColumns> pair(List<String> header, Kind kind) {
        List<List<String>> names = header.stream().map(CoordinateHeaders::split).toList();
        for (Family family : FAMILIES) {
            if (family.kind == kind) {
                int[] x = byForm(names, family, family.x);
                int[] y = byForm(names, family, family.y);
                for (int form = 0; form < FORMS; form++) {
                    if (x[form] >= 0 && y[form] >= 0) {
                        return Optional.of(new CsvColumns(x[form], y[form]));
                    }
                }
                int anyX = first(x);
                int anyY = first(y);
                if (anyX >= 0 && anyY >= 0) {
                    return Optional.of(new CsvColumns(anyX, anyY));
                }
            }
        }
        return Optional.empty();
    }

    /** Whether a name means an easting. */
    static boolean isEasting(String name) {
        return FAMILIES.stream().anyMatch(family -> family.kind == Kind.METRES && form(split(name), family, family.x) >= 0);
    }

    /** A column that holds the minutes, seconds or hemisphere of a coordinate whose degrees stand in another. */
    static Optional<String> partOfCoordinate(List<String> header) {
        return header.stream().filter(name -> {
            List<String> words = split(name);
            boolean least = words.contains("min") && header.stream().anyMatch(other -> split(other).equals(replaced(words, "min", "max")));
            return HEMISPHERE_ALONE.contains(String.join("_", words))
                    || ofDegrees(words) && !least && words.stream().anyMatch(word -> MINUTES.contains(word) || HEMISPHERE.contains(word));
        }).findFirst();
    }

    /** A column of coordinates that count westward or southward, as {@code Longitude (W)}. */
    static Optional<String> countedBackward(List<String> header) {
        return header.stream().filter(name -> {
            List<String> words = split(name);
            return ofDegrees(words) && words.stream().anyMatch(NEGATIVE::contains);
        }).findFirst();
    }

    private static boolean ofDegrees(List<String> words) {
        Predicate<Family> named = family -> family.kind == Kind.DEGREES
                && words.stream().anyMatch(word -> family.x.contains(word) || family.y.contains(word));
        return FAMILIES.stream().anyMatch(named);
    }

    /** For each form the first column of it, or -1. */
    private static int[] byForm(List<List<String>> names, Family family, Set<String> words) {
        int[] columns = new int[FORMS];
        Arrays.fill(columns, -1);
        for (int i = 0; i < names.size(); i++) {
            int form = form(names.get(i), family, words);
            if (form >= 0 && columns[form] < 0) {
                columns[form] = i;
            }
        }
        return columns;
    }

    /** The form that a name tells, or -1 if it means something else. */
    private static int form(List<String> name, Family family, Set<String> words) {
        int form = 0;
        int found = 0;
        for (String word : name) {
            if (words.contains(word)) {
                found++;
            } else {
                Integer told = BESIDE.get(family.kind).get(word);
                if (told == null) {
                    return -1;
                }
                form = Math.max(form, told);
            }
        }
        return found == 1 && form >= family.leastForm ? form : -1;
    }

    private static int first(int[] columns) {
        return Arrays.stream(columns).filter(column -> column >= 0).findFirst().orElse(-1);
    }

    /** {@code Geogr. Länge [°]} becomes geogr, lange; {@code decimalLatitude} becomes decimal, latitude. */
    private static List<String> split(String name) {
        String apart = name.replaceAll("(?<=\\p{Ll})(?=\\p{Lu})|(?<=\\p{Lu})(?=\\p{Lu}\\p{Ll})", " ");
        String plain = Normalizer.normalize(apart, Normalizer.Form.NFD).replaceAll("\\p{M}+", "").toLowerCase(Locale.ROOT)
                .replace("ø", "o").replace("æ", "ae");
        return Arrays.stream(plain.split("[^\\p{L}\\p{N}]+")).filter(word -> !word.isEmpty()).toList();
    }

    private static List<String> replaced(List<String> words, String from, String to) {
        return words.stream().map(word -> word.equals(from) ? to : word).toList();
    }

    private static Set<String> words(String text) {
        return Set.of(text.split(" "));
    }

    private static Map<String, Integer> forms(String... wordsByForm) {
        Map<String, Integer> forms = new HashMap<>();
        for (int form = 0; form < wordsByForm.length; form++) {
            for (String word : words(wordsByForm[form])) {
                forms.put(word, form);
            }
        }
        return Map.copyOf(forms);
    }
}
