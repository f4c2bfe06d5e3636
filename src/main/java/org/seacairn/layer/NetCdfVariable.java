package org.seacairn.layer;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * A variable of a NetCDF file, whichever way the file stores it.
 *
 * @param axes names of its dimensions; empty text where the file does not tell
 * @param shape length of each dimension
 * @param attributes a String or a double[] each
 * @param number how its numbers are stored, or empty if it holds text
 * @param array opens its numbers
 */
record NetCdfVariable(String name, List<String> axes, int[] shape, Map<String, Object> attributes,
        Optional<StoredNumber> number, Supplier<StoredArray> array) {

    /** Text without white space about it; empty if there is none. */
    String text(String attribute) {
        return attributes.get(attribute) instanceof String text ? text.strip() : "";
    }

    /** The numbers of an attribute; none if there is none. */
    double[] numbers(String attribute) {
        return attributes.get(attribute) instanceof double[] numbers ? numbers : new double[0];
    }

    /** The first number of an attribute. */
    double number(String attribute, double otherwise) {
        double[] numbers = numbers(attribute);
        return numbers.length > 0 ? numbers[0] : otherwise;
    }

    /** Whether it is a grid: two dimensions that count, and no length but 1 before them. */
    boolean isGrid() {
        for (int i = 0; i < shape.length - 2; i++) {
            if (shape[i] != 1) {
                return false;
            }
        }
        return number.isPresent() && shape.length >= 2 && shape[shape.length - 1] > 1 && shape[shape.length - 2] > 1;
    }

    /** Name of the dimension along which columns count. */
    String xAxis() {
        return axes.get(axes.size() - 1);
    }

    /** Name of the dimension along which rows count. */
    String yAxis() {
        return axes.get(axes.size() - 2);
    }

    /** Whether it counts from west to east, as the CF conventions let a coordinate say so (sections 4.1, 4.2, 5.6). */
    boolean isX() {
        return text("axis").equals("X") || List.of("longitude", "projection_x_coordinate").contains(text("standard_name"))
                || text("units").matches("degrees?_?(east|E)");
    }

    /** Whether it counts from south to north. */
    boolean isY() {
        return text("axis").equals("Y") || List.of("latitude", "projection_y_coordinate").contains(text("standard_name"))
                || text("units").matches("degrees?_?(north|N)");
    }
}
