package org.seacairn.criterion;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.geodesy.GeodesicEdges;
import org.seacairn.geodesy.RhumbEdges;
import org.seacairn.grid.DistanceField;
import org.seacairn.grid.GridGeometry;
import org.seacairn.layer.Feature;
import org.seacairn.layer.VectorLayer;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.Suggestion;

/**
 * A layer made ready for the working grid: in longitude and latitude on the working CRS's datum, and,
 * as far as it can matter, on the grid itself.
 *
 * <p>An edge between two vertices is the geodesic between them, whatever the layer's own CRS, or the rhumb line
 * where the plan says so: {@link RhumbEdges} gives such a layer the vertices that make its geodesics run there, so
 * that the grid, the check on the ellipsoid and the buffers all see the same edges. Edges are densified to {@value #PIECE_M} m before they are projected, which keeps a
 * straight piece on the map within 1 mm of the geodesic in a UTM zone.
 *
 * @param lonLat all features, vertices as in the file, and those that a rhumb line needs
 * @param pieces the parts within reach of the grid
 * @param reachM how far from the grid a feature was taken to matter; at a larger distance than this
 *     a nearer feature may be missing
 */
public record WorkingLayer(String label, List<Feature> lonLat, List<Piece> pieces, double reachM) {
    private static final double PIECE_M = 1000;
    private static final double METRES_PER_DEGREE = 110_000;
    /** How far beyond the reach a rhumb line is still drawn to the millimetre, for the distances that reports state. */
    private static final double EXACT_M = 100_000;
    /** Boxes wider than this are not judged by their corners. */
    private static final double WIDE_DEGREES = 60;

    /** A feature no longer than this is buffered whole, so that its buffer has no cut ends. */
    private static final double WHOLE_DEGREES = 20;

    /**
     * A part of a feature near the grid.
     *
     * @param lonLat densified, longitude and latitude
     * @param geometry the same in the working CRS
     */
    public record Piece(Feature feature, Geometry lonLat, Geometry geometry) {}

    /**
     * @param reachM how far from the grid a feature can still matter
     * @throws InputException if coordinates lie outside the domain of the layer's CRS
     */
    public static WorkingLayer of(VectorLayer layer, GridGeometry grid, double reachM) {
        Crs geographic = grid.crs().geographic();
        Geodesic geodesic = grid.crs().geodesic();
        CoordinateTransform toLonLat = layer.crs().to(geographic);
        CoordinateTransform toGrid = geographic.to(grid.crs());
        Envelope reach = reach(grid, reachM);
        Envelope exact = reach(grid, reachM + EXACT_M);
        List<Feature> lonLat = new ArrayList<>();
        List<Piece> pieces = new ArrayList<>();
        for (Feature feature : layer.features()) {
            try {
                Geometry vertices = toLonLat.apply(feature.geometry());
                Feature moved = new Feature(feature.id(),
                        layer.edges() == Edges.RHUMB_LINE ? RhumbEdges.densify(vertices, geodesic, exact) : vertices,
                        feature.attributes());
                lonLat.add(moved);
                for (Geometry near : near(moved.geometry(), reach, geodesic)) {
                    pieces.add(new Piece(moved, near, toGrid.apply(near)));
                }
            } catch (InputException e) {
                throw new InputException(layer.file().getFileName() + ", feature " + feature.id() + ": " + e.getMessage(), e);
            }
        }
        return new WorkingLayer(layer.label(), List.copyOf(lonLat), List.copyOf(pieces), reachM);
    }

    /**
     * The geometries near the grid, for a buffer: whole features, but of a world's cable or lane only
     * the parts within reach. Longitude and latitude on the working CRS's datum.
     */
    public List<Geometry> nearLonLat() {
        Set<Geometry> near = new LinkedHashSet<>();
        for (Piece piece : pieces) {
            Geometry whole = piece.feature().geometry();
            Envelope box = whole.getEnvelopeInternal();
            near.add(Math.max(box.getWidth(), box.getHeight()) <= WHOLE_DEGREES ? whole : piece.lonLat());
        }
        return List.copyOf(near);
    }

    /** What is wrong with an attribute that the plan names, as the end of a message; empty if a feature has it. */
    public Optional<String> withoutAttribute(String name) {
        Set<String> known = new TreeSet<>();
        lonLat.forEach(feature -> known.addAll(feature.attributes().keySet()));
        if (known.contains(name)) {
            return Optional.empty();
        }
        String advice = known.isEmpty() ? "it has no attributes at all" : Suggestion.nearest(name, known)
                .map(meant -> "did you mean \"" + meant + "\"?").orElse("it has " + String.join(", ", known));
        return Optional.of("no feature has the attribute \"" + name + "\"; " + advice);
    }

    /** The distance field of the pieces. */
    DistanceField distanceField(GridGeometry grid) {
        return new DistanceField(grid, pieces.stream().map(Piece::geometry).toList());
    }

    /** The grid's extent in longitude and latitude, widened; longitudes run on past 180 where it does. */
    private static Envelope reach(GridGeometry grid, double reachM) {
        CoordinateTransform toLonLat = grid.crs().to(grid.crs().geographic());
        Envelope box = new Envelope();
        double middle = toLonLat.apply((grid.west() + grid.east()) / 2, (grid.south() + grid.north()) / 2).x;
        int steps = 32;
        for (int i = 0; i <= steps; i++) {
            double x = grid.west() + (grid.east() - grid.west()) * i / steps;
            double y = grid.south() + (grid.north() - grid.south()) * i / steps;
            for (double[] p : new double[][] {{x, grid.south()}, {x, grid.north()}, {grid.west(), y}, {grid.east(), y}}) {
                Coordinate c = toLonLat.apply(p[0], p[1]);
                box.expandToInclude(c.x - 360 * Math.rint((c.x - middle) / 360), c.y);
            }
        }
        double degrees = reachM * 1.05 / METRES_PER_DEGREE + 0.01;
        double widest = Math.min(89, Math.max(Math.abs(box.getMinY()), Math.abs(box.getMaxY())) + degrees);
        box.expandBy(degrees / Math.cos(Math.toRadians(widest)), degrees);
        return box;
    }

    private static List<Geometry> near(Geometry lonLat, Envelope reach, Geodesic geodesic) {
        List<Geometry> found = new ArrayList<>();
        for (int i = 0; i < lonLat.getNumGeometries(); i++) {
            Geometry part = lonLat.getGeometryN(i);
            if (part.getNumGeometries() > 1) {
                found.addAll(near(part, reach, geodesic));
            } else if (part.getDimension() == 1) {
                stretches(part, reach).forEach(line -> addTurned(line, reach, geodesic, found));
            } else if (mayReach(part.getEnvelopeInternal(), reach)) {
                addTurned(part, reach, geodesic, found);
            }
        }
        return found;
    }

    /** The runs of a line's edges that may come near; a world's cable would cost seconds to densify whole. */
    private static List<Geometry> stretches(Geometry line, Envelope reach) {
        List<Geometry> found = new ArrayList<>();
        Coordinate[] points = line.getCoordinates();
        List<Coordinate> run = new ArrayList<>();
        for (int i = 1; i < points.length; i++) {
            Coordinate a = points[i - 1];
            double shortWay = points[i].x - 360 * Math.rint((points[i].x - a.x) / 360);
            if (mayReach(new Envelope(a.x, shortWay, a.y, points[i].y), reach)) {
                if (run.isEmpty()) {
                    run.add(a);
                }
                run.add(points[i]);
            } else if (!run.isEmpty()) {
                found.add(line.getFactory().createLineString(run.toArray(Coordinate[]::new)));
                run.clear();
            }
        }
        if (!run.isEmpty()) {
            found.add(line.getFactory().createLineString(run.toArray(Coordinate[]::new)));
        }
        return found;
    }

    /** Whether geodesics between points of a box may come within reach, in whatever turn of longitude. */
    private static boolean mayReach(Envelope box, Envelope reach) {
        if (box.getWidth() > WIDE_DEGREES) {
            return true;
        }
        // A geodesic bulges poleward of its ends by at most (difference of longitude)^2 / 16 in radians,
        // for a sphere and small angles; doubled for the ellipsoid and the larger ones.
        double bulge = Math.toDegrees(Math.pow(Math.toRadians(box.getWidth()), 2) / 8);
        Envelope grown = new Envelope(box);
        grown.expandBy(0, bulge);
        double turn = 360 * Math.rint((reach.centre().x - grown.centre().x) / 360);
        grown.translate(turn, 0);
        return grown.intersects(reach);
    }

    /** Densifies a part and adds what of it lies within reach, turned to the grid's longitudes. */
    private static void addTurned(Geometry part, Envelope reach, Geodesic geodesic, List<Geometry> found) {
        Geometry dense = GeodesicEdges.densify(part, geodesic, PIECE_M);
        Envelope box = dense.getEnvelopeInternal();
        int from = (int) Math.ceil((reach.getMinX() - box.getMaxX()) / 360);
        int to = (int) Math.floor((reach.getMaxX() - box.getMinX()) / 360);
        for (int turns = from; turns <= to; turns++) {
            Geometry cut = cut(turns == 0 ? dense : turned(dense, 360.0 * turns), reach);
            if (!cut.isEmpty()) {
                found.add(cut);
            }
        }
    }

    private static Geometry cut(Geometry geometry, Envelope reach) {
        Envelope box = geometry.getEnvelopeInternal();
        if (reach.contains(box)) {
            return geometry;
        }
        if (!reach.intersects(box)) {
            return geometry.getFactory().createEmpty(geometry.getDimension());
        }
        return OverlayNGRobust.overlay(geometry, geometry.getFactory().toGeometry(reach), OverlayNG.INTERSECTION);
    }

    private static Geometry turned(Geometry geometry, double degrees) {
        return AffineTransformation.translationInstance(degrees, 0).transform(geometry);
    }
}
