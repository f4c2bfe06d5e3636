package org.seacairn.export;

import java.util.ArrayList;
import java.util.List;
import org.geotools.coverage.grid.io.imageio.geotiff.CRS2GeoTiffMetadataAdapter;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoKeyEntry;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffException;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffIIOMetadataEncoder;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;

/** The GeoKey directory of a projected CRS (OGC 19-008r4, section 7.1). */
final class GeoKeys {
    private static final int DIRECTORY = 34735;
    private static final int DOUBLES = 34736;
    private static final int ASCII = 34737;

    private GeoKeys() {}

    static List<TiledGeoTiff.Field> fields(Crs crs) {
        if (crs.epsg().isPresent()) {
            // Model: projected; raster: pixel is area; the CRS by its code; axes in metres.
            return List.of(TiledGeoTiff.Field.shorts(DIRECTORY, 1, 1, 0, 4,
                    1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, crs.epsg().getAsInt(), 3076, 0, 1, 9001));
        }
        try {
            return spelledOut(new CRS2GeoTiffMetadataAdapter(crs.library()).parseCoordinateReferenceSystem());
        } catch (GeoTiffException | IllegalArgumentException e) {
            throw new InputException("the working CRS " + crs.label() + " cannot be stated in a GeoTIFF ("
                    + e.getMessage() + "); name an EPSG code as crs in the plan", e);
        }
    }

    /** A CRS without a code, by its parameters. */
    private static List<TiledGeoTiff.Field> spelledOut(GeoTiffIIOMetadataEncoder keys) {
        List<Integer> directory = new ArrayList<>(List.of(1, 1, 0, 0));
        List<Double> doubles = new ArrayList<>();
        StringBuilder ascii = new StringBuilder();
        boolean rasterType = false;
        for (int i = 0; i < keys.getNumGeoKeyEntries(); i++) {
            GeoKeyEntry key = keys.getGeoKeyEntryAt(i);
            int id = key.getKeyID();
            if (id == DIRECTORY || id == 1) {
                continue;
            }
            rasterType |= id == 1025;
            switch (key.getTiffTagLocation()) {
                case DOUBLES -> {
                    double[] values = keys.getGeoDoubleParams(id);
                    directory.addAll(List.of(id, DOUBLES, values.length, doubles.size()));
                    for (double v : values) {
                        doubles.add(v);
                    }
                }
                case ASCII -> {
                    String text = keys.getGeoAsciiParam(id) + "|";
                    directory.addAll(List.of(id, ASCII, text.length(), ascii.length()));
                    ascii.append(text);
                }
                default -> directory.addAll(List.of(id, 0, 1, keys.getGeoShortParam(id)));
            }
        }
        if (!rasterType) {
            int at = 4;
            while (at < directory.size() && directory.get(at) < 1025) {
                at += 4;
            }
            directory.addAll(at, List.of(1025, 0, 1, 1));
        }
        directory.set(3, directory.size() / 4 - 1);
        List<TiledGeoTiff.Field> fields = new ArrayList<>();
        fields.add(TiledGeoTiff.Field.shorts(DIRECTORY, directory.stream().mapToInt(v -> v).toArray()));
        if (!doubles.isEmpty()) {
            fields.add(TiledGeoTiff.Field.doubles(DOUBLES, doubles.stream().mapToDouble(v -> v).toArray()));
        }
        if (!ascii.isEmpty()) {
            fields.add(TiledGeoTiff.Field.text(ASCII, ascii.toString()));
        }
        return fields;
    }
}
