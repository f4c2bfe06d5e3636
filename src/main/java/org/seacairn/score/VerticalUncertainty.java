package org.seacairn.score;

import java.nio.file.Path;
import java.util.function.Function;
import org.seacairn.InputException;
import org.seacairn.criterion.DepthUncertainty;
import org.seacairn.grid.Window;
import org.seacairn.grid.WindowSource;
import org.seacairn.layer.Bathymetry;
import org.seacairn.layer.CellUncertainty;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.CellFigures;
import org.seacairn.plan.SitingPlan.Uncertainty;

/**
 * Vertical uncertainty of the depths (95 %) on the working grid: by depth as the plan states it, or cell by cell from the
 * bathymetry's file. Where depths are resampled, that of a cell is the mean of the uncertainties with the same weights, which
 * is the most that it can be, whatever their correlation. Safe for several threads at once.
 */
public final class VerticalUncertainty {
    /** Of a normal distribution, to either side; half of it is a standard deviation's share. */
    private static final double DEVIATIONS_OF_95_PERCENT = 1.959964;

    private final Uncertainty stated;
    private final PaddedSource cells;
    private final double metres;
    private final String note;

    private VerticalUncertainty(Uncertainty stated, PaddedSource cells, double metres, String note) {
        this.stated = stated;
        this.cells = cells;
        this.metres = metres;
        this.note = note;
    }

    /**
     * @param onGrid takes what is on the file's grid to the working grid, as the depths are taken
     * @throws InputException if the plan wants what is in the file, and the file has none, or says that it is another figure
     */
    static VerticalUncertainty of(SitingPlan.Bathymetry plan, Bathymetry file, Function<WindowSource, PaddedSource> onGrid) {
        Uncertainty stated = plan.uncertainty();
        Path name = file.file().getFileName();
        if (stated.cells().isEmpty()) {
            return new VerticalUncertainty(stated, null, 1, file.uncertainty().map(u -> name + ": its own vertical uncertainty of each cell"
                    + kind(u) + " is not used, what the plan states counts; \"vertical-uncertainty: from-file\" would use it").orElse(""));
        }
        CellUncertainty own = file.uncertainty().orElseThrow(() -> new InputException(name + ": holds no vertical uncertainty of its cells,"
                + " and the plan says \"vertical-uncertainty: from-file\"; state a survey-order or a figure in the plan's bathymetry"));
        CellFigures figures = stated.cells().get();
        if (figures == CellFigures.HOLDS_95_PERCENT && own.saysStandardDeviation()) {
            throw new InputException(name + ": says that its uncertainty is a standard deviation" + kind(own) + ", and the plan"
                    + " \"uncertainty-in-file: 95 %\"; leave that out");
        }
        boolean deviations = figures != CellFigures.HOLDS_95_PERCENT;
        String taken = !deviations ? "as it stands (95 %, says the plan)"
                : "as a standard deviation, 1.96 of which hold 95 %"
                + (figures == CellFigures.STANDARD_DEVIATION || own.saysStandardDeviation() ? ""
                : "; the file does not say that it is one, this is the safe side (see uncertainty-in-file)");
        return new VerticalUncertainty(stated, onGrid.apply(own::read),
                plan.metresPerUnit() * (deviations ? DEVIATIONS_OF_95_PERCENT : 1),
                name + ": its own vertical uncertainty of each cell" + kind(own) + " is taken " + taken);
    }

    private static String kind(CellUncertainty own) {
        return own.kind().isBlank() ? "" : " (" + Shown.printable(own.kind()) + ")";
    }

    /** Of the cells of a window, which may reach over the grid's edge. */
    public DepthUncertainty over(Window window) {
        if (cells == null) {
            return (i, depthM) -> stated.verticalM(depthM);
        }
        float[] own = new float[window.cells()];
        cells.read(window, own);
        return (i, depthM) -> Double.isNaN(depthM) ? Double.NaN : own[i] * metres;
    }

    /** What the reader of the results should know, or empty text. */
    String note() {
        return note;
    }
}
