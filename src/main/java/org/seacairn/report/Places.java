package org.seacairn.report;

import org.seacairn.geodesy.CoordinateText;

/** Places as a chart plotter takes them: degrees and decimal minutes. */
final class Places {
    private Places() {}

    static String latitude(double degrees) {
        return CoordinateText.formatLatitudeDdm(degrees);
    }

    /** @param degrees any number of turns */
    static String longitude(double degrees) {
        return CoordinateText.formatLongitudeDdm(degrees - 360 * Math.rint(degrees / 360));
    }

    /** Latitude and longitude, neither of them parted by a line's end. */
    static void write(Html html, double longitudeDeg, double latitudeDeg) {
        html.element("span", latitude(latitudeDeg) + ",", "class", "place").text(" ")
                .element("span", longitude(longitudeDeg), "class", "place");
    }

    static String text(double longitudeDeg, double latitudeDeg) {
        return latitude(latitudeDeg) + ", " + longitude(longitudeDeg);
    }
}
