package org.seacairn.cli;

import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import org.seacairn.cli.PlainFigure.Piece;

/** The place of a polygon that is farthest from others, by quartering its box for as long as a part may hold a farther one. */
final class WorstPlace {
    private static final double ENOUGH_M = 4e-4;
    private static final int MOST = 100_000;

    /** 0 if the others cover the polygon; right to half a millimetre. */
    double distanceM;
    /** False where the search was broken off. */
    boolean sure = true;
    private final PlainFigure polygon;
    private final List<PlainFigure> others;
    private final PriorityQueue<Part> parts = new PriorityQueue<>(Comparator.comparingDouble(Part::mostM).reversed());

    /** A square that may reach into the polygon, and the most that any place in it may be away. */
    private record Part(double x, double y, double half, double mostM) {}

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
        look((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, Math.max(high[0] - low[0], high[1] - low[1]) / 2);
        int looks = 0;
        while (!parts.isEmpty() && parts.peek().mostM > distanceM + ENOUGH_M && sure) {
            Part part = parts.poll();
            double quarter = part.half / 2;
            for (int i = 0; i < 4; i++) {
                look(part.x + (i % 2 == 0 ? -quarter : quarter), part.y + (i < 2 ? -quarter : quarter), quarter);
            }
            sure = ++looks < MOST;
        }
    }

    private double awayM(double[] xy) {
        return PlainFigure.anyHolds(others, xy) ? 0 : PlainFigure.roughEdgeM(xy, others);
    }

    private void look(double x, double y, double half) {
        double[] xy = {x, y};
        double reach = half * Math.sqrt(2);
        boolean in = polygon.holds(xy);
        if (!in && polygon.roughEdgeM(xy) > reach) {
            return;
        }
        double awayM = awayM(xy);
        if (in) {
            distanceM = Math.max(distanceM, awayM);
        } else {
            // Some place of the polygon lies in this square.
            distanceM = Math.max(distanceM, awayM - reach);
        }
        parts.add(new Part(x, y, half, awayM + reach));
    }
}
