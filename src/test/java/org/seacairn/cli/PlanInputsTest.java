package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.InputException;
import org.seacairn.export.Run;

class PlanInputsTest {
    private static final String REST = ": changed while the run was reading, so what it computed could mix before and after; nothing was written, run again";

    @TempDir Path folder;
    private TinyScene scene;

    @BeforeEach
    void makeScene() {
        scene = new TinyScene(folder);
    }

    private PlanInputs inputs(Path... given) {
        return new PlanInputs(scene.path("plan.yaml"), false, scene.path("plan-out"), List.of(given));
    }

    private static String refusal(PlanInputs inputs) {
        return assertThrows(InputException.class, inputs::requireUnchanged).getMessage();
    }

    @Test
    void whatStaysAsItIsPasses() {
        PlanInputs inputs = inputs();
        inputs.read();
        scene.write("unrelated.csv", "").write("reefs.csv.bak", "");
        assertDoesNotThrow(inputs::requireUnchanged);
    }

    @ParameterizedTest
    @ValueSource(strings = {"plan.yaml", "depths.asc", "depths.prj", "bottom.geojson", "reefs.csv", "permit.geojson", "cables.geojson", "module.yaml", "proposal.csv"})
    void fileThatIsWrittenAgainIsNamed(String name) {
        scene.write("proposal.csv", "site,longitude,latitude\n");
        PlanInputs inputs = inputs(scene.path("proposal.csv"));
        inputs.read();
        scene.write(name, scene.read(name) + "\n");
        assertEquals(name + REST, refusal(inputs));
    }

    @Test
    void fileThatIsTakenAwayIsNamed() {
        PlanInputs inputs = inputs();
        inputs.read();
        scene.delete("module.yaml").delete("depths.prj");
        assertEquals("depths.prj, module.yaml" + REST, refusal(inputs));
    }

    /** Of the same size, and with the time of the one before: as {@code cp -p} and some editors leave it. */
    @Test
    void otherContentUnderTheSameTimeIsNamed() throws IOException {
        assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("unix"), "the file system tells no time of the last change of any kind");
        PlanInputs inputs = inputs();
        inputs.read();
        FileTime time = Files.getLastModifiedTime(scene.path("reefs.csv"));
        scene.write("reefs.csv", scene.read("reefs.csv").replace("Teapot", "Kettle"));
        Files.setLastModifiedTime(scene.path("reefs.csv"), time);
        assertEquals("reefs.csv" + REST, refusal(inputs));
    }

    /** What the command line names is read before the plan by some commands. */
    @Test
    void changeBeforeThePlanIsReadIsNamed() {
        scene.write("proposal.csv", "site,longitude,latitude\n");
        PlanInputs inputs = inputs(scene.path("proposal.csv"));
        scene.write("proposal.csv", "");
        inputs.read();
        assertEquals("proposal.csv" + REST, refusal(inputs));
    }

    @Test
    void planThatNamesOtherFilesNowIsNamed() {
        PlanInputs inputs = inputs();
        inputs.read();
        scene.write("others.csv", scene.read("reefs.csv")).plan("reefs.csv", "others.csv");
        assertEquals("plan.yaml" + REST, refusal(inputs));
    }

    @Test
    void failureIsLaidToTheChange() {
        PlanInputs inputs = inputs();
        inputs.read();
        RuntimeException failure = new IllegalStateException("the raster and the ellipsoid disagree");
        assertSame(failure, assertThrows(IllegalStateException.class, () -> inputs.during(() -> {
            throw failure;
        })));
        scene.write("cables.geojson", "");
        InputException e = assertThrows(InputException.class, () -> inputs.during(() -> {
            throw failure;
        }));
        assertEquals("cables.geojson" + REST, e.getMessage());
        assertSame(failure, e.getCause());
    }

    @Test
    void filesBesideALayerAreHashedWithIt() {
        PlanInputs inputs = inputs();
        inputs.read();
        assertEquals(List.of("plan.yaml", "depths.asc", "depths.prj", "bottom.geojson", "reefs.csv", "permit.geojson", "cables.geojson", "module.yaml"),
                inputs.hashed().stream().map(Run.InputFile::file).toList());
    }

    @Test
    void fileInTheOutputFolderIsRefused() throws IOException {
        scene.write("plan-out/reefs.csv", scene.read("reefs.csv")).plan("reefs.csv", "plan-out/reefs.csv");
        String refusal = "reefs.csv: lies in the output folder plan-out, which would be replaced; name another folder with --out";
        PlanInputs inputs = inputs();
        assertEquals(refusal, assertThrows(InputException.class, inputs::read).getMessage());
        Files.createSymbolicLink(scene.path("link"), scene.path("plan-out"));
        PlanInputs byLink = new PlanInputs(scene.path("plan.yaml"), false, scene.path("link"), List.of());
        assertEquals(refusal.replace("plan-out", "link"), assertThrows(InputException.class, byLink::read).getMessage());
    }
}
