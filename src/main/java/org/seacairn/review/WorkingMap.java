package org.seacairn.review;

import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;

/** Places between longitude and latitude on the working CRS's datum, the working grid, and WGS 84. */
final class WorkingMap {
    /** Farther from the grid's middle than this a projection may give numbers that mean nothing. */
    private static final double SENSIBLE_DEG = 45;

    private final GridGeometry grid;
    private final CoordinateTransform toMap;
    private final CoordinateTransform toLonLat;
    private final CoordinateTransform toWgs84;
    private final double middleLongitudeDeg;

    WorkingMap(GridGeometry grid) {
        this.grid = grid;
        Crs geographic = grid.crs().geographic();
        this.toMap = geographic.to(grid.crs());
        this.toLonLat = grid.crs().to(geographic);
        this.toWgs84 = geographic.to(Crs.WGS84);
        this.middleLongitudeDeg = toLonLat.apply((grid.west() + grid.east()) / 2, (grid.south() + grid.north()) / 2).x;
    }

    GridGeometry grid() {
        return grid;
    }

    /** Easting and northing; empty where the working CRS makes no sense of the place. */
    Optional<Coordinate> onMap(double lonDeg, double latDeg) {
        double turnedDeg = turned(lonDeg);
        if (!(Math.abs(turnedDeg - middleLongitudeDeg) <= SENSIBLE_DEG) || !(Math.abs(latDeg) < 90)) {
            return Optional.empty();
        }
        try {
            return Optional.of(toMap.apply(turnedDeg, latDeg));
        } catch (InputException e) {
            return Optional.empty();
        }
    }

    /** The longitude within half a turn of the grid's middle. */
    double turned(double lonDeg) {
        return lonDeg - 360 * Math.rint((lonDeg - middleLongitudeDeg) / 360);
    }

    boolean isOnGrid(double lonDeg, double latDeg) {
        return onMap(lonDeg, latDeg).filter(p -> p.x >= grid.west() && p.x <= grid.east()
                && p.y >= grid.south() && p.y <= grid.north()).isPresent();
    }

    /** The centre of a cell. */
    Coordinate lonLat(int col, int row) {
        return toLonLat.apply(grid.centreX(col), grid.centreY(row));
    }

    Coordinate middle() {
        return toLonLat.apply((grid.west() + grid.east()) / 2, (grid.south() + grid.north()) / 2);
    }

    Coordinate wgs84(double lonDeg, double latDeg) {
        Coordinate moved = toWgs84.apply(lonDeg, latDeg);
        moved.x -= 360 * Math.rint(moved.x / 360);
        return moved;
    }
}
