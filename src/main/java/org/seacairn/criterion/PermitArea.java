package org.seacairn.criterion;

import java.util.Arrays;
import java.util.List;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PolygonScan;

/** Rules out cells whose centre lies in no polygon of the permit areas. It scores nothing. */
public final class PermitArea implements Rule {
    private final PolygonScan scan;
    private final int outside;

    public PermitArea(WorkingLayer areas, GridGeometry grid, Reasons reasons) {
        List<org.locationtech.jts.geom.Geometry> polygons =
                areas.pieces().stream().map(WorkingLayer.Piece::geometry).toList();
        this.scan = new PolygonScan(grid, polygons, new int[polygons.size()]);
        this.outside = reasons.bit(Reasons.OUTSIDE_AREA);
    }

    @Override
    public void rule(Tile tile, int[] reasons) {
        int[] inside = new int[reasons.length];
        Arrays.fill(inside, 1);
        scan.paint(tile.outer(), inside);
        for (int i = 0; i < reasons.length; i++) {
            reasons[i] |= inside[i] == 0 ? 0 : outside;
        }
    }
}
