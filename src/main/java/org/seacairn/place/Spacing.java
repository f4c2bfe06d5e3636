package org.seacairn.place;

import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.grid.GridGeometry;

/** Whether two cells stand nearer than the least distance between sites, by geodesic distance. */
final class Spacing {
    private final GridGeometry grid;
    private final double apartM;
    private final Geodesic geodesic;
    private final CoordinateTransform toLonLat;
    private final double clearlyApartOnMap;

    /** @param largestScaleError of the grid's map, for telling clear cases without a geodesic */
    Spacing(GridGeometry grid, double apartM, double largestScaleError) {
        this.grid = grid;
        this.apartM = apartM;
        this.geodesic = grid.crs().geodesic();
        this.toLonLat = grid.crs().to(grid.crs().geographic());
        this.clearlyApartOnMap = apartM * (1 + 2 * largestScaleError) + 1;
    }

    double apartM() {
        return apartM;
    }

    /** Cells beyond which a cell is clearly apart, along a row or column. */
    int reachCells() {
        return (int) Math.ceil(clearlyApartOnMap / grid.cellM());
    }

    Pick pick(int col, int row, double score) {
        double x = grid.centreX(col);
        double y = grid.centreY(row);
        Coordinate lonLat = toLonLat.apply(x, y);
        return new Pick(col, row, x, y, lonLat.x, lonLat.y, score);
    }

    boolean tooNear(Pick a, Pick b) {
        double dx = Math.abs(a.x() - b.x());
        double dy = Math.abs(a.y() - b.y());
        if (dx > clearlyApartOnMap || dy > clearlyApartOnMap || dx * dx + dy * dy > clearlyApartOnMap * clearlyApartOnMap) {
            return false;
        }
        return geodesic.Inverse(a.latitudeDeg(), a.longitudeDeg(), b.latitudeDeg(), b.longitudeDeg(),
                GeodesicMask.DISTANCE).s12 < apartM;
    }

    boolean tooNearAny(Pick a, List<Pick> others) {
        for (Pick b : others) {
            if (tooNear(a, b)) {
                return true;
            }
        }
        return false;
    }
}
