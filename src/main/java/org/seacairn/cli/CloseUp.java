package org.seacairn.cli;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.export.FeatureTable;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/**
 * The ground about what was laid: on a map of the whole grid a release point and its landing circle would be one dot. A map of it
 * is drawn from its own cells, with scale bar, graticule and contours to suit.
 */
final class CloseUp {
    /** Least width and height in metres: a landing circle fills a tenth of it or less, and what is kept off nearby is still in sight. */
    private static final double LEAST_M = 1500;
    /** Ground on each side, by the longer side of what was laid. */
    private static final double AROUND = 0.3;

    private CloseUp() {}

    /** @return cells of the grid; all of them where nothing was laid */
    static Window of(List<FeatureTable<?>> tables, GridGeometry grid) {
        CoordinateTransform toGrid = Crs.WGS84.to(grid.crs());
        Envelope laid = new Envelope();
        tables.forEach(table -> add(laid, table, toGrid));
        if (laid.isNull()) {
            return grid.whole();
        }
        double aroundM = AROUND * Math.max(laid.getWidth(), laid.getHeight());
        laid.expandBy(Math.max(aroundM, (LEAST_M - laid.getWidth()) / 2), Math.max(aroundM, (LEAST_M - laid.getHeight()) / 2));
        int col = clamp(Math.floor((laid.getMinX() - grid.west()) / grid.cellM()), grid.cols() - 1);
        int row = clamp(Math.floor((grid.north() - laid.getMaxY()) / grid.cellM()), grid.rows() - 1);
        int endCol = clamp(Math.ceil((laid.getMaxX() - grid.west()) / grid.cellM()), grid.cols());
        int endRow = clamp(Math.ceil((grid.north() - laid.getMinY()) / grid.cellM()), grid.rows());
        return new Window(col, row, Math.max(1, endCol - col), Math.max(1, endRow - row));
    }

    private static <T> void add(Envelope laid, FeatureTable<T> table, CoordinateTransform toGrid) {
        for (T row : table.rows()) {
            Geometry lonLat = table.geometry().apply(row);
            for (Coordinate c : lonLat.getCoordinates()) {
                laid.expandToInclude(toGrid.apply(c.x, c.y));
            }
        }
    }

    private static int clamp(double cell, int most) {
        return (int) Math.max(0, Math.min(most, cell));
    }
}
