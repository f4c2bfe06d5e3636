package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.plan.PlanReader;

class PlanInputsTest {
    @TempDir Path folder;

    @Test
    void filesThatChangeDuringTheRunAreNamed() throws Exception {
        TinyScene scene = new TinyScene(folder);
        PlanInputs.Watched watched = PlanInputs.watch(PlanReader.read(scene.path("plan.yaml"), false), List.of());
        assertEquals(List.of(), watched.warnings());
        scene.write("reefs.csv", scene.read("reefs.csv") + "\n");
        // The CRS beside the depths is read with them, although the plan does not name it.
        Files.setLastModifiedTime(scene.path("depths.prj"), FileTime.fromMillis(1_000_000));
        scene.delete("module.yaml");
        scene.write("unrelated.csv", "");
        String rest = ": was changed while the run read it, so what was computed may come from the file before or after, or from a part of each; run again";
        assertEquals(List.of("depths.prj" + rest, "module.yaml" + rest, "reefs.csv" + rest), watched.warnings());
    }
}
