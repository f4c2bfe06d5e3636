package org.seacairn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.geodesy.GeographicExtent;
import org.seacairn.geodesy.GroundScale;
import org.seacairn.grid.GridGeometry;

/** The plane of the drawing: the working grid with its longer side {@value #LONGER_SIDE} units long, x to the east, y down. */
final class MapPlane {
    static final double LONGER_SIDE = 1000;

    /** What is drawn beyond the edge, so that the strokes along the cut stay out of sight. */
    private static final double BEYOND = 12;
    private static final double TOLERANCE = 0.3;
    /** A small outline keeps its form when the map is zoomed in: it is simplified to this share of its size. */
    private static final double TOLERANCE_SHARE = 0.004;

    private final GridGeometry grid;
    private final double metresPerUnit;
    private final CoordinateTransform toGrid;
    private final CoordinateTransform toLonLat;
    private final Optional<Envelope> lonLatBox;

    MapPlane(GridGeometry grid) {
        this.grid = grid;
        this.metresPerUnit = Math.max(grid.cols(), grid.rows()) * grid.cellM() / LONGER_SIDE;
        this.toGrid = Crs.WGS84.to(grid.crs());
        this.toLonLat = grid.crs().to(Crs.WGS84);
        double beyondM = BEYOND * metresPerUnit;
        this.lonLatBox = GeographicExtent.ofRectangle(new Envelope(grid.west() - beyondM, grid.east() + beyondM,
                grid.south() - beyondM, grid.north() + beyondM), grid.crs());
    }

    double width() {
        return grid.cols() * grid.cellM() / metresPerUnit;
    }

    double height() {
        return grid.rows() * grid.cellM() / metresPerUnit;
    }

    /** Units for a side of a cell. */
    double cell() {
        return grid.cellM() / metresPerUnit;
    }

    /** Ground metres of one unit at the map's middle. */
    double groundMetresPerUnit() {
        return metresPerUnit * new GroundScale(grid.crs()).at((grid.west() + grid.east()) / 2, (grid.south() + grid.north()) / 2).mean();
    }

    /** The box of longitude and latitude about the map, a little more; empty where there is none (a pole). */
    Optional<Envelope> lonLatBox() {
        return lonLatBox;
    }

    /** Where a place is drawn; degrees on WGS 84. */
    Coordinate at(double longitudeDeg, double latitudeDeg) {
        Coordinate c = toGrid.apply(longitudeDeg, latitudeDeg);
        return new Coordinate((c.x - grid.west()) / metresPerUnit, (grid.north() - c.y) / metresPerUnit);
    }

    /** Longitude and latitude of a place of the drawing, in degrees on WGS 84. */
    Coordinate lonLat(double x, double y) {
        return toLonLat.apply(grid.west() + x * metresPerUnit, grid.north() - y * metresPerUnit);
    }

    boolean holds(Coordinate place) {
        return place.x >= 0 && place.y >= 0 && place.x <= width() && place.y <= height();
    }

    /** A geometry of longitude and latitude as it is drawn: what of it is in sight, simplified; may be empty. */
    Geometry drawn(Geometry lonLat) {
        Geometry near = lonLatBox.map(box -> cut(turned(lonLat, box), box)).orElse(lonLat);
        if (near.isEmpty()) {
            return near;
        }
        Geometry plane = AffineTransformation.translationInstance(-grid.west(), -grid.north())
                .scale(1 / metresPerUnit, -1 / metresPerUnit).transform(toGrid.apply(near));
        return inSight(plane);
    }

    /** What of a geometry of the drawing is in sight, simplified. */
    Geometry inSight(Geometry plane) {
        boolean lines = plane.getDimension() > 0;
        double beyond = lines ? BEYOND : 0;
        Geometry cut = cut(plane, new Envelope(-beyond, width() + beyond, -beyond, height() + beyond));
        return lines && !cut.isEmpty() ? simplified(cut) : cut;
    }

    /** Each part by its own size: a small one among many keeps its form. */
    private static Geometry simplified(Geometry plane) {
        List<Geometry> parts = new ArrayList<>();
        for (int i = 0; i < plane.getNumGeometries(); i++) {
            Geometry part = plane.getGeometryN(i);
            parts.add(DouglasPeuckerSimplifier.simplify(part, tolerance(part)));
        }
        return plane.getFactory().buildGeometry(parts);
    }

    static double tolerance(Geometry plane) {
        Envelope box = plane.getEnvelopeInternal();
        return Math.min(TOLERANCE, TOLERANCE_SHARE * Math.max(box.getWidth(), box.getHeight()));
    }

    /** In the turn of longitude that the map is in. */
    private static Geometry turned(Geometry lonLat, Envelope box) {
        double turns = Math.rint((box.centre().x - lonLat.getEnvelopeInternal().centre().x) / 360);
        return turns == 0 ? lonLat : AffineTransformation.translationInstance(360 * turns, 0).transform(lonLat);
    }

    private static Geometry cut(Geometry geometry, Envelope box) {
        if (box.contains(geometry.getEnvelopeInternal())) {
            return geometry;
        }
        if (!box.intersects(geometry.getEnvelopeInternal())) {
            return geometry.getFactory().createEmpty(geometry.getDimension());
        }
        return OverlayNGRobust.overlay(geometry, geometry.getFactory().toGeometry(box), OverlayNG.INTERSECTION);
    }
}
