package org.seacairn.review;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import net.sf.geographiclib.Geodesic;

/**
 * Stretches of edges in nested bounding spheres, halved at the median of the widest axis. A sphere
 * gives a bound that needs no projection: no geodesic is shorter than the straight line through the
 * Earth. Immutable, so that threads may share it.
 */
final class SphereTree {
    private static final int LEAF_SIZE = 8;

    private final Geodesic geodesic;
    /** Each node holds the run {@code from}..{@code to} of these; its halves hold the halves of the run. */
    private final GeodesicPiece[] pieces;
    private final Node root;

    private record Node(Vector centre, double radiusM, int from, int to, Node left, Node right) {
        double atLeastM(Vector place) {
            return place.minus(centre).length() - radiusM;
        }
    }

    /** The nearest stretch and the foot on it. */
    record Hit(GeodesicPiece piece, GeodesicPiece.Foot foot) {}

    SphereTree(List<GeodesicPiece> pieces, Geodesic geodesic) {
        if (pieces.isEmpty()) {
            throw new IllegalArgumentException("nothing to measure to");
        }
        this.geodesic = geodesic;
        this.pieces = pieces.toArray(new GeodesicPiece[0]);
        root = node(0, this.pieces.length);
    }

    private Node node(int from, int to) {
        Vector low = corner(from, to, Math::min);
        Vector high = corner(from, to, Math::max);
        Vector centre = low.plus(high).times(0.5);
        double radiusM = 0;
        for (int i = from; i < to; i++) {
            GeodesicPiece piece = pieces[i];
            double reachM = Math.max(piece.start().minus(centre).length(), piece.end().minus(centre).length());
            radiusM = Math.max(radiusM, reachM + piece.sagM(geodesic));
        }
        if (to - from <= LEAF_SIZE) {
            return new Node(centre, radiusM, from, to, null, null);
        }
        Vector size = high.minus(low);
        Comparator<GeodesicPiece> alongWidest = size.x() >= size.y() && size.x() >= size.z()
                ? Comparator.comparingDouble(p -> p.start().x())
                : size.y() >= size.z() ? Comparator.comparingDouble(p -> p.start().y())
                : Comparator.comparingDouble(p -> p.start().z());
        Arrays.sort(pieces, from, to, alongWidest);
        int middle = (from + to) >>> 1;
        return new Node(centre, radiusM, from, to, node(from, middle), node(middle, to));
    }

    private Vector corner(int from, int to, java.util.function.DoubleBinaryOperator better) {
        Vector corner = pieces[from].start();
        for (int i = from; i < to; i++) {
            for (Vector v : List.of(pieces[i].start(), pieces[i].end())) {
                corner = new Vector(better.applyAsDouble(corner.x(), v.x()),
                        better.applyAsDouble(corner.y(), v.y()), better.applyAsDouble(corner.z(), v.z()));
            }
        }
        return corner;
    }

    Hit nearest(double lonDeg, double latDeg) {
        return new Search(lonDeg, latDeg).run();
    }

    private final class Search {
        private final double lonDeg;
        private final double latDeg;
        private final Vector place;
        private Hit best;
        private double bestM = Double.POSITIVE_INFINITY;

        Search(double lonDeg, double latDeg) {
            this.lonDeg = lonDeg;
            this.latDeg = latDeg;
            this.place = Vector.of(lonDeg, latDeg, geodesic);
        }

        Hit run() {
            visit(root);
            return best;
        }

        private void visit(Node node) {
            if (node.atLeastM(place) >= bestM) {
                return;
            }
            if (node.left != null) {
                boolean leftFirst = node.left.atLeastM(place) <= node.right.atLeastM(place);
                visit(leftFirst ? node.left : node.right);
                visit(leftFirst ? node.right : node.left);
                return;
            }
            for (int i = node.from; i < node.to; i++) {
                if (pieces[i].atLeastM(place, geodesic) < bestM) {
                    measure(pieces[i]);
                }
            }
        }

        private void measure(GeodesicPiece piece) {
            GeodesicPiece.Foot foot = piece.foot(lonDeg, latDeg, place, geodesic);
            if (foot.distanceM() < bestM) {
                bestM = foot.distanceM();
                best = new Hit(piece, foot);
            }
        }
    }
}
