package org.seacairn.cli;

import java.util.List;
import org.seacairn.cli.PlainFigure.Piece;

/** The place of a polygon that is farthest from others, by cutting up its box for as long as a part may hold a farther one. */
final class WorstPlace {
    private static final double ENOUGH_M = 5e-4;
    private static final int MOST = 400_000;

    double distanceM;
    boolean sure = true;
    private final PlainFigure polygon;
    private final List<PlainFigure> others;
    private int looks;

    WorstPlace(PlainFigure polygon, List<PlainFigure> others) {
        this.polygon = polygon;
        this.others = others;
        double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (Piece piece : polygon.pieces) {
            distanceM = Math.max(distanceM, awayM(piece.a()));
            for (int i = 0; i < 2; i++) {
                low[i] = Math.min(low[i], piece.a()[i]);
                high[i] = Math.max(high[i], piece.a()[i]);
            }
        }
        double half = Math.max(high[0] - low[0], high[1] - low[1]) / 2;
        look((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, half);
    }

    private double awayM(double[] xy) {
        return PlainFigure.anyHolds(others, xy) ? 0 : PlainFigure.roughEdgeM(xy, others);
    }

    private void look(double x, double y, double half) {
        if (++looks > MOST) {
            sure = false;
            return;
        }
        double[] xy = {x, y};
        double reach = half * Math.sqrt(2);
        boolean in = polygon.holds(xy);
        if (!in && polygon.roughEdgeM(xy) > reach) {
            return;
        }
        double awayM = awayM(xy);
        if (in) {
            distanceM = Math.max(distanceM, awayM);
        }
        if (awayM + reach <= distanceM + ENOUGH_M) {
            return;
        }
        double quarter = half / 2;
        look(x - quarter, y - quarter, quarter);
        look(x + quarter, y - quarter, quarter);
        look(x - quarter, y + quarter, quarter);
        look(x + quarter, y + quarter, quarter);
    }
}
