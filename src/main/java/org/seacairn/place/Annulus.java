package org.seacairn.place;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.seacairn.criterion.Reasons;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.GeodesicEdges;
import org.seacairn.grid.DistanceField;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PatchFrames;
import org.seacairn.grid.Window;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.ScoredWindow;

/**
 * The cells between two distances of a stone: those that are scored, and what rules the others out.
 *
 * <p>A cell belongs where its centre lies at least {@value #INSIDE_M} m inside both distances, so that a
 * check on the ellipsoid agrees. The stone's centre is its centroid on the working grid; of a point, the point.
 */
final class Annulus {
    private static final double INSIDE_M = 0.001;
    private static final int TILE = 256;

    private final ScoreEngine engine;
    private final GridGeometry grid;
    private final double innerM;
    private final double outerM;
    private final PatchFrames frames;
    private final DistanceField toStone;
    private final CoordinateTransform toLonLat;
    private final Geodesic geodesic;
    private final Coordinate centre;
    private final List<RingCell> scored = new ArrayList<>();
    private final long[] ruledOut;
    private long cells;

    Annulus(ScoreEngine engine, RingRequest asked) {
        this.engine = engine;
        this.grid = engine.grid();
        this.innerM = asked.innerM() + INSIDE_M;
        this.outerM = asked.outerM() - INSIDE_M;
        this.frames = new PatchFrames(grid);
        this.geodesic = grid.crs().geodesic();
        this.toLonLat = grid.crs().to(grid.crs().geographic());
        Geometry stone = grid.crs().geographic().to(grid.crs())
                .apply(GeodesicEdges.densify(asked.stone(), geodesic, GeodesicEdges.PIECE_M));
        this.toStone = new DistanceField(grid, List.of(stone));
        Point middle = stone.getCentroid();
        this.centre = toLonLat.apply(middle.getX(), middle.getY());
        this.ruledOut = new long[engine.reasons().names().size()];
        collect(stone.getEnvelopeInternal());
    }

    /** The cells that nothing rules out. */
    RingCells cells(double apartM, Set<Pick> barred) {
        return new RingCells(scored.stream().filter(cell -> !barred.contains(cell.pick())).toList(), geodesic, apartM);
    }

    /** Cells that no reason rules out. */
    long scoredCells() {
        return scored.size();
    }

    /** All cells, those that would lie beyond the grid's edge among them. */
    long allCells() {
        return cells;
    }

    /** Cells for each reason that rules any out, in the order of the reasons' bits; a cell may have several. */
    Map<String, Long> reasons() {
        Map<String, Long> counts = new LinkedHashMap<>();
        for (int i = 0; i < ruledOut.length; i++) {
            if (ruledOut[i] > 0) {
                counts.put(engine.reasons().names().get(i), ruledOut[i]);
            }
        }
        return counts;
    }

    private void collect(Envelope stone) {
        Coordinate middle = stone.centre();
        PatchFrames.Over about = frames.over(new Window(grid.colAt(middle.x), grid.rowAt(middle.y), 1, 1));
        // A map that shrinks one direction stretches another: a tenth more and a cell cover any that serves as a working grid.
        double reach = outerM / about.frames()[0].mean() * 1.1 + grid.cellM();
        int left = grid.colAt(stone.getMinX() - reach);
        int right = (int) Math.ceil((stone.getMaxX() + reach - grid.west()) / grid.cellM());
        int top = grid.rowAt(stone.getMaxY() + reach);
        int bottom = (int) Math.ceil((grid.north() - stone.getMinY() + reach) / grid.cellM());
        for (int row = top; row < bottom; row += TILE) {
            for (int col = left; col < right; col += TILE) {
                collect(new Window(col, row, Math.min(TILE, right - col), Math.min(TILE, bottom - row)));
            }
        }
    }

    private void collect(Window window) {
        float[] distanceM = new float[window.cells()];
        float least = toStone.fill(window, frames.over(window), outerM * 1.01 + 1,
                (lowM, highM) -> highM < innerM || lowM > outerM, distanceM);
        if (least > outerM) {
            return;
        }
        int left = Math.max(0, window.col());
        int top = Math.max(0, window.row());
        int right = Math.min(grid.cols(), window.endCol());
        int bottom = Math.min(grid.rows(), window.endRow());
        ScoredWindow on = left < right && top < bottom
                ? engine.score(new Window(left, top, right - left, bottom - top)) : null;
        // What has any reason has no landing room either.
        int offGrid = engine.reasons().bit(Reasons.NO_DEPTH) | engine.reasons().bit(Reasons.LANDING_ROOM);
        for (int row = window.row(); row < window.endRow(); row++) {
            for (int col = window.col(); col < window.endCol(); col++) {
                float d = distanceM[window.index(col, row)];
                if (d >= innerM && d <= outerM) {
                    if (!grid.holds(col, row)) {
                        count(offGrid);
                    } else {
                        int i = on.window().index(col, row);
                        count(on.reasons()[i]);
                        if (on.reasons()[i] == 0) {
                            scored.add(cell(col, row, on.score()[i], d));
                        }
                    }
                }
            }
        }
    }

    private void count(int mask) {
        cells++;
        for (int i = 0; i < ruledOut.length; i++) {
            ruledOut[i] += mask >>> i & 1;
        }
    }

    private RingCell cell(int col, int row, double score, double distanceM) {
        double x = grid.centreX(col);
        double y = grid.centreY(row);
        Coordinate lonLat = toLonLat.apply(x, y);
        GeodesicData ray = geodesic.Inverse(centre.y, centre.x, lonLat.y, lonLat.x,
                GeodesicMask.DISTANCE | GeodesicMask.AZIMUTH);
        return new RingCell(new Pick(col, row, x, y, lonLat.x, lonLat.y, score), distanceM, ray.azi1, ray.s12);
    }
}
