package org.seacairn.review;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.layer.Feature;
import org.seacairn.layer.VectorLayer;

/**
 * Finds the usual mistakes with coordinates: a proposed place off the grid that lies on it once its two
 * coordinates are swapped, or its longitude's sign is turned (west is negative). Around places whose
 * swapped image is a place of the same grid nothing can be told, and nothing is.
 */
final class MistakenPlaces {
    private static final int TOLD = 20;

    private final VectorLayer layer;
    private final WorkingMap map;
    private final CoordinateTransform toLonLat;

    MistakenPlaces(VectorLayer layer, WorkingMap map) {
        this.layer = layer;
        this.map = map;
        this.toLonLat = layer.crs().to(map.grid().crs().geographic());
    }

    /** @throws InputException that names the sites, if there is such a place */
    void refuse(Function<Feature, String> nameOf) {
        refuse(nameOf, c -> new Coordinate(c.y, c.x),
                layer.crs().isGeographic() ? "latitude and longitude look swapped" : "easting and northing look swapped");
        if (layer.crs().isGeographic()) {
            refuse(nameOf, c -> new Coordinate(-c.x, c.y), "the sign of the longitude looks wrong (west is negative)");
        }
    }

    private void refuse(Function<Feature, String> nameOf, UnaryOperator<Coordinate> mend, String look) {
        if (isNearItsOwnImage(mend)) {
            return;
        }
        List<String> mistaken = new ArrayList<>();
        for (Feature feature : layer.features()) {
            Coordinate place = feature.geometry().getCoordinate();
            if (!isOnGrid(place) && isOnGrid(mend.apply(place))) {
                mistaken.add(nameOf.apply(feature));
            }
        }
        if (!mistaken.isEmpty()) {
            String more = mistaken.size() > TOLD ? " and " + (mistaken.size() - TOLD) + " more" : "";
            throw new InputException(layer.file().getFileName() + ", site "
                    + String.join(", ", mistaken.subList(0, Math.min(TOLD, mistaken.size()))) + more + ": " + look
                    + "; the other way it would lie on the grid of the bathymetry; correct the file");
        }
    }

    /** Where the mended grid lies near the grid itself: about a diagonal of longitude and latitude, or the antimeridian. */
    private boolean isNearItsOwnImage(UnaryOperator<Coordinate> mend) {
        Coordinate middle = map.middle();
        Coordinate image = mend.apply(map.grid().crs().geographic().to(layer.crs()).apply(middle.x, middle.y));
        if (layer.crs().isGeographic() && !(Math.abs(image.y) <= 90)) {
            return false;
        }
        try {
            Coordinate there = toLonLat.apply(image.x, image.y);
            double awayM = map.grid().crs().geodesic().Inverse(middle.y, middle.x, there.y, there.x).s12;
            return awayM < 5 * map.grid().cellM() * Math.hypot(map.grid().cols(), map.grid().rows());
        } catch (InputException e) {
            return false;
        }
    }

    private boolean isOnGrid(Coordinate place) {
        if (layer.crs().isGeographic() && !(Math.abs(place.y) <= 90)) {
            return false;
        }
        try {
            Coordinate lonLat = toLonLat.apply(place.x, place.y);
            return map.isOnGrid(lonLat.x, lonLat.y);
        } catch (InputException e) {
            return false;
        }
    }
}
