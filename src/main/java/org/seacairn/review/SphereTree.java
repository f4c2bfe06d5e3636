package org.seacairn.review;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import net.sf.geographiclib.Geodesic;

/**
 * Stretches of edges in nested bounding spheres, halved at the median of the widest axis. A sphere
 * gives a bound that needs no projection: no geodesic is shorter than the straight line through the
 * Earth. Immutable, so that threads may share it.
 */
final class SphereTree {
    private static final int LEAF_SIZE = 8;
    /** The number of no feature. */
    private static final int NONE = -1;

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
        return new Search(lonDeg, latDeg, NONE).run();
    }

    /** The nearest stretch that is none of a feature's; empty if there is none. */
    Optional<Hit> nearestBut(int feature, double lonDeg, double latDeg) {
        return Optional.ofNullable(new Search(lonDeg, latDeg, feature).run());
    }

    /** What is done with two stretches that may be nearer to each other than any before. */
    interface PairVisit {
        /** @return no pair farther apart than this needs a visit any more, in metres */
        double visit(GeodesicPiece mine, GeodesicPiece other);
    }

    /** Visits pairs of a stretch of this tree and one of another, the likely near ones first. */
    void nearPairs(SphereTree other, PairVisit visit) {
        new PairSearch(other, visit).run(root, other.root);
    }

    /** Every stretch that may come within a distance of a place. */
    void within(double lonDeg, double latDeg, double distanceM, Consumer<GeodesicPiece> visit) {
        within(root, Vector.of(lonDeg, latDeg, geodesic), distanceM, visit);
    }

    private void within(Node node, Vector place, double distanceM, Consumer<GeodesicPiece> visit) {
        if (node.atLeastM(place) > distanceM) {
            return;
        }
        if (node.left != null) {
            within(node.left, place, distanceM, visit);
            within(node.right, place, distanceM, visit);
            return;
        }
        for (int i = node.from; i < node.to; i++) {
            if (pieces[i].atLeastM(place, geodesic) <= distanceM) {
                visit.accept(pieces[i]);
            }
        }
    }

    private final class PairSearch {
        private final SphereTree other;
        private final PairVisit visit;
        private double boundM = Double.POSITIVE_INFINITY;

        PairSearch(SphereTree other, PairVisit visit) {
            this.other = other;
            this.visit = visit;
        }

        void run(Node mine, Node theirs) {
            if (mine.atLeastM(theirs.centre) - theirs.radiusM >= boundM) {
                return;
            }
            if (mine.left == null && theirs.left == null) {
                leaves(mine, theirs);
            } else if (theirs.left == null || mine.left != null && mine.radiusM >= theirs.radiusM) {
                boolean leftFirst = mine.left.atLeastM(theirs.centre) <= mine.right.atLeastM(theirs.centre);
                run(leftFirst ? mine.left : mine.right, theirs);
                run(leftFirst ? mine.right : mine.left, theirs);
            } else {
                boolean leftFirst = theirs.left.atLeastM(mine.centre) <= theirs.right.atLeastM(mine.centre);
                run(mine, leftFirst ? theirs.left : theirs.right);
                run(mine, leftFirst ? theirs.right : theirs.left);
            }
        }

        private void leaves(Node mine, Node theirs) {
            for (int i = mine.from; i < mine.to; i++) {
                GeodesicPiece a = pieces[i];
                for (int k = theirs.from; k < theirs.to; k++) {
                    GeodesicPiece b = other.pieces[k];
                    double apartM = a.middle().minus(b.middle()).length() - a.radiusM(geodesic) - b.radiusM(geodesic);
                    if (apartM < boundM) {
                        boundM = visit.visit(a, b);
                    }
                }
            }
        }
    }

    private final class Search {
        private final int but;
        private final double lonDeg;
        private final double latDeg;
        private final Vector place;
        private Hit best;
        private double bestM = Double.POSITIVE_INFINITY;

        Search(double lonDeg, double latDeg, int but) {
            this.but = but;
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
                if (pieces[i].feature() != but && pieces[i].atLeastM(place, geodesic) < bestM) {
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
