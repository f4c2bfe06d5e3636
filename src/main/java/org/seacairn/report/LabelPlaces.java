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
    /** The map on a narrow page or on paper: what {@code --f} is in {@code map.css} there. */
    private static final double NARROW_UNITS_PER_PX = 2.8;
    /** Between two texts along lines, so that one line is not labelled at every turn. */
    private static final double ALONG_APART_PX = 55;
    /** Texts keep this far from the edge of the map. */
    private static final double EDGE_PX = 2;

    private record Taken(Envelope box, boolean alongLine) {}

    private record Mark(Coordinate at, double sizePx) {
        Envelope box(double unitsPerPx) {
            Envelope box = new Envelope(at);
            box.expandBy(sizePx / 2 * unitsPerPx);
            return box;
        }
    }

    private final Envelope sight;
    private final List<Mark> marks = new ArrayList<>();
    private final List<Taken> taken = new ArrayList<>();
    private final List<Taken> takenNarrow = new ArrayList<>();
    private final Map<MapLabel, LabelSpot> shown = new IdentityHashMap<>();
    private final Map<MapLabel, LabelSpot> shownNarrow = new IdentityHashMap<>();

    LabelPlaces(MapPlane plane) {
        this.sight = new Envelope(0, plane.width(), 0, plane.height());
        sight.expandBy(-EDGE_PX * UNITS_PER_PX);
    }

    /** A mark that no text but its own may cover. */
    void mark(Coordinate at, double sizePx) {
        marks.add(new Mark(at, sizePx));
    }

    void place(MapLabel label) {
        for (LabelSpot spot : SvgStyle.spot(label.look()).choices()) {
            if (take(label, spot, UNITS_PER_PX, taken)) {
                shown.put(label, spot);
                if (take(label, spot, NARROW_UNITS_PER_PX, takenNarrow)) {
                    shownNarrow.put(label, spot);
                }
                return;
            }
        }
    }

    private boolean take(MapLabel label, LabelSpot spot, double unitsPerPx, List<Taken> taken) {
        Envelope box = label.box(spot, unitsPerPx);
        boolean free = sight.contains(box) && isFree(label, box, unitsPerPx, taken);
        if (free) {
            taken.add(new Taken(box, label.alongLine()));
        }
        return free;
    }

    private boolean isFree(MapLabel label, Envelope box, double unitsPerPx, List<Taken> taken) {
        Envelope wide = new Envelope(box);
        wide.expandBy(ALONG_APART_PX * unitsPerPx);
        boolean marked = marks.stream().anyMatch(mark ->
                (mark.at().x != label.x() || mark.at().y != label.y()) && mark.box(unitsPerPx).intersects(box));
        return !marked && taken.stream().noneMatch(other ->
                other.box().intersects(other.alongLine() && label.alongLine() ? wide : box));
    }

    /** Where a text stands; empty if it is not shown at first. */
    Optional<LabelSpot> spot(MapLabel label) {
        return Optional.ofNullable(shown.get(label));
    }

    /** Whether there is room for it on a narrow page too, which has no script to find another place. */
    boolean fitsNarrow(MapLabel label) {
        return shownNarrow.containsKey(label);
    }
}
