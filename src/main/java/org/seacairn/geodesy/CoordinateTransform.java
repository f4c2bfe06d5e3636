package org.seacairn.geodesy;

import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.OperationNotFoundException;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.InputException;

/** Takes coordinates from one CRS to another. Safe for use by several threads at once. */
public final class CoordinateTransform {
    private final MathTransform transform;
    private final Crs source;
    private final Crs target;

    private CoordinateTransform(MathTransform transform, Crs source, Crs target) {
        this.transform = transform;
        this.source = source;
        this.target = target;
    }

    static CoordinateTransform between(Crs source, Crs target) {
        try {
            return new CoordinateTransform(find(source, target), source, target);
        } catch (FactoryException e) {
            throw new InputException("no way is known from " + source.label() + " to " + target.label()
                    + "; state the layer's CRS in the plan as an EPSG code, whose datum is known, for example EPSG:26717", e);
        }
    }

    private static MathTransform find(Crs source, Crs target) throws FactoryException {
        try {
            return CRS.findMathTransform(source.library(), target.library(), false);
        } catch (OperationNotFoundException e) {
            // Well-known text mostly leaves out how its datum lies. Between datums at the Earth's centre
            // (WGS 84, NAD83, ETRS89 and the like) that is 2 m at most and the EPSG data set has no shift
            // either; an older datum such as NAD27 would come out some 200 m away, without a word.
            if (source.isGeocentric() && target.isGeocentric()) {
                return CRS.findMathTransform(source.library(), target.library(), true);
            }
            throw e;
        }
    }

    public boolean isIdentity() {
        return transform.isIdentity();
    }

    /**
     * Transforms points in place.
     *
     * @param xy x and y of each point in turn
     * @throws InputException if a point lies outside the domain of either CRS
     */
    public void apply(double[] xy) {
        apply(xy, xy.length / 2);
    }

    /** As {@link #apply(double[])}, for the first {@code points} points. */
    public void apply(double[] xy, int points) {
        if (transform.isIdentity()) {
            return;
        }
        try {
            transform.transform(xy, 0, xy, 0, points);
        } catch (TransformException | RuntimeException e) {
            throw outside(e);
        }
        for (int i = 0; i < 2 * points; i++) {
            if (!Double.isFinite(xy[i])) {
                throw outside(null);
            }
        }
    }

    /** The image of one point. */
    public Coordinate apply(double x, double y) {
        double[] xy = {x, y};
        apply(xy, 1);
        return new Coordinate(xy[0], xy[1]);
    }

    /** The image of every vertex of a geometry; the geometry itself is left as it is. */
    public Geometry apply(Geometry geometry) {
        if (transform.isIdentity()) {
            return geometry;
        }
        return Vertices.moved(geometry, vertex -> apply(vertex.x, vertex.y));
    }

    private InputException outside(Exception cause) {
        return new InputException("coordinates lie outside the domain of " + source.label() + " or "
                + target.label() + "; check the CRS that the layer states", cause);
    }
}
