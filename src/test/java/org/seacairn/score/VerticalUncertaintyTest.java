package org.seacairn.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;
import org.seacairn.criterion.DepthUncertainty;
import org.seacairn.criterion.Reasons;
import org.seacairn.grid.Window;
import org.seacairn.layer.BagFixture;
import org.seacairn.plan.PlanReader;
import org.seacairn.plan.SitingPlan;

/** Uncertainty of each cell as a BAG holds it, against plain sums. */
class VerticalUncertaintyTest {
    private static final int COLS = 37;
    private static final int ROWS = 29;
    /** Holds 95 % of a normal distribution to either side: the quantile of 97.5 %, from any table of it. */
    private static final double Z95 = 1.959964;

    @TempDir
    Path folder;

    private final float[] elevations = new float[COLS * ROWS];
    private final float[] uncertainties = new float[COLS * ROWS];

    VerticalUncertaintyTest() {
        Random random = new Random(6);
        for (int i = 0; i < elevations.length; i++) {
            elevations[i] = random.nextInt(25) == 0 ? Float.NaN : -60 - 40 * random.nextFloat();
            uncertainties[i] = random.nextInt(25) == 0 ? 0 : 0.1f + 4 * random.nextFloat();
        }
    }

    private SitingPlan plan(String kind, String head, String keys, String limits) throws IOException {
        Files.write(folder.resolve("survey.bag"), BagFixture.of(500_000, 3_000_000, 10, COLS, ROWS, elevations, uncertainties, kind));
        Files.writeString(folder.resolve("plan.yaml"), head + "bathymetry: {file: survey.bag, values: elevation, unit: m, "
                + keys + ", horizontal-uncertainty: 0 m}\nlimits: {" + limits + "}\nmodule: {height: 9 m, landing-radius: 0 m}\n"
                + "criteria: {depth: {weight: 1, curve: [50 m, 60 m, 100 m, 110 m]}}\nsites: {apart: 50 m}\n");
        return PlanReader.read(folder.resolve("plan.yaml"), false);
    }

    @ParameterizedTest
    @CsvSource({
        "rawStdDev,          '',                                       1.959964",
        "historicalStdDev,   '',                                       1.959964",
        "Raw_Std_Dev,        '',                                       1.959964",
        "productUncert,      '',                                       1.959964",
        "productUncert,      ', uncertainty-in-file: standard-deviation', 1.959964",
        "productUncert,      ', uncertainty-in-file: 95 %',            1",
    })
    void clearanceRestsOnTheCellsOwnUncertainty(String kind, String key, double factor) throws IOException {
        SitingPlan plan = plan(kind, "", "vertical-uncertainty: from-file" + key, "depth: [60 m, 150 m], clearance-above: 60 m");
        int shallow = 0;
        try (WorkingDepth depth = WorkingDepth.open(plan)) {
            ScoreEngine engine = new ScoreEngine(plan, depth, WorkingLayers.load(plan, depth.grid()));
            int[] reasons = engine.score(engine.grid().whole()).reasons();
            int noDepth = engine.reasons().bit(Reasons.NO_DEPTH);
            int tooShallow = engine.reasons().bit(Reasons.TOO_SHALLOW);
            for (int i = 0; i < reasons.length; i++) {
                double leftM = -elevations[i] - factor * uncertainties[i] - 9;
                boolean known = !Float.isNaN(elevations[i]) && uncertainties[i] > 0;
                assertEquals(known ? leftM < 60 ? tooShallow : 0 : noDepth, reasons[i] & (noDepth | tooShallow), "cell " + i);
                shallow += known && leftM < 60 ? 1 : 0;
                assertEquals(known ? factor * uncertainties[i] : Double.NaN,
                        engine.detail(i % COLS, i / COLS).depthUncertaintyM(), 1e-5, "cell " + i);
            }
        }
        assertTrue(shallow > 100 && shallow < 900, "both happen: " + shallow);
    }

    @Test
    void aDepthWhoseUncertaintyIsUnknownCountsWhereNoClearanceRestsOnIt() throws IOException {
        SitingPlan plan = plan("rawStdDev", "", "vertical-uncertainty: from-file", "depth: [60 m, 150 m]");
        try (WorkingDepth depth = WorkingDepth.open(plan)) {
            ScoreEngine engine = new ScoreEngine(plan, depth, WorkingLayers.load(plan, depth.grid()));
            int[] reasons = engine.score(engine.grid().whole()).reasons();
            for (int i = 0; i < reasons.length; i++) {
                assertEquals(Float.isNaN(elevations[i]), (reasons[i] & engine.reasons().bit(Reasons.NO_DEPTH)) != 0);
            }
        }
    }

    /** Resampling is linear, so an uncertainty that is a share of the depth stays that share of it. */
    @Test
    void resampledUncertaintyHasTheWeightsOfTheDepth() throws IOException {
        for (int i = 0; i < elevations.length; i++) {
            uncertainties[i] = -elevations[i] / 64;
        }
        SitingPlan plan = plan("rawStdDev", "cell: 7 m\n", "vertical-uncertainty: from-file", "clearance-above: 10 m");
        try (WorkingDepth depth = WorkingDepth.open(plan)) {
            assertTrue(depth.resampled());
            Window beyond = depth.grid().whole().grown(3);
            float[] depths = new float[beyond.cells()];
            depth.read(beyond, depths);
            DepthUncertainty uncertainty = depth.uncertainty().over(beyond);
            int known = 0;
            for (int i = 0; i < depths.length; i++) {
                assertEquals(depths[i] / 64 * Z95, uncertainty.atM(i, depths[i]), 1e-5);
                known += Float.isNaN(depths[i]) ? 0 : 1;
            }
            assertTrue(known > depths.length / 2);
        }
    }

    @Test
    void itIsSaidHowTheFiguresWereTaken() throws IOException {
        assertEquals("survey.bag: its own vertical uncertainty of each cell (productUncert) is taken as a standard deviation, 1.96 of"
                + " which hold 95 %; the file does not say that it is one, this is the safe side (see uncertainty-in-file)",
                note("productUncert", "vertical-uncertainty: from-file"));
        assertEquals("survey.bag: its own vertical uncertainty of each cell (rawStdDev) is taken as a standard deviation, 1.96 of"
                + " which hold 95 %", note("rawStdDev", "vertical-uncertainty: from-file"));
        assertEquals("survey.bag: its own vertical uncertainty of each cell (productUncert) is taken as it stands (95 %, says the plan)",
                note("productUncert", "vertical-uncertainty: from-file, uncertainty-in-file: 95 %"));
        assertEquals("survey.bag: its own vertical uncertainty of each cell is not used, what the plan states counts;"
                + " \"vertical-uncertainty: from-file\" would use it", note("", "vertical-uncertainty: 1 m"));
    }

    private String note(String kind, String keys) throws IOException {
        try (WorkingDepth depth = WorkingDepth.open(plan(kind, "", keys, "clearance-above: 10 m"))) {
            return depth.notes().get(0);
        }
    }

    @Test
    void aContradictionIsRefused() throws IOException {
        SitingPlan plan = plan("rawStdDev", "", "vertical-uncertainty: from-file, uncertainty-in-file: 95 %", "clearance-above: 10 m");
        assertEquals("survey.bag: says that its uncertainty is a standard deviation (rawStdDev), and the plan \"uncertainty-in-file: 95 %\";"
                + " leave that out", assertThrows(InputException.class, () -> WorkingDepth.open(plan)).getMessage());
    }

    @Test
    void aFileWithoutUncertaintyIsRefused() throws IOException {
        plan("rawStdDev", "", "vertical-uncertainty: from-file", "clearance-above: 10 m");
        float[] depths = new float[COLS * ROWS];
        Arrays.fill(depths, -70);
        try (WorkingDepth bag = WorkingDepth.open(PlanReader.read(folder.resolve("plan.yaml"), false))) {
            GridFiles.geoTiff(folder.resolve("depths.tif"), bag.grid(), depths);
        }
        Path file = folder.resolve("plan.yaml");
        Files.writeString(file, Files.readString(file).replace("survey.bag", "depths.tif"));
        SitingPlan plan = PlanReader.read(file, false);
        assertEquals("depths.tif: holds no vertical uncertainty of its cells, and the plan says \"vertical-uncertainty: from-file\"; state a"
                + " survey-order or a figure in the plan's bathymetry",
                assertThrows(InputException.class, () -> WorkingDepth.open(plan)).getMessage());
    }
}
