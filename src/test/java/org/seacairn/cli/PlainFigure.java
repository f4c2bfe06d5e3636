package org.seacairn.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiFunction;
import net.sf.geographiclib.Geodesic;

/**
 * One feature for the oracle of {@code review}: points, lines and rings in any number. Distances are GeographicLib's, to
 * the best of many places along an edge; a plane about the scene says which edges to look at, and what lies inside.
 */
final class PlainFigure {
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    private static final double NEAR_M = 10_000;
    private static final double NEAR_GEODESIC_M = 250;
    /** A rhumb line 50 m long bends by 0.3 mm at 80 degrees. */
    private static final double NEAR_RHUMB_M = 50;
    private static final double FAR_M = 4000;

    /**
     * A stretch of an edge, short enough to be straight on the plane.
     *
     * @param a its start on the plane, {@code b} its end
     * @param ring whether it bounds ground
     */
    record Piece(PlainPath path, double from, double to, double[] a, double[] b, boolean ring) {}

    /** @param figure the nearest one, {@code otherM} the distance to the nearest of the others */
    record Nearest(double distanceM, PlainFigure figure, double otherM) {}

    final String name;
    final List<Piece> pieces = new ArrayList<>();
    private final PlainPlane plane;
    private final boolean rhumb;

    PlainFigure(String name, PlainPlane plane, boolean rhumb) {
        this.name = name;
        this.plane = plane;
        this.rhumb = rhumb;
    }

    PlainFigure point(double[] lonLat) {
        double[] xy = plane.of(lonLat);
        pieces.add(new Piece(PlainPath.point(lonLat), 0, 1, xy, xy, false));
        return this;
    }

    PlainFigure line(double[]... lonLat) {
        return path(false, lonLat);
    }

    /** @param lonLat its last position is its first */
    PlainFigure ring(double[]... lonLat) {
        return path(true, lonLat);
    }

    private PlainFigure path(boolean ring, double[]... lonLat) {
        BiFunction<double[], double[], PlainPath> edge = rhumb ? PlainPath::rhumbLine : PlainPath::geodesic;
        for (int i = 1; i < lonLat.length; i++) {
            double[] a = plane.of(lonLat[i - 1]);
            double[] b = plane.of(lonLat[i]);
            cut(edge.apply(lonLat[i - 1], lonLat[i]), 0, 1, a, b, ring);
        }
        return this;
    }

    private void cut(PlainPath path, double from, double to, double[] a, double[] b, boolean ring) {
        double lengthM = PlainPlane.lengthM(a, b);
        boolean near = PlainPlane.segmentM(new double[2], a, b) < NEAR_M + lengthM / 10;
        if (lengthM > (near ? rhumb ? NEAR_RHUMB_M : NEAR_GEODESIC_M : FAR_M)) {
            double middle = (from + to) / 2;
            double[] m = plane.of(path.at(middle));
            cut(path, from, middle, a, m, ring);
            cut(path, middle, to, m, b, ring);
        } else {
            pieces.add(new Piece(path, from, to, a, b, ring));
        }
    }

    /** Whether a place on the plane lies within the rings: an odd number of them is crossed on the way east. */
    boolean holds(double[] p) {
        boolean in = false;
        for (Piece piece : pieces) {
            double[] a = piece.a;
            double[] b = piece.b;
            if (piece.ring && a[1] > p[1] != b[1] > p[1] && p[0] < a[0] + (p[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])) {
                in = !in;
            }
        }
        return in;
    }

    /** Metres on the plane to the nearest edge: good for what must only be known roughly. */
    double roughEdgeM(double[] p) {
        return roughM(p, pieces);
    }

    static double roughM(double[] p, List<Piece> pieces) {
        double least = Double.POSITIVE_INFINITY;
        for (Piece piece : pieces) {
            least = Math.min(least, PlainPlane.segmentM(p, piece.a, piece.b));
        }
        return least;
    }

    static double roughEdgeM(double[] p, List<PlainFigure> figures) {
        return figures.stream().mapToDouble(figure -> figure.roughEdgeM(p)).min().orElse(Double.POSITIVE_INFINITY);
    }

    static boolean anyHolds(List<PlainFigure> figures, double[] p) {
        return figures.stream().anyMatch(figure -> figure.holds(p));
    }

    /** How far the rough distance of the nearest piece may be from the exact one. */
    private static double slack(double roughM) {
        return roughM * 1.001 + 1;
    }

    /** Geodesic metres from a place to the nearest point of some pieces. */
    static double edgeM(double[] lonLat, double[] xy, List<Piece> pieces) {
        double reach = slack(roughM(xy, pieces));
        double least = Double.POSITIVE_INFINITY;
        for (Piece piece : pieces) {
            if (PlainPlane.segmentM(xy, piece.a, piece.b) <= reach) {
                least = Math.min(least, exactM(lonLat, piece));
            }
        }
        return least;
    }

    /** The nearest of several figures, at 0 m where one of them holds the place. */
    static Nearest nearest(double[] lonLat, double[] xy, List<PlainFigure> figures) {
        double reach = slack(figures.stream().mapToDouble(f -> f.roughEdgeM(xy)).min().orElseThrow());
        Nearest best = new Nearest(Double.POSITIVE_INFINITY, null, Double.POSITIVE_INFINITY);
        for (PlainFigure figure : figures) {
            boolean holds = figure.holds(xy);
            if (holds || figure.roughEdgeM(xy) <= reach) {
                best = better(best, holds ? 0 : edgeM(lonLat, xy, figure.pieces), figure);
            }
        }
        return best;
    }

    private static Nearest better(Nearest best, double m, PlainFigure figure) {
        return m < best.distanceM ? new Nearest(m, figure, best.distanceM)
                : new Nearest(best.distanceM, best.figure, Math.min(best.otherM, m));
    }

    /** The nearest approach of this figure to others, 0 where they meet. */
    Nearest approach(List<PlainFigure> figures) {
        Nearest best = new Nearest(Double.POSITIVE_INFINITY, null, Double.POSITIVE_INFINITY);
        for (PlainFigure figure : figures) {
            boolean within = pieces.stream().anyMatch(p -> figure.holds(p.a)) || figure.pieces.stream().anyMatch(p -> holds(p.a));
            best = better(best, within ? 0 : approachM(pieces, figure.pieces), figure);
        }
        return best;
    }

    /**
     * The nearest approach of two sets of pieces, 0 where they cross. Two geodesics on a surface that bulges everywhere come
     * nearest at an end of one of them, unless they cross; a rhumb piece is short enough to be taken for one.
     */
    static double approachM(List<Piece> some, List<Piece> others) {
        double[][] roughM = new double[some.size()][others.size()];
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < some.size(); i++) {
            for (int k = 0; k < others.size(); k++) {
                Piece p = some.get(i);
                Piece q = others.get(k);
                roughM[i][k] = PlainPlane.segmentsM(p.a, p.b, q.a, q.b);
                if (roughM[i][k] == 0) {
                    return 0;
                }
                least = Math.min(least, roughM[i][k]);
            }
        }
        double exactM = Double.POSITIVE_INFINITY;
        double reach = least * 1.001 + 0.05;
        for (int i = 0; i < some.size(); i++) {
            for (int k = 0; k < others.size(); k++) {
                if (roughM[i][k] <= reach) {
                    Piece p = some.get(i);
                    Piece q = others.get(k);
                    exactM = Math.min(exactM, Math.min(
                            Math.min(exactM(p.path.at(p.from), q), exactM(p.path.at(p.to), q)),
                            Math.min(exactM(q.path.at(q.from), p), exactM(q.path.at(q.to), p))));
                }
            }
        }
        return exactM;
    }

    /** By golden section down to a tenth of a millimetre along the piece. */
    private static double exactM(double[] lonLat, Piece piece) {
        double low = piece.from;
        double high = piece.to;
        double least = Math.min(inverseM(lonLat, piece.path.at(low)), inverseM(lonLat, piece.path.at(high)));
        double lengthM = PlainPlane.lengthM(piece.a, piece.b);
        double enough = lengthM == 0 ? 1 : 1e-4 * (high - low) / lengthM;
        double left = high - GOLDEN * (high - low);
        double right = low + GOLDEN * (high - low);
        double leftM = inverseM(lonLat, piece.path.at(left));
        double rightM = inverseM(lonLat, piece.path.at(right));
        while (high - low > enough) {
            least = Math.min(least, Math.min(leftM, rightM));
            if (leftM < rightM) {
                high = right;
                right = left;
                rightM = leftM;
                left = high - GOLDEN * (high - low);
                leftM = inverseM(lonLat, piece.path.at(left));
            } else {
                low = left;
                left = right;
                leftM = rightM;
                right = low + GOLDEN * (high - low);
                rightM = inverseM(lonLat, piece.path.at(right));
            }
        }
        return least;
    }

    static double inverseM(double[] a, double[] b) {
        return Geodesic.WGS84.Inverse(a[1], a[0], b[1], b[0]).s12;
    }

    /**
     * The border between what polygons cover together and what none of them covers: their edges, cut where they cross, as far
     * as one of their sides, half a millimetre off, is in no polygon.
     */
    static List<Piece> outline(List<PlainFigure> polygons) {
        List<Piece> outline = new ArrayList<>();
        for (PlainFigure polygon : polygons) {
            for (Piece piece : polygon.pieces) {
                for (Piece part : parts(piece, polygons)) {
                    if (Arrays.stream(sides(part, 0.0005)).anyMatch(side -> !anyHolds(polygons, side))) {
                        outline.add(part);
                    }
                }
            }
        }
        return outline;
    }

    private static List<Piece> parts(Piece piece, List<PlainFigure> polygons) {
        List<Double> cuts = new ArrayList<>(List.of(0.0, 1.0));
        for (PlainFigure polygon : polygons) {
            for (Piece other : polygon.pieces) {
                double[] at = PlainPlane.crossing(piece.a, piece.b, other.a, other.b);
                if (at != null && other != piece) {
                    cuts.add(at[0]);
                }
            }
        }
        cuts.sort(null);
        List<Piece> parts = new ArrayList<>();
        for (int i = 1; i < cuts.size(); i++) {
            if (cuts.get(i) - cuts.get(i - 1) > 1e-9) {
                parts.add(part(piece, cuts.get(i - 1), cuts.get(i)));
            }
        }
        return parts;
    }

    private static Piece part(Piece piece, double from, double to) {
        double share = piece.to - piece.from;
        return new Piece(piece.path, piece.from + from * share, piece.from + to * share,
                between(piece.a, piece.b, from), between(piece.a, piece.b, to), piece.ring);
    }

    private static double[] between(double[] a, double[] b, double share) {
        return new double[] {a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])};
    }

    /** A little to the left and to the right of a piece's middle. */
    private static double[][] sides(Piece piece, double offM) {
        double[] middle = between(piece.a, piece.b, 0.5);
        double lengthM = PlainPlane.lengthM(piece.a, piece.b);
        double dx = lengthM == 0 ? 0 : offM * (piece.b[0] - piece.a[0]) / lengthM;
        double dy = lengthM == 0 ? 0 : offM * (piece.b[1] - piece.a[1]) / lengthM;
        return new double[][] {{middle[0] - dy, middle[1] + dx}, {middle[0] + dy, middle[1] - dx}};
    }

    /** Whether two polygons have ground in common, more than a touch of some millimetres. */
    boolean sharesGroundWith(PlainFigure other) {
        return deepInBoth(this, other) || deepInBoth(other, this);
    }

    private static boolean deepInBoth(PlainFigure a, PlainFigure b) {
        double offM = 0.005;
        return a.pieces.stream().flatMap(piece -> parts(piece, List.of(b)).stream())
                .flatMap(part -> Arrays.stream(sides(part, offM)))
                .anyMatch(side -> a.holds(side) && b.holds(side) && b.roughEdgeM(side) > offM / 2);
    }
}
