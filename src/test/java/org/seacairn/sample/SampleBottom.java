package org.seacairn.sample;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;

/**
 * Bottom types that follow the sea floor: bands between isobaths of the smooth shelf, cut into blocks;
 * hard bottom along the ledges and over most of the pinnacles; the channel's own fill. The
 * polygons meet, slivers of a few square metres aside, but for one patch of hard bottom that was mapped
 * over sand, and one gap.
 */
final class SampleBottom {
    /** @param geometry polygon or multi-polygon in the sample's frame */
    record Patch(String kind, Geometry geometry) {}

    private static final String MUD = "mud";
    private static final String SAND = "sand";
    private static final String SHELL_HASH = "shell hash";
    private static final String HARDBOTTOM = "hardbottom";

    /** Mapped a little beyond the survey. */
    private static final double MARGIN_M = 300;
    private static final double[] ISOBATHS_M = {46, 62, 84, 110, 148};
    private static final double[] CUTS_M = {3_150, 6_900, 9_800, 13_100, 15_700};
    /** One row a band, shallow to deep; one kind a block, south to north. */
    private static final String[][] KINDS = {
        {SAND, SAND, SHELL_HASH, SAND, SAND, SHELL_HASH},
        {SHELL_HASH, SAND, SAND, SHELL_HASH, SAND, SAND},
        {SAND, SAND, SHELL_HASH, SAND, SAND, SAND},
        {SAND, MUD, SAND, SAND, SHELL_HASH, SAND},
        {MUD, SAND, MUD, SAND, MUD, SAND},
        {MUD, MUD, MUD, MUD, MUD, MUD},
    };

    private static final PrecisionModel DECIMETRES = new PrecisionModel(10);
    private static final GeometryFactory FACTORY = new GeometryFactory(DECIMETRES);

    private final SampleTerrain terrain = new SampleTerrain();
    private final GradientNoise noise = new GradientNoise(7);
    private final List<Patch> patches = new ArrayList<>();
    private Geometry taken = FACTORY.createPolygon();

    /** Every patch, in the order in which it is written. */
    static List<Patch> patches() {
        SampleBottom bottom = new SampleBottom();
        bottom.leave(blob(16_300, 13_300, 430, 300, 11));
        bottom.lay(SHELL_HASH, bottom.channel(-MARGIN_M, 8_200));
        bottom.lay(MUD, bottom.channel(8_200, 19_500));
        bottom.lay(HARDBOTTOM, blob(SampleTerrain.PINNACLES.x + 60, SampleTerrain.PINNACLES.y - 90, 430, 610, 12));
        bottom.layLedges();
        bottom.layBands();
        bottom.patches.add(new Patch(HARDBOTTOM, blob(10_150, 4_600, 330, 190, 13)));
        return bottom.patches;
    }

    /** Adds what is still free of a shape, and takes it. */
    private void lay(String kind, Geometry shape) {
        Geometry free = OverlayNG.overlay(shape, taken, OverlayNG.DIFFERENCE, DECIMETRES);
        if (!free.isEmpty()) {
            patches.add(new Patch(kind, free));
            leave(shape);
        }
    }

    private void leave(Geometry shape) {
        taken = OverlayNG.overlay(taken, shape, OverlayNG.UNION, DECIMETRES);
    }

    private void layLedges() {
        for (int i = 0; i < SampleTerrain.LEDGES.size(); i++) {
            List<Coordinate> run = new ArrayList<>();
            for (double y = -MARGIN_M; y <= SampleFrame.HEIGHT_M + MARGIN_M; y += 120) {
                boolean strong = terrain.ledgeStrength(i, y) > 0.5;
                if (strong) {
                    run.add(onIsobath(SampleTerrain.LEDGES.get(i).depthM(), y));
                }
                if (run.size() > 1 && (!strong || y + 120 > SampleFrame.HEIGHT_M + MARGIN_M)) {
                    lay(HARDBOTTOM, FACTORY.createLineString(run.toArray(Coordinate[]::new))
                            .buffer(75, 2, BufferParameters.CAP_ROUND));
                }
                if (!strong) {
                    run.clear();
                }
            }
        }
    }

    private void layBands() {
        for (int band = 0; band < KINDS.length; band++) {
            for (int block = 0; block < KINDS[band].length; block++) {
                Geometry between = OverlayNG.overlay(band(band), block(block), OverlayNG.INTERSECTION, DECIMETRES);
                lay(KINDS[band][block], between);
            }
        }
    }

    private Geometry band(int band) {
        List<Coordinate> ring = new ArrayList<>();
        for (double y = -MARGIN_M; y <= SampleFrame.HEIGHT_M + MARGIN_M; y += 200) {
            ring.add(band == 0 ? new Coordinate(-MARGIN_M, y) : onIsobath(ISOBATHS_M[band - 1], y));
        }
        List<Coordinate> back = new ArrayList<>();
        for (double y = -MARGIN_M; y <= SampleFrame.HEIGHT_M + MARGIN_M; y += 200) {
            back.add(band == ISOBATHS_M.length ? new Coordinate(SampleFrame.WIDTH_M + MARGIN_M, y)
                    : onIsobath(ISOBATHS_M[band], y));
        }
        return ring(ring, back);
    }

    private Geometry block(int block) {
        return ring(cut(block - 1), cut(block));
    }

    /** The northern edge of a block: a line from west to east that wanders a little. */
    private List<Coordinate> cut(int block) {
        List<Coordinate> line = new ArrayList<>();
        for (double x = -MARGIN_M; x <= SampleFrame.WIDTH_M + MARGIN_M; x += 600) {
            double y = block < 0 ? -MARGIN_M : block == CUTS_M.length ? SampleFrame.HEIGHT_M + MARGIN_M
                    : CUTS_M[block] + 700 * noise.at(x / 2_900, block + 0.5);
            line.add(new Coordinate(x, y));
        }
        return line;
    }

    private Geometry channel(double from, double to) {
        List<Coordinate> south = new ArrayList<>();
        List<Coordinate> north = new ArrayList<>();
        for (double x = from; x <= to; x += 250) {
            double y = SampleTerrain.channelY(x);
            double half = 0.85 * SampleTerrain.channelHalfWidthM(terrain.seawardOfEdge(x, y));
            double bend = (SampleTerrain.channelY(x + 10) - SampleTerrain.channelY(x - 10)) / 20;
            double length = StrictMath.hypot(1, bend);
            south.add(new Coordinate(x + half * bend / length, y - half / length));
            north.add(new Coordinate(x - half * bend / length, y + half / length));
        }
        return ring(south, north);
    }

    /** Where the smooth shelf is this deep, at this northing: found by halving. */
    private Coordinate onIsobath(double depthM, double y) {
        double shallow = -5_000;
        double deep = 30_000;
        while (deep - shallow > 0.05) {
            double middle = (shallow + deep) / 2;
            if (terrain.shelfM(middle, y) < depthM) {
                shallow = middle;
            } else {
                deep = middle;
            }
        }
        return new Coordinate(StrictMath.min(SampleFrame.WIDTH_M + MARGIN_M, StrictMath.max(-MARGIN_M, shallow)), y);
    }

    /** A rounded patch with an uneven edge. */
    private static Geometry blob(double x, double y, double halfWidth, double halfHeight, long seed) {
        GradientNoise edge = new GradientNoise(seed);
        List<Coordinate> ring = new ArrayList<>();
        for (int i = 0; i < 28; i++) {
            double angle = 2 * StrictMath.PI * i / 28;
            double cos = StrictMath.cos(angle);
            double sin = StrictMath.sin(angle);
            double reach = 1 + 0.45 * edge.at(1.4 * cos + 9.3, 1.4 * sin + 9.3);
            ring.add(new Coordinate(x + halfWidth * reach * cos, y + halfHeight * reach * sin));
        }
        return ring(ring, List.of());
    }

    /** The polygon that goes out along one line and back along another, on the decimetre grid. */
    private static Geometry ring(List<Coordinate> out, List<Coordinate> back) {
        List<Coordinate> ring = new ArrayList<>(out);
        List<Coordinate> reversed = new ArrayList<>(back);
        Collections.reverse(reversed);
        ring.addAll(reversed);
        ring.add(out.get(0));
        Coordinate[] points = ring.stream().map(Coordinate::copy).toArray(Coordinate[]::new);
        for (Coordinate point : points) {
            DECIMETRES.makePrecise(point);
        }
        // A union with nothing also nodes a ring that touches itself where bands run out at the margin.
        return OverlayNG.overlay(FACTORY.createPolygon(points), FACTORY.createPolygon(), OverlayNG.UNION, DECIMETRES);
    }
}
