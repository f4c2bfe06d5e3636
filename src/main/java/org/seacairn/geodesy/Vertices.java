package org.seacairn.geodesy;

import java.util.function.UnaryOperator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.CoordinateSequenceFilter;
import org.locationtech.jts.geom.Geometry;

/** Geometries with their vertices moved. */
public final class Vertices {
    private Vertices() {}

    /**
     * The image of every vertex of a geometry; the geometry itself is left as it is.
     *
     * @param image gives x and y; further ordinates stay
     */
    public static Geometry moved(Geometry geometry, UnaryOperator<Coordinate> image) {
        Geometry moved = geometry.copy();
        moved.apply(new CoordinateSequenceFilter() {
            @Override
            public void filter(CoordinateSequence points, int i) {
                Coordinate to = image.apply(new Coordinate(points.getX(i), points.getY(i)));
                points.setOrdinate(i, CoordinateSequence.X, to.x);
                points.setOrdinate(i, CoordinateSequence.Y, to.y);
            }

            @Override
            public boolean isDone() {
                return false;
            }

            @Override
            public boolean isGeometryChanged() {
                return true;
            }
        });
        return moved;
    }
}
