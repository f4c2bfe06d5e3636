package org.seacairn.layer;

import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan;

/** Which CRS the working grid has: the plan's, or the bathymetry's own where that is the UTM zone of its centre, or that zone. */
public final class WorkingCrs {
    private WorkingCrs() {}

    /**
     * @param own the CRS of the bathymetry file
     * @param x of the file's centre in that CRS
     * @param y of the file's centre in that CRS
     * @throws InputException if the plan's CRS is not metric, or there is none for that place
     */
    public static Crs of(SitingPlan plan, Crs own, double x, double y) {
        if (plan.crs().isPresent()) {
            Crs stated = Crs.parse(plan.crs().get());
            if (!stated.isMetric()) {
                throw new InputException(plan.file().getFileName() + ": crs: " + stated.label()
                        + " is not projected in metres, so it cannot carry the working grid; name a UTM zone such as"
                        + " EPSG:32617, or leave crs out");
            }
            return stated;
        }
        Coordinate centre;
        try {
            centre = own.to(Crs.WGS84).apply(x, y);
        } catch (InputException e) {
            throw new InputException(plan.bathymetry().source().file().getFileName() + ": " + e.getMessage(), e);
        }
        if (Math.abs(centre.y) > 84) {
            throw new InputException(plan.file().getFileName() + ": the bathymetry lies at latitude "
                    + String.format(Locale.ROOT, "%.1f", centre.y) + ", where UTM has no zone; name a metric crs in the plan");
        }
        Crs utm = Crs.utmAt(centre.x - 360 * Math.rint(centre.x / 360), centre.y);
        return isSameZone(own, utm, centre) ? own : utm;
    }

    /** Whether a CRS is the zone on another datum of like ellipsoid: it then serves as it is. */
    private static boolean isSameZone(Crs own, Crs utm, Coordinate lonLat) {
        if (!own.isMetric()) {
            return false;
        }
        Coordinate a = own.geographic().to(own).apply(lonLat.x, lonLat.y);
        Coordinate b = Crs.WGS84.to(utm).apply(lonLat.x, lonLat.y);
        return a.distance(b) < 1;
    }
}
