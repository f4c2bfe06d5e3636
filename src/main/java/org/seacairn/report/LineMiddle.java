package org.seacairn.report;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.linearref.LengthIndexedLine;

/** The middle of a line and its direction there, for a text along it. */
record LineMiddle(double x, double y, double angleDeg) {
    /** The text follows the line's run over this far to both sides. */
    private static final double REACH = 20;

    static LineMiddle of(Geometry line) {
        Geometry longest = line.getGeometryN(0);
        for (int i = 1; i < line.getNumGeometries(); i++) {
            longest = line.getGeometryN(i).getLength() > longest.getLength() ? line.getGeometryN(i) : longest;
        }
        return at(new LengthIndexedLine(longest), longest.getLength() / 2);
    }

    static LineMiddle at(LengthIndexedLine line, double along) {
        Coordinate from = line.extractPoint(Math.max(0, along - REACH));
        Coordinate to = line.extractPoint(Math.min(line.getEndIndex(), along + REACH));
        Coordinate middle = line.extractPoint(along);
        return new LineMiddle(middle.x, middle.y, Math.toDegrees(Math.atan2(to.y - from.y, to.x - from.x)));
    }
}
