package org.seacairn.place;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.seacairn.geodesy.Crs;

/** Cells about an invented stone, without a score engine behind them. */
final class RingScenes {
    private RingScenes() {}

    /** How far out cells lie, and how. */
    record Shape(double innerM, double outerM, double cellM, double fromDeg, double toDeg) {}

    /**
     * The cells of a square grid about a stone at its crossing, in random order.
     *
     * @param levels of score, 0 for a continuum
     * @param most cells are kept
     */
    static List<RingCell> grid(Random random, Shape shape, int levels, int most) {
        double latitude = -75 + 150 * random.nextDouble();
        double longitude = random.nextInt(5) == 0 ? 180 : -180 + 360 * random.nextDouble();
        double shift = random.nextInt(3) == 0 ? random.nextDouble() : random.nextInt(2) / 2.0;
        List<RingCell> cells = new ArrayList<>();
        int reach = (int) Math.ceil(shape.outerM / shape.cellM) + 1;
        for (int row = -reach; row <= reach; row++) {
            for (int col = -reach; col <= reach; col++) {
                double east = (col + shift) * shape.cellM;
                double north = -(row + shift) * shape.cellM;
                double r = Math.hypot(east, north);
                GeodesicData at = Geodesic.WGS84.Direct(latitude, longitude, Math.toDegrees(Math.atan2(east, north)), r);
                GeodesicData ray = Geodesic.WGS84.Inverse(latitude, longitude, at.lat2, at.lon2);
                double bearing = (ray.azi1 + 360) % 360;
                if (r >= shape.innerM && r <= shape.outerM && bearing >= shape.fromDeg && bearing <= shape.toDeg) {
                    double score = levels == 0 ? random.nextFloat() : (1 + random.nextInt(levels)) / (float) levels;
                    cells.add(new RingCell(new Pick(col, row, east, north, at.lon2, at.lat2, score), ray.s12, ray.azi1, ray.s12));
                }
            }
        }
        Collections.shuffle(cells, random);
        return cells.subList(0, Math.min(most, cells.size()));
    }

    static RingCells cells(List<RingCell> cells, double apartM) {
        return new RingCells(cells, Crs.WGS84.geodesic(), apartM);
    }
}
