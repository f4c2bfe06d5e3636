package org.seacairn.geodesy;

import java.util.Optional;
import java.util.function.Consumer;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.InputException;

/**
 * The box of longitude and latitude on WGS 84 about coordinates of any CRS, in degrees. Longitudes of a
 * projected CRS run on past 180 where its coordinates do; those of a geographic one stay as they are,
 * so that a file that counts from 0 to 360 has one box and not two.
 */
public final class GeographicExtent {
    /** Points on each side of a grid: its edges are curves on the globe. */
    private static final int STEPS = 64;

    /** A place that does not come back this near lies where its projection has no meaning. */
    private static final double RETURN_M = 1;

    private final CoordinateTransform toLonLat;
    private final CoordinateTransform back;
    private final boolean fromDegrees;
    private final double returnUnits;
    private final Envelope box = new Envelope();

    private GeographicExtent(Crs crs) {
        this.toLonLat = crs.to(Crs.WGS84);
        this.back = Crs.WGS84.to(crs);
        this.fromDegrees = crs.isGeographic();
        this.returnUnits = RETURN_M / crs.metresPerUnit();
    }

    /** The box about a rectangle of a CRS, its edges followed; empty where that CRS or the globe ends. */
    public static Optional<Envelope> ofRectangle(Envelope rectangle, Crs crs) {
        double[] xy = new double[8 * (STEPS + 1)];
        int n = 0;
        for (int i = 0; i <= STEPS; i++) {
            double x = rectangle.getMinX() + rectangle.getWidth() * i / STEPS;
            double y = rectangle.getMinY() + rectangle.getHeight() * i / STEPS;
            for (double ordinate : new double[] {
                x, rectangle.getMinY(), x, rectangle.getMaxY(), rectangle.getMinX(), y, rectangle.getMaxX(), y}) {
                xy[n++] = ordinate;
            }
        }
        return of(crs, extent -> extent.include(xy));
    }

    /** The box about every vertex of the geometries; empty where there is none or their CRS or the globe ends. */
    public static Optional<Envelope> ofVertices(Iterable<Geometry> geometries, Crs crs) {
        return of(crs, extent -> geometries.forEach(extent::include));
    }

    private static Optional<Envelope> of(Crs crs, Consumer<GeographicExtent> fill) {
        try {
            GeographicExtent extent = new GeographicExtent(crs);
            fill.accept(extent);
            boolean onGlobe = !extent.box.isNull() && extent.box.getMinY() >= -90 && extent.box.getMaxY() <= 90
                    && Math.abs(extent.box.centre().x) <= 360;
            return onGlobe ? Optional.of(extent.box) : Optional.empty();
        } catch (InputException e) {
            return Optional.empty();
        }
    }

    private void include(Geometry geometry) {
        Coordinate[] vertices = geometry.getCoordinates();
        double[] xy = new double[2 * vertices.length];
        for (int i = 0; i < vertices.length; i++) {
            xy[2 * i] = vertices[i].x;
            xy[2 * i + 1] = vertices[i].y;
        }
        include(xy);
    }

    private void include(double[] xy) {
        double[] lonLat = xy.clone();
        toLonLat.apply(lonLat);
        if (!fromDegrees) {
            requireReturn(xy, lonLat);
        }
        for (int i = 0; i < xy.length; i += 2) {
            double near = fromDegrees ? xy[i] : box.isNull() ? lonLat[i] : box.centre().x;
            box.expandToInclude(lonLat[i] + 360 * Math.rint((near - lonLat[i]) / 360), lonLat[i + 1]);
        }
    }

    /** Some projections answer any coordinates with some place on the globe. */
    private void requireReturn(double[] xy, double[] lonLat) {
        double[] again = lonLat.clone();
        back.apply(again);
        for (int i = 0; i < xy.length; i++) {
            if (Math.abs(again[i] - xy[i]) > returnUnits) {
                throw new InputException("coordinates lie outside the domain of their CRS; check the CRS");
            }
        }
    }
}
