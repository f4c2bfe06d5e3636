package org.seacairn.score;

import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.InputException;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.geodesy.Vertices;
import org.seacairn.grid.GridGeometry;
import org.seacairn.layer.Feature;
import org.seacairn.layer.VectorLayer;

/**
 * The usual mistakes with coordinates that put a whole layer elsewhere: x and y swapped, and a west
 * longitude without its minus. A layer off the grid is laid out anew as if the mistake had been made.
 */
enum MistakenAxes {
    SWAPPED("x and y (longitude and latitude) look swapped") {
        @Override
        Coordinate corrected(Coordinate place) {
            return new Coordinate(place.y, place.x);
        }
    },
    UNSIGNED("the longitudes look as if their sign were wrong (west is negative)") {
        @Override
        Coordinate corrected(Coordinate place) {
            return new Coordinate(-place.x, place.y);
        }
    };

    private final String look;

    MistakenAxes(String look) {
        this.look = look;
    }

    abstract Coordinate corrected(Coordinate place);

    /** What is told of a layer off the grid that comes to lie on it once a mistake is undone. */
    static Optional<String> look(VectorLayer layer, GridGeometry grid) {
        for (MistakenAxes mistake : values()) {
            if (mistake == UNSIGNED && !layer.crs().isGeographic()) {
                continue;
            }
            List<Feature> undone = layer.features().stream().map(mistake::undo).filter(f -> isPlace(f, layer)).toList();
            int onGrid = onGrid(new VectorLayer(layer.label(), layer.file(), layer.format(), layer.crs(), layer.edges(), undone, 0,
                    List.of()), grid);
            if (onGrid > 0) {
                return Optional.of(mistake.look + ": the other way " + onGrid + " of " + layer.features().size()
                        + " features would lie on the working grid; correct the file");
            }
        }
        return Optional.empty();
    }

    private static int onGrid(VectorLayer layer, GridGeometry grid) {
        try {
            return GridOverlap.featuresOn(WorkingLayer.of(layer, grid, 0), grid);
        } catch (InputException e) {
            // Not a place of that CRS either, so this was not the mistake.
            return 0;
        }
    }

    private static boolean isPlace(Feature feature, VectorLayer layer) {
        if (!layer.crs().isGeographic()) {
            return true;
        }
        for (Coordinate c : feature.geometry().getCoordinates()) {
            if (Math.abs(c.y) > 90 || Math.abs(c.x) > 360) {
                return false;
            }
        }
        return true;
    }

    private Feature undo(Feature feature) {
        Geometry image = Vertices.moved(feature.geometry(), this::corrected);
        return new Feature(feature.id(), image, feature.attributes());
    }
}
