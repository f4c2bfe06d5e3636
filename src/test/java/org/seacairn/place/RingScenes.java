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

    /**
     * The cells of a square grid about a stone.
     *
     * @param levels of score, 0 for a continuum
     * @param bestWithin whether the score falls to a tenth with the distance, and every other cell lies far in
     * @param most so many cells are kept, in random order
     */
    record Shape(double innerM, double outerM, double cellM, double fromDeg, double toDeg, int levels, boolean bestWithin, int most) {

        List<RingCell> cells(Random random) {
            double latitude = -75 + 150 * random.nextDouble();
            double longitude = random.nextInt(5) == 0 ? 180 : -180 + 360 * random.nextDouble();
            List<RingCell> cells = new ArrayList<>();
            for (int[] place : places(random)) {
                double east = place[0] * cellM / 4;
                double north = -place[1] * cellM / 4;
                double r = Math.hypot(east, north);
                GeodesicData at = Geodesic.WGS84.Direct(latitude, longitude, Math.toDegrees(Math.atan2(east, north)), r);
                GeodesicData ray = Geodesic.WGS84.Inverse(latitude, longitude, at.lat2, at.lon2);
                double score = levels == 0 ? random.nextDouble() : (1 + random.nextInt(levels)) / (double) levels;
                score *= bestWithin ? 1 - 0.9 * r / outerM : 1;
                cells.add(new RingCell(new Pick(place[0], place[1], east, north, at.lon2, at.lat2, (float) score), ray.s12, ray.azi1, ray.s12));
            }
            return cells;
        }

        /** Columns and rows in quarters of a cell. The stone lies on a cell's centre, its corner or neither. */
        private List<int[]> places(Random random) {
            List<int[]> within = new ArrayList<>();
            List<int[]> further = new ArrayList<>();
            int shift = random.nextInt(4);
            int reach = (int) Math.ceil(outerM / cellM) + 1;
            for (int row = -reach; row <= reach; row++) {
                for (int col = -reach; col <= reach; col++) {
                    double east = (col + shift / 4.0) * cellM;
                    double north = -(row + shift / 4.0) * cellM;
                    double r = Math.hypot(east, north);
                    double bearing = (Math.toDegrees(Math.atan2(east, north)) + 360) % 360;
                    if (r >= innerM && r <= outerM && bearing >= fromDeg && bearing <= toDeg) {
                        (bestWithin && r < innerM + (outerM - innerM) / 4 ? within : further).add(new int[] {4 * col + shift, 4 * row + shift});
                    }
                }
            }
            Collections.shuffle(within, random);
            Collections.shuffle(further, random);
            List<int[]> kept = new ArrayList<>(within.subList(0, Math.min(most / 2, within.size())));
            kept.addAll(further.subList(0, Math.min(most - kept.size(), further.size())));
            Collections.shuffle(kept, random);
            return kept;
        }
    }

    static RingCells cells(List<RingCell> cells, double apartM) {
        return new RingCells(cells, Crs.WGS84.geodesic(), apartM);
    }
}
