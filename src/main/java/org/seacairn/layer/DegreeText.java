package org.seacairn.layer;

import java.util.regex.Pattern;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;

/** A place in decimal degrees as GPX and KML write it. Problems are thrown without a place. */
final class DegreeText {
    /** A number with or without decimals and a short exponent; neither NaN, nor infinity, nor what only Java reads. */
    static final Pattern DECIMAL = Pattern.compile("[+-]?(?:\\d++(?:\\.\\d*+)?+|\\.\\d++)(?:[eE][+-]?\\d{1,2})?");

    private DegreeText() {}

    /**
     * @param widestLongitude 180, or more where the format lets longitudes run on beyond the antimeridian
     * @throws InputException if one of them is missing, no number or out of range
     */
    static Coordinate place(String longitude, String latitude, double widestLongitude) {
        double x = number("longitude", longitude);
        double y = number("latitude", latitude);
        boolean swapWouldDo = Math.abs(y) <= widestLongitude && Math.abs(x) <= 90;
        if (Math.abs(y) > 90) {
            throw outside("latitude", latitude, 90, swapWouldDo);
        }
        if (Math.abs(x) > widestLongitude) {
            throw outside("longitude", longitude, (int) widestLongitude, false);
        }
        return new Coordinate(x + 0.0, y + 0.0);
    }

    static double number(String what, String text) {
        if (text == null || text.isBlank()) {
            throw new InputException("has no " + what + "; add it or delete the place");
        }
        if (!DECIMAL.matcher(text.strip()).matches()) {
            throw new InputException("the " + what + " \"" + XmlElements.shown(text) + "\" is no number; write decimal degrees like -27.2437");
        }
        return Double.parseDouble(text.strip());
    }

    private static InputException outside(String what, String text, int limit, boolean swapWouldDo) {
        return new InputException("the " + what + " \"" + XmlElements.shown(text) + "\" lies outside ±" + limit + " degrees; "
                + (swapWouldDo ? "it reads well the other way round, so longitude and latitude look swapped" : "correct it"));
    }
}
