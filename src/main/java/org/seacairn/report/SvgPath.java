package org.seacairn.report;

import java.awt.geom.Path2D;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the data of an SVG path (SVG 1.1, section 8.3): lines, and of curves the half circles that marks are drawn with. */
final class SvgPath {
    /** Control points of a quarter of a circle, as a share of the radius: 4/3 (√2 − 1). */
    private static final double QUARTER = 4.0 / 3 * (Math.sqrt(2) - 1);
    private static final Pattern TOKEN = Pattern.compile("[A-Za-z]|[-+]?(?:\\d+\\.?\\d*|\\.\\d+)");

    private final Matcher tokens;
    private final Path2D.Double path = new Path2D.Double(Path2D.WIND_EVEN_ODD);
    private boolean more;
    private double x;
    private double y;
    private double startX;
    private double startY;

    private SvgPath(String data) {
        tokens = TOKEN.matcher(data);
        more = tokens.find();
    }

    /** @throws IllegalArgumentException if the data hold what our own never do */
    static Path2D.Double of(String data) {
        return new SvgPath(data).read();
    }

    private Path2D.Double read() {
        char command = ' ';
        while (more) {
            if (Character.isLetter(tokens.group().charAt(0))) {
                command = tokens.group().charAt(0);
                more = tokens.find();
            } else if (command == 'M' || command == 'm') {
                command = command == 'M' ? 'L' : 'l';
            } else if (command == 'z' || command == 'Z') {
                throw new IllegalArgumentException("a number after " + command);
            }
            step(command);
        }
        return path;
    }

    private void step(char command) {
        boolean relative = Character.isLowerCase(command);
        double fromX = relative ? x : 0;
        double fromY = relative ? y : 0;
        switch (Character.toUpperCase(command)) {
            case 'M' -> {
                x = fromX + number();
                y = fromY + number();
                startX = x;
                startY = y;
                path.moveTo(x, y);
            }
            case 'L' -> line(fromX + number(), fromY + number());
            case 'H' -> line(fromX + number(), y);
            case 'V' -> line(x, fromY + number());
            case 'A' -> halfCircle(fromX);
            case 'Z' -> {
                path.closePath();
                x = startX;
                y = startY;
            }
            default -> throw new IllegalArgumentException("no path command " + command + " here");
        }
    }

    private void line(double toX, double toY) {
        x = toX;
        y = toY;
        path.lineTo(x, y);
    }

    /** From one end of a level diameter to the other. */
    private void halfCircle(double fromX) {
        double r = number();
        double ry = number();
        double turn = number();
        number();
        boolean clockwise = number() == 1;
        double toX = fromX + number();
        double dy = number();
        if (r != ry || turn != 0 || dy != 0 || Math.abs(Math.abs(toX - x) - 2 * r) > 0.02) {
            throw new IllegalArgumentException("an arc that is no half circle");
        }
        double side = Math.signum(toX - x);
        double k = QUARTER * r;
        double middle = x + side * r;
        // Clockwise as it is seen leads over the top from left to right.
        double up = clockwise ? side : -side;
        path.curveTo(x, y - up * k, middle - side * k, y - up * r, middle, y - up * r);
        path.curveTo(middle + side * k, y - up * r, toX, y - up * k, toX, y);
        x = toX;
    }

    private double number() {
        if (!more || Character.isLetter(tokens.group().charAt(0))) {
            throw new IllegalArgumentException("a number is missing");
        }
        double value = Double.parseDouble(tokens.group());
        more = tokens.find();
        return value;
    }
}
