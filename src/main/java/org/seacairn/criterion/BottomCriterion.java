package org.seacairn.criterion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.InputException;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PolygonScan;
import org.seacairn.grid.Window;
import org.seacairn.plan.SitingPlan.Bottom;
import org.seacairn.plan.SitingPlan.BottomClass;

/**
 * Bottom type: the class of the polygon that holds the cell centre; where polygons overlap, the least
 * suitable class wins (of equal ones, the later in the plan).
 */
public final class BottomCriterion implements Criterion {
    private static final int UNMAPPED = -1;

    private final Bottom bottom;
    private final PolygonScan scan;
    private final int unsuitable;
    private final int unmapped;

    /**
     * @throws InputException if no polygon has the attribute with the class, or one on the grid has a class
     *     that the plan does not name
     */
    public BottomCriterion(Bottom bottom, WorkingLayer layer, GridGeometry grid, Reasons reasons) {
        this.bottom = bottom;
        this.unsuitable = reasons.bit(Reasons.BOTTOM_UNSUITABLE);
        this.unmapped = reasons.bit(Reasons.BOTTOM_UNMAPPED);
        layer.withoutAttribute(bottom.classAttribute()).ifPresent(problem -> {
            throw new InputException(bottom.source().file().getFileName() + ", class of the bottom (line "
                    + bottom.source().line() + " of the plan): " + problem);
        });
        List<BottomClass> classes = bottom.classes();
        Map<String, Integer> unknown = new TreeMap<>();
        List<List<Geometry>> byClass = new ArrayList<>();
        classes.forEach(c -> byClass.add(new ArrayList<>()));
        for (WorkingLayer.Piece piece : layer.pieces()) {
            String name = className(bottom, piece.feature().attributes());
            int i = indexOf(classes, name);
            if (i >= 0) {
                byClass.get(i).add(piece.geometry());
            } else if (!name.isEmpty()) {
                unknown.merge(name, 1, Integer::sum);
            } else if (bottom.unmappedSuitability().isPresent() && piece.geometry().getDimension() == 2) {
                // It would be worth whatever unmapped ground is worth, and may be rock.
                throw new InputException(bottom.source().file().getFileName() + ", feature " + piece.feature().id()
                        + ": the polygon states no class (attribute " + bottom.classAttribute() + "), while the plan gives"
                        + " unmapped bottom a suitability; fill the class in, or set unmapped: exclude");
            }
        }
        if (!unknown.isEmpty()) {
            throw new InputException(bottom.source().file().getFileName() + ": the plan does not name the class "
                    + String.join(", ", unknown.keySet().stream().map(n -> "\"" + n + "\"").toList())
                    + " (attribute " + bottom.classAttribute() + "); add it under bottom: classes with a suitability or never");
        }
        // Painted from the most suitable to the least, so that the least suitable lies on top.
        int[] order = IntStream.range(0, classes.size()).boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> -classes.get(i).suitability().orElse(-1)))
                .mapToInt(i -> i).toArray();
        List<Geometry> polygons = new ArrayList<>();
        List<Integer> values = new ArrayList<>();
        for (int i : order) {
            for (Geometry g : byClass.get(i)) {
                polygons.add(g);
                values.add(i);
            }
        }
        this.scan = new PolygonScan(grid, polygons, values.stream().mapToInt(v -> v).toArray());
    }

    /** The class that a feature states, or empty text where it states none. */
    public static String className(Bottom bottom, Map<String, Object> attributes) {
        Object value = attributes.get(bottom.classAttribute());
        return value == null ? "" : value.toString().strip();
    }

    private static int indexOf(List<BottomClass> classes, String name) {
        for (int i = 0; i < classes.size(); i++) {
            if (classes.get(i).name().equals(name)) {
                return i;
            }
        }
        return -1;
    }

    @Override
    public void rule(Tile tile, int[] reasons) {
        float[] classes = classes(tile);
        for (int i = 0; i < classes.length; i++) {
            int c = (int) classes[i];
            if (c == UNMAPPED) {
                reasons[i] |= bottom.unmappedSuitability().isEmpty() ? unmapped : 0;
            } else if (bottom.classes().get(c).suitability().isEmpty()) {
                reasons[i] |= unsuitable;
            }
        }
    }

    @Override
    public void suitability(Tile tile, int[] cells, int count, double[] into) {
        double[] byClass = bottom.classes().stream().mapToDouble(c -> c.suitability().orElse(0)).toArray();
        double none = bottom.unmappedSuitability().orElse(0);
        float[] classes = classes(tile);
        for (int i = 0; i < count; i++) {
            int c = (int) classes[cells[i]];
            into[i] = c == UNMAPPED ? none : byClass[c];
        }
    }

    /** The class at one cell, or empty text where none is mapped. */
    public String classAt(int col, int row) {
        return classes(new Window(col, row, 1, 1))[0];
    }

    /** The classes of a window, row by row, empty text where none is mapped. */
    public String[] classes(Window window) {
        return Arrays.stream(painted(window)).mapToObj(c -> c == UNMAPPED ? "" : bottom.classes().get(c).name())
                .toArray(String[]::new);
    }

    private int[] painted(Window window) {
        int[] painted = new int[window.cells()];
        Arrays.fill(painted, UNMAPPED);
        scan.paint(window, painted);
        return painted;
    }

    /** Index of each cell's class in the plan, below 0 where none is mapped. */
    float[] classes(Tile tile) {
        return tile.once(this, () -> {
            int[] painted = painted(tile.outer());
            float[] classes = new float[painted.length];
            for (int i = 0; i < painted.length; i++) {
                classes[i] = painted[i];
            }
            return classes;
        });
    }
}
