package org.seacairn.layer;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.geodesy.CrsDomain;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Values;

/**
 * Bathymetry from soundings, x, y and a value a line (see {@link SoundingText}): brought to the working CRS and gridded on the plan's cell
 * (see {@link SoundingGrid}), so that the depths are never resampled. Held in memory: 40 bytes a sounding while it is gridded, 4 a cell.
 */
final class XyzReader {
    private XyzReader() {}

    static boolean takes(String lowerName) {
        return lowerName.endsWith(".xyz") || lowerName.endsWith(".txt") || lowerName.endsWith(".csv");
    }

    static Bathymetry open(SitingPlan plan) {
        Path file = plan.bathymetry().source().file();
        OptionalDouble cellM = plan.cellM();
        if (cellM.isEmpty()) {
            throw new InputException(file.getFileName() + ": soundings have no cell of their own; state it in the plan, for example"
                    + " \"cell: 20 m\"");
        }
        SoundingText text = SoundingText.read(plan.bathymetry());
        Soundings soundings = text.soundings();
        int[] extremes = soundings.extremes();
        CrsDomain domain = CrsDomain.of(text.crs());
        for (int i : extremes) {
            if (!domain.holds(soundings.x(i), soundings.y(i))) {
                throw VectorReader.problem(file, "line " + soundings.line(i), "(" + soundings.x(i) + ", " + soundings.y(i) + ") is no place in "
                        + text.crs().label() + "; correct the line or delete it, or correct the crs that the plan states");
            }
        }
        Crs crs = WorkingCrs.of(plan, text.crs(), (soundings.x(extremes[0]) + soundings.x(extremes[1])) / 2,
                (soundings.y(extremes[2]) + soundings.y(extremes[3])) / 2);
        SoundingGrid grid;
        try {
            CoordinateTransform toWorking = text.crs().to(crs);
            if (!toWorking.isIdentity()) {
                soundings.moveBy(toWorking);
            }
            grid = new SoundingGrid(soundings, cellM.getAsDouble(), plan.bathymetry().gridding().reachM().orElse(Double.NaN),
                    plan.bathymetry().values() == Values.ELEVATION ? 1 : -1);
        } catch (InputException e) {
            throw new InputException(file.getFileName() + ": " + e.getMessage(), e);
        }
        List<String> notes = new ArrayList<>(text.notes());
        notes.addAll(grid.notes(plan.bathymetry().unit()));
        return new StoredGrid(file, "XYZ soundings", crs, grid.west(), grid.north(), cellM.getAsDouble(), cellM.getAsDouble(), false, grid,
                Packing.plain(), text.statedUnit(), Optional.empty(), "", Optional.empty(), List.copyOf(notes), () -> { });
    }
}
