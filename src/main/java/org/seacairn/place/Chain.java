package org.seacairn.place;

import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;

/**
 * Modules between two stones, each a gap from the next.
 *
 * @param modules in order from the first stone on; none where the stones are themselves a gap apart
 * @param alongM of each module, metres along the axis
 * @param gaps one more than modules
 * @param meanScore of the modules; NaN without any
 * @param boundScore no chain of as many modules has a higher mean; equal to {@code meanScore} where this is proven the best
 */
public record Chain(List<Pick> modules, List<Double> alongM, List<Gap> gaps, double meanScore, double boundScore) {

    /**
     * From one stone or module to the next; places on the working CRS's own datum.
     *
     * @param distanceM geodesic
     * @param bearingDeg of the geodesic at its start, clockwise from true north, 0 to 360
     */
    public record Gap(double fromLongitudeDeg, double fromLatitudeDeg, double toLongitudeDeg, double toLatitudeDeg,
            double distanceM, double bearingDeg) {}

    /** Whether no other chain of as many modules is better. */
    public boolean proven() {
        return modules.isEmpty() || meanScore == boundScore;
    }

    static Chain of(Corridor corridor, int[] slots, long total, long bound) {
        List<Pick> modules = new ArrayList<>();
        List<Double> alongM = new ArrayList<>();
        for (int slot : slots) {
            modules.add(corridor.pick(slot));
            alongM.add(corridor.alongM(slot));
        }
        return new Chain(List.copyOf(modules), List.copyOf(alongM), gaps(corridor, modules),
                ChainLevels.score(total) / slots.length, ChainLevels.score(bound) / slots.length);
    }

    private static List<Gap> gaps(Corridor corridor, List<Pick> modules) {
        Stone from = corridor.axis().from();
        Stone to = corridor.axis().to();
        List<Coordinate> places = new ArrayList<>();
        Coordinate start = from.nearestTo(modules.isEmpty() ? to.onMap() : point(modules.get(0)));
        Coordinate end = to.nearestTo(modules.isEmpty() ? from.onMap() : point(modules.get(modules.size() - 1)));
        places.add(corridor.lonLat(start));
        modules.forEach(m -> places.add(new Coordinate(m.longitudeDeg(), m.latitudeDeg())));
        places.add(corridor.lonLat(end));
        Geodesic geodesic = corridor.grid().crs().geodesic();
        List<Gap> gaps = new ArrayList<>();
        for (int i = 1; i < places.size(); i++) {
            gaps.add(gap(geodesic, places.get(i - 1), places.get(i)));
        }
        return List.copyOf(gaps);
    }

    private static Point point(Pick module) {
        return new GeometryFactory().createPoint(new Coordinate(module.x(), module.y()));
    }

    private static Gap gap(Geodesic geodesic, Coordinate a, Coordinate b) {
        GeodesicData d = geodesic.Inverse(a.y, a.x, b.y, b.x, GeodesicMask.DISTANCE | GeodesicMask.AZIMUTH);
        return new Gap(a.x, a.y, b.x, b.y, d.s12, d.azi1 < 0 ? d.azi1 + 360 : d.azi1);
    }
}
