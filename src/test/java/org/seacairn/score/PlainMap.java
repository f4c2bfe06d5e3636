package org.seacairn.score;

import java.util.HashMap;
import java.util.Map;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.apache.sis.referencing.CRS;
import org.apache.sis.referencing.CommonCRS;
import org.opengis.referencing.operation.MathTransform;
import org.opengis.referencing.operation.TransformException;
import org.opengis.util.FactoryException;

/** Coordinates for the oracle, from libraries that the code under test does not use: SIS and GeographicLib. */
public final class PlainMap {
    private static final Map<Integer, MathTransform> TO_LON_LAT = new HashMap<>();

    private PlainMap() {}

    /** Longitude and latitude of a place in a UTM zone on WGS 84; the zone is negative in the south. */
    public static double[] lonLat(int zone, double x, double y) {
        return transformed(TO_LON_LAT.computeIfAbsent(zone, PlainMap::toLonLat), x, y);
    }

    /** Easting and northing of a place in a UTM zone on WGS 84; the zone is negative in the south. */
    public static double[] utm(int zone, double lon, double lat) {
        try {
            return transformed(TO_LON_LAT.computeIfAbsent(zone, PlainMap::toLonLat).inverse(), lon, lat);
        } catch (TransformException e) {
            throw new IllegalStateException(e);
        }
    }

    private static double[] transformed(MathTransform transform, double x, double y) {
        double[] xy = {x, y};
        try {
            transform.transform(xy, 0, xy, 0, 1);
        } catch (TransformException e) {
            throw new IllegalStateException(e);
        }
        return xy;
    }

    private static MathTransform toLonLat(int zone) {
        double lon = 6 * Math.abs(zone) - 183;
        try {
            return CRS.findOperation(CommonCRS.WGS84.universal(Math.copySign(10, zone), lon),
                    CommonCRS.WGS84.normalizedGeographic(), null).getMathTransform();
        } catch (FactoryException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Place b as seen from place a on a plane that keeps distance and azimuth from a (azimuthal equidistant). */
    public static double[] from(double[] a, double[] b) {
        GeodesicData line = Geodesic.WGS84.Inverse(a[1], a[0], b[1], b[0]);
        double azimuth = Math.toRadians(line.azi1);
        return new double[] {line.s12 * Math.sin(azimuth), line.s12 * Math.cos(azimuth)};
    }
}
