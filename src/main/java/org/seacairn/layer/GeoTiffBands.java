package org.seacairn.layer;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.seacairn.InputException;

/**
 * What GDAL's metadata tag (42112) says of the bands of a GeoTIFF, which are counted from 0 there.
 *
 * @param count how many bands there are
 * @param alpha the band that hides cells, or 0 for none
 * @param metadata text of the tag, empty where there is none
 */
record GeoTiffBands(Path file, int count, int alpha, String metadata) {
    /** A band: what its numbers are multiplied with, and what is added then. */
    record Band(int index, double scale, double offset) {}

    Band band(int index) {
        return new Band(index, item(index, "scale").map(text -> number("scale", text)).orElse(1.0),
                item(index, "offset").map(text -> number("offset", text)).orElse(0.0));
    }

    /** Whether the first band has a scale or an offset. */
    boolean isScaled() {
        return item(0, "scale").or(() -> item(0, "offset")).isPresent();
    }

    /** Unit of the first band's values, or empty. */
    Optional<String> unit() {
        return item(0, "unittype");
    }

    /** The band that is called uncertainty, in the unit of the first: what is in another could not be set against it. */
    Optional<Band> uncertainty() {
        return IntStream.range(1, count)
                .filter(index -> item(index, "description").orElse("").toLowerCase(Locale.ROOT).matches("(vertical )?uncertainty")
                        && item(index, "unittype").equals(unit()))
                .mapToObj(this::band).findFirst();
    }

    /** What is taken of several bands, one line. */
    List<String> notes() {
        if (count == 1) {
            return List.of();
        }
        String names = IntStream.range(0, count).mapToObj(index -> index == alpha && alpha > 0 ? "alpha"
                : item(index, "description").orElse("unnamed")).collect(Collectors.joining(", "));
        return List.of("it has " + count + " bands (" + names + "); the first is taken as the bathymetry, "
                + uncertainty().map(band -> "band " + (band.index + 1) + " as its uncertainty, ").orElse("")
                + (alpha > 0 ? "cells that the alpha band hides are no-data, and no other band is used" : "and no other is used"));
    }

    private Optional<String> item(int band, String role) {
        Matcher m = Pattern.compile("<Item (?=[^>]*sample=\"" + band + "\")[^>]*role=\"" + role + "\"[^>]*>([^<]*)</Item>")
                .matcher(metadata);
        return m.find() ? Optional.of(m.group(1).strip()) : Optional.empty();
    }

    private double number(String what, String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw new InputException(file.getFileName() + ": its metadata states the " + what + " \"" + XmlElements.shown(text)
                    + "\", which is no number; write the file again", e);
        }
    }
}
