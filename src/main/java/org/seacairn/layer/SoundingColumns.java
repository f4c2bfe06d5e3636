package org.seacairn.layer;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * Which columns of a file of soundings hold x, y and the value: found by its header as {@link CsvColumns} does, or the first,
 * second and third of three where it has none.
 *
 * @param count columns in all
 * @param statedUnit unit that the header states for the value, or empty text
 * @param header whether the file has one
 */
record SoundingColumns(int x, int y, int value, int count, String statedUnit, boolean header) {
    /** Words for a level of the bottom in the languages of {@link CoordinateHeaders} (common practice, no source). */
    private static final Set<String> VALUES = Set.of("z", "depth", "depths", "elevation", "elev", "height", "altitude", "sounding", "soundings",
            "bathymetry", "bathy", "topo", "tiefe", "hohe", "hoehe", "profondeur", "profundidad", "profundidade", "profondita",
            "diepte", "dybde", "djup");

    /** @throws InputException without a place, if the columns cannot be told */
    static SoundingColumns find(List<String> first, LayerFile source, Optional<Crs> crs) {
        if (first.stream().allMatch(text -> !Double.isNaN(number(text)))) {
            return withoutHeader(first.size(), source);
        }
        CsvColumns places = CsvColumns.find(first, source, crs);
        int[] values = IntStream.range(0, first.size()).filter(i -> i != places.x() && i != places.y())
                .filter(i -> !words(first.get(i)).isEmpty() && VALUES.contains(words(first.get(i)).get(0))).toArray();
        if (values.length != 1) {
            throw new InputException((values.length == 0 ? "no column of depths among "
                    : Arrays.stream(values).mapToObj(i -> "\"" + XmlElements.shown(first.get(i)) + "\"").collect(Collectors.joining(" and "))
                            + " may all be the depth, among ")
                    + first.stream().map(name -> "\"" + XmlElements.shown(name) + "\"").collect(Collectors.joining(", "))
                    + "; name one column z, depth or elevation, and no other so");
        }
        return new SoundingColumns(places.x(), places.y(), values[0], first.size(), unit(words(first.get(values[0]))), true);
    }

    private static SoundingColumns withoutHeader(int count, LayerFile source) {
        if (source.xColumn().isPresent()) {
            throw new InputException("the file has no header line, and the plan names columns with \"x-column\" and \"y-column\";"
                    + " add a header line, or leave them out");
        }
        if (count != 3) {
            throw new InputException("has " + count + " columns and no header line; without one there must be x, y and z alone: add a"
                    + " header line such as easting, northing, depth");
        }
        return new SoundingColumns(0, 1, 2, 3, "", false);
    }

    /** The unit that stands behind the word for the depth, as in {@code Depth (US survey ft)}. */
    private static String unit(List<String> name) {
        String rest = String.join(" ", name.subList(1, name.size()));
        OptionalDouble metres = UnitName.metres(rest);
        return metres.isPresent() ? rest : "";
    }

    private static List<String> words(String name) {
        String plain = Normalizer.normalize(name, Normalizer.Form.NFD).replaceAll("\\p{M}+", "").toLowerCase(Locale.ROOT);
        return Arrays.stream(plain.split("[^\\p{L}\\p{N}]+")).filter(word -> !word.isEmpty()).toList();
    }

    /** The text between delimiters; at a blank any white space counts as one. */
    static List<String> split(String line, char delimiter) {
        List<String> fields = new ArrayList<>();
        int from = 0;
        for (int i = 0; i <= line.length(); i++) {
            boolean end = i == line.length() || (delimiter == ' ' ? line.charAt(i) <= ' ' : line.charAt(i) == delimiter);
            if (end) {
                if (delimiter != ' ' || i > from) {
                    fields.add(bare(line.substring(from, i)));
                }
                from = i + 1;
            }
        }
        while (fields.size() > 1 && fields.get(fields.size() - 1).isEmpty()) {
            fields.remove(fields.size() - 1);
        }
        return fields;
    }

    private static String bare(String field) {
        String text = field.strip();
        return text.length() > 1 && text.charAt(0) == '"' && text.charAt(text.length() - 1) == '"'
                ? text.substring(1, text.length() - 1).strip() : text;
    }

    /** The delimiter of a line of numbers: semicolon, tab, comma or white space. Between blanks a comma is the decimal sign. */
    static char delimiter(String line) {
        if (line.indexOf(';') >= 0) {
            return ';';
        }
        if (line.indexOf('\t') >= 0) {
            return '\t';
        }
        List<String> words = split(line, ' ');
        boolean parted = words.stream().anyMatch(word -> word.startsWith(",") || word.endsWith(","));
        return line.indexOf(',') >= 0 && (words.size() < 3 || parted) ? ',' : ' ';
    }

    /** A finite number in plain or scientific form with a point or a comma for its decimals; NaN for anything else. */
    static double number(String text) {
        boolean comma = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            comma |= c == ',';
            // Java would also take 5f, 0x1p3, NaN and Infinity for numbers.
            if (!(c >= '0' && c <= '9') && c != '.' && c != '-' && c != '+' && c != 'e' && c != 'E' && c != ',') {
                return Double.NaN;
            }
        }
        try {
            double number = Double.parseDouble(comma ? text.replace(',', '.') : text);
            return Double.isInfinite(number) ? Double.NaN : number;
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }
}
