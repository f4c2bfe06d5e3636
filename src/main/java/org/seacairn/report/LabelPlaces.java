package org.seacairn.report;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * Which texts are shown at first, and where: one after the other, the most important first, each where nothing covers it
 * or else not at all. The page's script does the same again when the map is zoomed, with the widths that the browser measured.
 */
final class LabelPlaces {
    /** The map on a page of usual width. */
    private static final double UNITS_PER_PX = 1.1;
    /** Between two texts along lines, so that one line is not labelled at every turn. */
    private static final double ALONG_APART_PX = 55;
    /** Texts keep this far from the edge of the map. */
    private static final double EDGE_PX = 2;

    private record Taken(Envelope box, boolean alongLine) {}

    private record Mark(Coordinate at, Envelope box) {}

    private final Envelope sight;
    private final List<Mark> marks = new ArrayList<>();
    private final List<Taken> taken = new ArrayList<>();
    private final Map<MapLabel, LabelSpot> shown = new IdentityHashMap<>();

    LabelPlaces(MapPlane plane) {
        this.sight = new Envelope(0, plane.width(), 0, plane.height());
        sight.expandBy(-EDGE_PX * UNITS_PER_PX);
    }

    /** A mark that no text but its own may cover. */
    void mark(Coordinate at, double sizePx) {
        Envelope box = new Envelope(at);
        box.expandBy(sizePx / 2 * UNITS_PER_PX);
        marks.add(new Mark(at, box));
    }

    void place(MapLabel label) {
        for (LabelSpot spot : SvgStyle.spot(label.look()).choices()) {
            Envelope box = label.box(spot, UNITS_PER_PX);
            if (sight.contains(box) && isFree(label, box)) {
                taken.add(new Taken(box, label.alongLine()));
                shown.put(label, spot);
                return;
            }
        }
    }

    private boolean isFree(MapLabel label, Envelope box) {
        Envelope wide = new Envelope(box);
        wide.expandBy(ALONG_APART_PX * UNITS_PER_PX);
        boolean marked = marks.stream().anyMatch(mark ->
                (mark.at().x != label.x() || mark.at().y != label.y()) && mark.box().intersects(box));
        return !marked && taken.stream().noneMatch(other ->
                other.box().intersects(other.alongLine() && label.alongLine() ? wide : box));
    }

    /** Where a text stands; empty if it is not shown at first. */
    Optional<LabelSpot> spot(MapLabel label) {
        return Optional.ofNullable(shown.get(label));
    }
}
