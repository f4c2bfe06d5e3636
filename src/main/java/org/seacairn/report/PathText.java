package org.seacairn.report;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** The data of an SVG path (SVG 1.1, section 8.3): relative steps of whole tenths or hundredths, whose errors do not add up. */
final class PathText {
    private final StringBuilder out = new StringBuilder();
    private final int decimals;
    private final long scale;
    private long lastX;
    private long lastY;

    /** @param decimals 1 or 2 */
    PathText(int decimals) {
        this.decimals = decimals;
        this.scale = Math.round(Math.pow(10, decimals));
    }

    /** Lines, and rings as closed ones; to a tenth of a unit, a small geometry to a hundredth. */
    static String of(Geometry plane) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < plane.getNumGeometries(); i++) {
            Geometry part = plane.getGeometryN(i);
            PathText path = new PathText(MapPlane.tolerance(part) < 0.1 ? 2 : 1);
            path.add(part);
            text.append(path.out);
        }
        return text.toString();
    }

    private void add(Geometry geometry) {
        if (geometry instanceof Polygon polygon) {
            line(polygon.getExteriorRing().getCoordinates(), true);
            for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
                line(polygon.getInteriorRingN(i).getCoordinates(), true);
            }
        } else if (geometry instanceof LineString line) {
            line(line.getCoordinates(), line.isClosed());
        }
    }

    private void line(Coordinate[] vertices, boolean closed) {
        int n = closed ? vertices.length - 1 : vertices.length;
        for (int i = 0; i < n; i++) {
            long x = Math.round(vertices[i].x * scale);
            long y = Math.round(vertices[i].y * scale);
            if (i == 0) {
                step('M', x, y);
            } else if (x != lastX || y != lastY) {
                step('l', x - lastX, y - lastY);
            }
            lastX = x;
            lastY = y;
        }
        out.append(closed ? "z" : "");
        if (closed && n > 0) {
            lastX = Math.round(vertices[0].x * scale);
            lastY = Math.round(vertices[0].y * scale);
        }
    }

    private void step(char command, long x, long y) {
        out.append(command).append(number(x)).append(y < 0 ? "" : " ").append(number(y));
    }

    /** Whole units of the last decimal as text, without trailing zeros. */
    private String number(long units) {
        String digits = Long.toString(Math.abs(units));
        if (digits.length() <= decimals) {
            digits = "0".repeat(decimals + 1 - digits.length()) + digits;
        }
        String text = digits.substring(0, digits.length() - decimals);
        String rest = digits.substring(digits.length() - decimals).replaceFirst("0+$", "");
        return (units < 0 ? "-" : "") + text + (rest.isEmpty() ? "" : "." + rest);
    }

    /** A number to so many decimals, without trailing zeros. */
    static String number(double value, int decimals) {
        PathText text = new PathText(decimals);
        return text.number(Math.round(value * text.scale));
    }
}
