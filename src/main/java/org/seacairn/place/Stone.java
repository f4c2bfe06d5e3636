package org.seacairn.place;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.distance.DistanceOp;
import org.seacairn.geodesy.GeodesicEdges;
import org.seacairn.grid.GridGeometry;

/**
 * An existing reef or module from which gaps are measured: to the nearest point of its geometry.
 *
 * @param name for messages and outputs
 * @param onMap in the working CRS, edges densified along their geodesics
 */
public record Stone(String name, Geometry onMap) {

    /**
     * @param lonLat any geometry, longitude and latitude in degrees on the working CRS's own datum
     * @throws org.seacairn.InputException if a coordinate is no place on Earth or lies outside the map
     */
    public static Stone of(String name, Geometry lonLat, GridGeometry grid) {
        Geometry dense = GeodesicEdges.densify(lonLat, grid.crs().geodesic(), GeodesicEdges.PIECE_M);
        return new Stone(name, grid.crs().geographic().to(grid.crs()).apply(dense));
    }

    /** The point of this stone that is nearest to a geometry on the map, in the working CRS. */
    Coordinate nearestTo(Geometry other) {
        return DistanceOp.nearestPoints(onMap, other)[0];
    }
}
