package org.seacairn.layer;

import javax.measure.quantity.Length;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.VerticalCRS;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffIIOMetadataDecoder;
import org.geotools.referencing.CRS;
import si.uom.SI;

/**
 * What the keys of a GeoTIFF say of its heights (OGC 19-008r4, VerticalGeoKey 4096, VerticalCitationGeoKey 4097, VerticalUnitsGeoKey 4099).
 *
 * @param datum name of the vertical CRS without "height" or "depth", or empty text
 * @param unit its unit, or empty text
 */
record GeoTiffHeights(String datum, String unit) {
    private static final int CRS_KEY = 4096;
    private static final int CITATION_KEY = 4097;
    private static final int UNIT_KEY = 4099;
    private static final String NONE = "";

    /** @param keys of the file, or null for none */
    static GeoTiffHeights of(GeoTiffIIOMetadataDecoder keys) {
        String code = keys == null ? null : keys.getGeoKey(CRS_KEY);
        String citation = keys == null ? null : keys.getGeoKey(CITATION_KEY);
        String unit = unit(keys == null ? null : keys.getGeoKey(UNIT_KEY));
        VerticalCRS known = known(code);
        String name = citation != null && !citation.isBlank() ? citation : known == null ? NONE : known.getName().getCode();
        return new GeoTiffHeights(name.strip().replaceFirst("(?i) (height|depth)( \\(.*\\))?$", NONE),
                unit.isEmpty() && known != null ? unit(known) : unit);
    }

    private static VerticalCRS known(String code) {
        try {
            // 32767 is a CRS of the file's own.
            return code != null && !code.equals("32767") && CRS.decode("EPSG:" + code) instanceof VerticalCRS known ? known : null;
        } catch (FactoryException unknown) {
            return null;
        }
    }

    private static String unit(String code) {
        return switch (code == null ? NONE : code) {
            case "9001" -> "metre";
            case "9002" -> "foot";
            case "9003" -> "US survey foot";
            default -> NONE;
        };
    }

    private static String unit(VerticalCRS crs) {
        double metres = crs.getCoordinateSystem().getAxis(0).getUnit().asType(Length.class).getConverterTo(SI.METRE).convert(1.0);
        return unit(metres == 1 ? "9001" : metres == 0.3048 ? "9002" : Math.abs(metres - 1200 / 3937.0) < 1e-9 ? "9003" : NONE);
    }
}
