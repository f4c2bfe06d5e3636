package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.seacairn.InputException;
import org.seacairn.grid.GridGeometry;
import org.seacairn.score.GridFiles;
import org.seacairn.score.ScoredWindow;

/** Single cases on small pictures of the ground: a digit is a score in ninths, a letter a reason, cells of 10 m. */
class ChainCasesTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final int NO_DEPTH = 1;
    private static final double CELL_M = 10;

    private static GridGeometry grid(String... rows) {
        // Ground and map lengths agree to 1e-5 there, 180 km from the central meridian.
        return GridFiles.utm(17, false, 679_800, 3_300_000, CELL_M, rows[0].length(), rows.length);
    }

    /** A stone at the centre of a cell, which may lie off the picture. */
    private static Stone stone(String name, double col, double row, GridGeometry grid) {
        return Stone.of(name, FACTORY.createPoint(lonLat(col, row, grid)), grid);
    }

    private static Coordinate lonLat(double col, double row, GridGeometry grid) {
        return grid.crs().to(grid.crs().geographic())
                .apply(grid.west() + (col + 0.5) * CELL_M, grid.north() - (row + 0.5) * CELL_M);
    }

    /** From a stone one cell west of the picture to one a cell east of it, in the middle row. */
    private static Corridor corridor(double halfWidthM, String... rows) {
        GridGeometry grid = grid(rows);
        double middle = (rows.length - 1) / 2.0;
        return corridor(Axis.between(stone("Kittle Rock", -1, middle, grid), stone("Marl Reef", rows[0].length(), middle, grid), grid),
                halfWidthM, rows);
    }

    private static Corridor corridor(Axis axis, double halfWidthM, String... rows) {
        return Corridor.of(grid(rows), axis, halfWidthM, 3, 2, window -> {
            float[] score = new float[window.cells()];
            int[] reasons = new int[window.cells()];
            for (int i = 0; i < score.length; i++) {
                char c = rows[window.row() + i / window.cols()].charAt(window.col() + i % window.cols());
                score[i] = Character.isDigit(c) ? (c - '0') / 9f : Float.NaN;
                reasons[i] = Character.isDigit(c) ? 0 : 2 << c - 'a';
            }
            return new ScoredWindow(window, null, score, reasons);
        }, NO_DEPTH);
    }

    private static String cells(Chain chain) {
        return String.join(", ", chain.modules().stream().map(p -> p.col() + " " + p.row()).toList());
    }

    @Test
    void stonesAGapApartNeedNoModule() {
        ChainSearch.Result found = ChainSearch.fewest(corridor(15, "999"), new Gaps(15, 45, 15), 1);
        assertEquals(0, found.fewest().orElseThrow());
        Chain none = found.chains().get(0);
        assertEquals(List.of(), none.modules());
        assertEquals(40, none.gaps().get(0).distanceM(), 1e-3);
        assertEquals(Double.NaN, none.meanScore());
        assertTrue(none.proven());
        assertEquals("1 0", cells(found.chains().get(1)));
        assertEquals(2, found.chains().size());
    }

    @Test
    void fewerModulesComeBeforeABetterMean() {
        ChainSearch.Result found = ChainSearch.fewest(corridor(5, "9919199"), new Gaps(18, 42, 18), 1);
        assertEquals("3 0", cells(found.chains().get(0)));
        assertEquals(1 / 1.0, found.chains().get(0).meanScore(), 1e-6);
        assertEquals("1 0, 3 0", cells(found.chains().get(1)).substring(0, 8));
    }

    @Test
    void equalChainsGoByDistanceAlongTheAxisAndThenNorth() {
        // All alike: the first module as near the first stone as a gap allows, in the northernmost row.
        ChainSearch.Result found = ChainSearch.fewest(corridor(25, "aaaaaaa", "5555555", "aaaaaaa", "5555555", "aaaaaaa"),
                new Gaps(15, 60, 15), 1);
        assertEquals("2 1", cells(found.chains().get(0)));
    }

    /** The only way out of the first stone and into the second leads over two cells that stand too near each other. */
    @Test
    void chainThatMustDoubleBackIsNone() {
        String[] rows = {"aaaaaaaa", "aaa9aaaa", "aaaaaaaa", "aaaaaaaa", "aa9a9aaa", "aaaaaaaa", "aaaaaaaa", "aaaaaaaa", "aaaaaaaa"};
        Corridor corridor = corridor(50, rows);
        ChainSearch.Result apart = ChainSearch.fewest(corridor, new Gaps(29, 41, 28), 1);
        assertEquals(List.of(), apart.chains());
        assertEquals(List.of(), apart.undecided());
        assertTrue(apart.unbridged().isEmpty());
        ChainSearch.Result near = ChainSearch.fewest(corridor, new Gaps(29, 41, 15), 1);
        assertEquals("2 4, 3 1, 4 4", cells(near.chains().get(0)));
    }

    @Test
    void stretchThatCannotBeBridgedIsNamedWithItsReasons() {
        Corridor corridor = corridor(5, "5555abbb5555");
        Unbridged unbridged = ChainSearch.fewest(corridor, new Gaps(18, 42, 18), 1).unbridged().orElseThrow();
        assertEquals(40, unbridged.fromAlongM(), 0.01);
        assertEquals(90, unbridged.toAlongM(), 0.01);
        assertEquals(50, unbridged.lengthM(), 0.01);
        assertEquals(3, unbridged.from().orElseThrow().col());
        assertEquals(8, unbridged.to().orElseThrow().col());
        assertEquals(4, unbridged.cells());
        assertEquals(0, unbridged.freeCells());
        assertEquals(List.of(0L, 1L, 3L, 0L), unbridged.cellsByReason().subList(0, 4));
        assertEquals(130, unbridged.stonesApartM(), 0.01);
        assertEquals(3, unbridged.fewestByDistance());
        assertEquals(6, unbridged.mostInLine());
    }

    @Test
    void rangeThatNoNumberFitsIsNoStretchOfGround() {
        // 60 m with gaps of 35 m to 45 m: one gap is too short, and two too long but for a detour.
        Unbridged unbridged = ChainSearch.fewest(corridor(5, "55555"), new Gaps(35, 45, 35), 1).unbridged().orElseThrow();
        assertEquals(0, unbridged.lengthM());
        assertEquals(1, unbridged.fewestByDistance());
        assertEquals(0, unbridged.mostInLine());
    }

    @Test
    void nothingWithinReachOfAStoneIsAStretchFromTheStone() {
        Unbridged unbridged = ChainSearch.fewest(corridor(5, "aaaa5555"), new Gaps(18, 42, 18), 1).unbridged().orElseThrow();
        assertTrue(unbridged.from().isEmpty());
        assertEquals(0, unbridged.fromAlongM());
        assertEquals(4, unbridged.to().orElseThrow().col());
        assertEquals(4, unbridged.cellsByReason().get(1));
    }

    @Test
    void offTheGridCountsAsNoDepth() {
        GridGeometry grid = grid("55");
        Axis axis = Axis.between(stone("Kittle Rock", -1, 0, grid), stone("Marl Reef", 8, 0, grid), grid);
        Unbridged unbridged = ChainSearch.fewest(corridor(axis, 5, "55"), new Gaps(10, 25, 10), 1).unbridged().orElseThrow();
        assertEquals(1, unbridged.from().orElseThrow().col());
        assertEquals(6, unbridged.cellsByReason().get(0));
    }

    @Test
    void cellsNearPlacedModulesAreTaken() {
        Corridor corridor = corridor(5, "55555555555");
        Pick placed = corridor.pick(5);
        Corridor clear = corridor.clearOf(List.of(placed), 19);
        assertEquals(8, clear.scoredCells());
        Unbridged unbridged = ChainSearch.fewest(clear, new Gaps(19, 35, 19), 1).unbridged().orElseThrow();
        assertEquals(3, unbridged.cells());
        assertEquals(3, unbridged.takenCells());
        assertEquals(11, corridor.scoredCells());
    }

    @Test
    void exactlyAsManyAsAskedForOrThoseThatThereAre() {
        Corridor corridor = corridor(5, "5555555");
        Gaps gaps = new Gaps(19, 41, 19);
        assertEquals(List.of(2), sizes(ChainSearch.exactly(corridor, gaps, 2, 1)));
        assertEquals(List.of(1, 2, 3), sizes(ChainSearch.exactly(corridor, gaps, 0, 1)));
        assertEquals(List.of(1, 2, 3), sizes(ChainSearch.exactly(corridor, gaps, 4, 1)));
        InputException e = assertThrows(InputException.class, () -> ChainSearch.exactly(corridor, gaps, 400, 1));
        assertEquals("400 modules are more than the corridor from \"Kittle Rock\" to \"Marl Reef\" can hold: no more than 10 stand 19 m"
                + " apart in it; ask for fewer", e.getMessage());
    }

    private static List<Integer> sizes(ChainSearch.Result found) {
        return found.chains().stream().map(c -> c.modules().size()).toList();
    }

    @Test
    void stonesThatMeetAreRefused() {
        GridGeometry grid = grid("55");
        InputException e = assertThrows(InputException.class,
                () -> Axis.between(stone("Kittle Rock", 1, 0, grid), stone("Marl Reef", 1, 0, grid), grid));
        assertEquals("\"Kittle Rock\" and \"Marl Reef\" meet: there is no gap between them to fill; name two stones that lie apart", e.getMessage());
    }

    @Test
    void driftLineRunsFromTheFirstStoneWhicheverWayItWasDrawn() {
        GridGeometry grid = grid("5555555555");
        Stone from = stone("Kittle Rock", 1, 3, grid);
        Stone to = stone("Marl Reef", 8, -2, grid);
        LineString eastward = FACTORY.createLineString(new Coordinate[] {lonLat(-5, 0, grid), lonLat(20, 0, grid)});
        Axis axis = Axis.along("drift.geojson", eastward, from, to, grid);
        Axis turned = Axis.along("drift.geojson", eastward.reverse(), from, to, grid);
        assertEquals(70, axis.lengthM(), 0.01);
        assertEquals(axis.lengthM(), turned.lengthM(), 1e-6);
        assertEquals(0, axis.onMap()[0].distance(turned.onMap()[0]), 1e-6);
        assertEquals(Math.hypot(70, 50), axis.stonesApartM(), 0.01);
        assertEquals(6, corridor(axis, 5, "5555555555").scoredCells());
    }

    @Test
    void driftLineThatPassesBothStonesAtOnePointIsRefused() {
        GridGeometry grid = grid("5555555555");
        LineString northward = FACTORY.createLineString(new Coordinate[] {lonLat(3, 9, grid), lonLat(3, 0, grid)});
        InputException e = assertThrows(InputException.class, () -> Axis.along("drift.geojson", northward,
                stone("Kittle Rock", 1, -2, grid), stone("Marl Reef", 8, -2, grid), grid));
        assertEquals("drift.geojson: \"Kittle Rock\" and \"Marl Reef\" are both nearest to the same point of the line;"
                + " use a line that runs from the one to the other", e.getMessage());
    }

    @Test
    void gapRangeWithoutRoomIsRefused() {
        InputException e = assertThrows(InputException.class, () -> new Gaps(150, 120, 150));
        assertEquals("a gap of 150.000 m to 120.000 m leaves no room; the larger limit must be above the smaller, which is at least the"
                + " distance that modules stand apart (150.000 m)", e.getMessage());
    }
}
