package org.seacairn.place;

import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;
import org.locationtech.jts.geom.Coordinate;

/**
 * How near a straight drift passes to each module.
 *
 * <p>The drift is the geodesic through a start at a true heading; distances across it are taken in the
 * plane of distance and azimuth about the start, right to a centimetre within 10 km of it. The offset is
 * that of the parallel drift whose largest miss is least.
 *
 * @param headingDeg of the drift, clockwise from true north
 * @param sightM how far to each side the drift sees
 * @param missM by module, to the right of the drift through the start; negative to the left
 * @param offsetM of the best parallel drift to the right of the start; negative to the left
 */
public record DriftCheck(double headingDeg, double sightM, List<Double> missM, double offsetM) {

    /** @param start where the drift goes through: longitude and latitude on the working CRS's own datum */
    public static DriftCheck of(Geodesic geodesic, Coordinate start, List<Pick> modules, double headingDeg, double sightM) {
        List<Double> missM = modules.stream().map(m -> {
            GeodesicData d = geodesic.Inverse(start.y, start.x, m.latitudeDeg(), m.longitudeDeg(),
                    GeodesicMask.DISTANCE | GeodesicMask.AZIMUTH);
            return d.s12 * Math.sin(Math.toRadians(d.azi1 - headingDeg));
        }).toList();
        double right = missM.stream().mapToDouble(Double::doubleValue).max().orElse(0);
        double left = missM.stream().mapToDouble(Double::doubleValue).min().orElse(0);
        return new DriftCheck(headingDeg, sightM, missM, (right + left) / 2);
    }

    /** By module, to the right of the best parallel drift; negative to the left. */
    public List<Double> missFromOffsetM() {
        return missM.stream().map(m -> m - offsetM).toList();
    }

    /** Whether the drift through the start passes within sight of every module. */
    public boolean seesAll() {
        return missM.stream().allMatch(m -> Math.abs(m) <= sightM);
    }

    /** Whether some parallel drift passes within sight of every module. */
    public boolean seesAllFromOffset() {
        return missFromOffsetM().stream().allMatch(m -> Math.abs(m) <= sightM);
    }
}
