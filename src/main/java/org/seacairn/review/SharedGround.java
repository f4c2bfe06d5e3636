package org.seacairn.review;

import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.seacairn.geodesy.AzimuthalPlane;
import org.seacairn.geodesy.GeodesicEdges;

/** A polygon on the azimuthal equidistant plane about the middle of its box, and what others share with it there. */
final class SharedGround {
    /** Polygons that overlap by less than this only touch. */
    private static final double TOUCH_M = 1e-3;

    private final Geodesic geodesic;
    private final AzimuthalPlane plane;
    private final Geometry own;

    SharedGround(Geometry lonLatPolygon, Geodesic geodesic) {
        this.geodesic = geodesic;
        Coordinate middle = lonLatPolygon.getEnvelopeInternal().centre();
        this.plane = new AzimuthalPlane(middle.x, middle.y, geodesic);
        this.own = onPlane(lonLatPolygon);
    }

    AzimuthalPlane plane() {
        return plane;
    }

    /** The polygon on the plane. */
    Geometry own() {
        return own;
    }

    /** Another geometry on the plane, its edges densified. */
    Geometry onPlane(Geometry lonLat) {
        return plane.fromLonLat(GeodesicEdges.densify(lonLat, geodesic, GeodesicEdges.PIECE_M));
    }

    /** What a polygon shares with this one, on the plane; empty where they only touch. */
    Geometry with(Geometry lonLatPolygon) {
        Geometry shared = OverlayNGRobust.overlay(own, onPlane(lonLatPolygon), OverlayNG.INTERSECTION);
        return shared.buffer(-TOUCH_M / 2).isEmpty() ? own.getFactory().createPolygon() : shared;
    }
}
