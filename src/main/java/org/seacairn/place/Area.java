package org.seacairn.place;

import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.geodesy.Crs;

/**
 * A candidate permit area: a rectangle about a cell's centre, and what its cells hold. A cell belongs to it
 * if its centre lies in it or on its edge.
 *
 * @param col column of the cell at its centre
 * @param row row of the cell at its centre
 * @param place where it lies on the map
 * @param turnDeg true bearing of the long side at the centre, 0 up to 180
 * @param corners in the working CRS, clockwise, the north-western first: the one farthest to the
 *     north-west, of two alike the more northern
 * @param meanScore over its scored cells, scores taken in steps of 2^-20; what areas are ranked by
 * @param lowestScore of its scored cells
 * @param cells number of its cells
 * @param ruledOutCells how many of them are ruled out or without data
 * @param depthM of its cells that have a depth
 * @param sureDepthM the least of its depths less their vertical uncertainty (95 %); NaN where no cell has both
 * @param slopeDeg of its cells that have a slope
 * @param bottomShares share of its cells by bottom class, largest first; empty text stands for unmapped. Empty
 *     if the plan has no bottom layer
 * @param areaM2 geodesic area in square metres
 */
public record Area(
        int col, int row, PlacedRectangle place, AreaSize size, double turnDeg, List<Coordinate> corners,
        double meanScore, double lowestScore, int cells, int ruledOutCells, Range depthM, double sureDepthM, Range slopeDeg,
        Map<String, Double> bottomShares, double areaM2) {

    /** The least and the most of a measure; both NaN where nothing has it. */
    public record Range(double least, double most) {}

    /** Share of its cells that are ruled out or without data, 0..1. */
    public double ruledOutShare() {
        return (double) ruledOutCells / cells;
    }

    /** A place in it, in the working CRS. */
    public Coordinate at(Packing.Place p) {
        return place.at(2 * p.alongM() / size.lengthM(), 2 * p.acrossM() / size.widthM());
    }

    /** The corners as longitude and latitude on WGS 84, in the same order. */
    public List<Coordinate> cornersLonLat(Crs working) {
        return corners.stream().map(c -> working.to(Crs.WGS84).apply(c.x, c.y)).toList();
    }
}
