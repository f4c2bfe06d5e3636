package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;

/**
 * The text of a KML {@code coordinates} element: {@code longitude,latitude[,altitude]} with white space between
 * the places. White space about a comma, which KML does not allow and people write, joins what it parts;
 * where that leaves a doubt about which numbers belong together, the count of them is wrong and the text
 * is refused.
 */
final class KmlCoordinates {
    /** Google Earth writes longitudes past ±180 for what crosses the antimeridian. */
    private static final double WIDEST_LONGITUDE = 360;

    private final XmlElements xml;
    private final String text;
    private int line;
    private int at;

    private KmlCoordinates(XmlElements xml) {
        this.xml = xml;
        this.line = xml.line();
        this.text = xml.text();
    }

    /**
     * Reads the element in hand and goes to its end tag.
     *
     * @throws InputException naming the line of the place that is none
     */
    static Coordinate[] read(XmlElements xml) {
        return new KmlCoordinates(xml).places().toArray(Coordinate[]::new);
    }

    private List<Coordinate> places() {
        List<Coordinate> places = new ArrayList<>();
        List<String> numbers = new ArrayList<>(3);
        passSpace();
        while (at < text.length()) {
            int firstLine = line;
            numbers.clear();
            do {
                passSpace();
                numbers.add(number());
                passSpace();
            } while (passComma());
            try {
                places.add(place(numbers));
            } catch (InputException e) {
                throw xml.problem(firstLine, "coordinates: " + e.getMessage());
            }
        }
        return places;
    }

    private static Coordinate place(List<String> numbers) {
        if (numbers.size() < 2 || numbers.size() > 3) {
            throw new InputException("\"" + XmlElements.shown(String.join(",", numbers)) + "\" has " + numbers.size()
                    + (numbers.size() == 1 ? " number" : " numbers") + "; write longitude,latitude or longitude,latitude,altitude,"
                    + " with white space between places only");
        }
        if (numbers.size() == 3) {
            DegreeText.number("altitude", numbers.get(2));
        }
        return DegreeText.place(numbers.get(0), numbers.get(1), WIDEST_LONGITUDE);
    }

    private String number() {
        int from = at;
        while (at < text.length() && text.charAt(at) != ',' && !isSpace(text.charAt(at))) {
            at++;
        }
        return text.substring(from, at);
    }

    private boolean passComma() {
        boolean comma = at < text.length() && text.charAt(at) == ',';
        at += comma ? 1 : 0;
        return comma;
    }

    private void passSpace() {
        while (at < text.length() && isSpace(text.charAt(at))) {
            line += text.charAt(at) == '\n' ? 1 : 0;
            at++;
        }
    }

    private static boolean isSpace(char c) {
        return Character.isWhitespace(c) || Character.isSpaceChar(c) || c == '\u200b' || c == '\ufeff';
    }
}
