package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.TinyScene.Outcome;

/** What a plan says to mend in its layers, from the command to its output: the same as if the layer had been right. */
class MendedInputTest {
    private static final String BOW_TIE = "[" + TinyScene.line(200, 300, 600, 500, 600, 300, 200, 500, 200, 300) + "]";
    private static final String ITS_LOBES = "[[" + TinyScene.line(200, 300, 400, 400, 200, 500, 200, 300) + "], ["
            + TinyScene.line(600, 300, 600, 500, 400, 400, 600, 300) + "]]";

    @TempDir
    Path folder;
    private TinyScene scene;

    @BeforeEach
    void scene() {
        scene = new TinyScene(folder);
    }

    /** Quarters of a metre are exact in a float, before and after the offset. */
    private void depths(double addedM) {
        StringBuilder text = new StringBuilder(TinyScene.asciiGrid(0));
        for (int i = 0; i < TinyScene.COLS * TinyScene.ROWS; i++) {
            double depthM = TinyScene.depthM(i % TinyScene.COLS, i / TinyScene.COLS);
            text.append(Double.isNaN(depthM) ? "-9999 " : String.format(Locale.ROOT, "%.2f ", -Math.rint(4 * depthM) / 4 - addedM));
        }
        scene.write("depths.asc", text.toString());
    }

    private String sites(String warning) {
        Outcome outcome = scene.rank();
        assertEquals(0, outcome.status(), outcome.err());
        assertTrue(outcome.err().contains(warning), outcome.err());
        return scene.read("plan-out/sites.csv") + scene.read("plan-out/reasons.csv");
    }

    /** Up to the score: where the outline crosses itself, the lobes written down are half a millimetre off. */
    private static String places(String sites) {
        return sites.replaceAll("(?m)^((?:[^,]*,){11}[^,]*),.*$", "$1");
    }

    @Test
    void anOffsetOfTheDatumIsAsIfTheFileHadTheOther() {
        depths(0);
        String right = sites("");
        depths(1.75);
        scene.plan("unit: m, vertical", "unit: m, datum: MLLW, datum-offset: -1.75 m, vertical");
        assertEquals(right, sites("1.75 m taken off every depth: the plan's datum-offset brings the file's depths to MLLW"));
        String report = scene.read("plan-out/report.html");
        assertTrue(report.contains("taken off the file's depths to come to it (datum-offset)"), "the page says so");
        Outcome review = TinyScene.run("review", scene.path("plan.yaml").toString(), scene.path("plan-out/sites.csv").toString());
        assertEquals(0, review.status(), review.out() + review.err());
    }

    @Test
    void aPolygonThatCrossesItselfIsAsItsLobes() {
        scene.plan("      - {layer: Old".substring(4), "  - {layer: Dumps, file: dumps.geojson, distance: 50 m, repair: true}\n  - {layer: Old");
        scene.write("dumps.geojson", TinyScene.features(TinyScene.feature("name", "North Dump", "MultiPolygon", ITS_LOBES)));
        String right = places(sites(""));
        scene.write("dumps.geojson", TinyScene.features(TinyScene.feature("name", "North Dump", "Polygon", BOW_TIE)));
        assertEquals(right, places(sites("dumps.geojson")));
        scene.plan(", repair: true", "");
        Outcome refused = scene.rank();
        assertEquals(2, refused.status());
        assertTrue(refused.err().contains("dumps.geojson") && refused.err().contains("crosses itself"), refused.err());
        assertEquals(right, places(scene.read("plan-out/sites.csv") + scene.read("plan-out/reasons.csv")), "the former output");
    }
}
