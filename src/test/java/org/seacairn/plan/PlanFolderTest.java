package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;
import static org.seacairn.plan.PlanOnDisk.LEAST;
import static org.seacairn.plan.PlanOnDisk.with;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlanFolderTest {
    private static final String OUTSIDE =
            " leads out of the plan's folder; move the file there, or run with --allow-outside";

    @TempDir
    private Path root;

    private Path folder;
    private PlanOnDisk disk;

    @BeforeEach
    void aPlanFolderBesideAnother() throws IOException {
        folder = Files.createDirectories(root.resolve("plan"));
        Files.createDirectories(folder.resolve("layers"));
        Files.createDirectories(root.resolve("plan-of-others"));
        Files.writeString(root.resolve("plan-of-others/depths.tif"), "");
        Files.writeString(root.resolve("depths.tif"), "");
        disk = new PlanOnDisk(folder).write("layers/depths.tif", "");
    }

    private static String naming(String file) {
        return with(LEAST, "file: bathymetry.tif", "file: " + file);
    }

    @ParameterizedTest
    @CsvSource({"layers/depths.tif", "./layers/depths.tif", "layers/../layers/depths.tif", "../plan/layers/depths.tif"})
    void filesInTheFolderAreFound(String file) throws IOException {
        assertEquals(folder.toRealPath().resolve("layers/depths.tif"),
                disk.read(naming(file)).bathymetry().source().file());
    }

    @ParameterizedTest
    @CsvSource({"../depths.tif", "../plan-of-others/depths.tif", "layers/../../depths.tif", "../missing.tif", "../../../../../etc/hosts"})
    void filesOutsideAreRefusedWhetherTheyExistOrNot(String file) {
        assertEquals(List.of("plan.yaml, line 2: file is \"" + file + "\" and" + OUTSIDE), disk.problems(naming(file)));
    }

    /** Elsewhere a backslash parts folders, so there the second is refused as outside. */
    @ParameterizedTest
    @EnabledOnOs({OS.LINUX, OS.MAC})
    @CsvSource(delimiter = '|', textBlock = """
            layers\\depths.tif               | write / and not \\ between folders, in paths that start from the plan's folder
            ..\\depths.tif                   | write / and not \\ between folders, in paths that start from the plan's folder
            https://charts.example/depths.tif | nothing is fetched from an address; put the file into the plan's folder and write its name
            file:///depths.tif                | nothing is fetched from an address; put the file into the plan's folder and write its name
            """)
    void whatIsNoPathHereIsNotFound(String file, String remedy) {
        assertEquals(List.of("plan.yaml, line 2: file is " + Shown.quoted(file) + ", and there is no such file; " + remedy), disk.problems(naming(file)));
    }

    @Test
    void absolutePathsCountAsOutside() {
        String file = folder.resolve("layers/depths.tif").toAbsolutePath().toString();
        assertEquals(List.of("plan.yaml, line 2: file is " + Shown.quoted(file) + " and" + OUTSIDE),
                disk.problems(naming(file)));
    }

    @Test
    void outsideIsAllowedWhenAsked() throws IOException {
        disk.write("plan.yaml", naming("../depths.tif"));
        SitingPlan plan = PlanReader.read(folder.resolve("plan.yaml"), true);
        assertEquals(root.toRealPath().resolve("depths.tif"), plan.bathymetry().source().file());
        Path absolute = root.toRealPath().resolve("depths.tif");
        disk.write("plan.yaml", naming(absolute.toString()));
        assertEquals(absolute, PlanReader.read(folder.resolve("plan.yaml"), true).bathymetry().source().file());
    }

    @Test
    void linksThatLeadOutAreRefusedAndLinksInsideAreFollowed() throws IOException {
        link("out.tif", root.resolve("depths.tif"));
        link("elsewhere", root.resolve("plan-of-others"));
        link("in.tif", folder.resolve("layers/depths.tif"));
        link("dangling.tif", folder.resolve("gone.tif"));
        assertEquals(List.of("plan.yaml, line 2: file is \"out.tif\", a link, and" + OUTSIDE),
                disk.problems(naming("out.tif")));
        assertEquals(List.of("plan.yaml, line 2: file is \"elsewhere/depths.tif\", a link, and" + OUTSIDE),
                disk.problems(naming("elsewhere/depths.tif")));
        assertEquals(folder.toRealPath().resolve("in.tif"), disk.read(naming("in.tif")).bathymetry().source().file());
        assertEquals(List.of("plan.yaml, line 2: file is \"dangling.tif\", and there is no such file; check the name (paths start from the plan's folder)"), disk.problems(naming("dangling.tif")));
        // Behind a link, ".." leads the system elsewhere than it reads; the path used is the one checked.
        assertEquals(List.of("plan.yaml, line 2: file is \"elsewhere/../depths.tif\", and there is no such file; check the name (paths start from the plan's folder)"), disk.problems(naming("elsewhere/../depths.tif")));
    }

    @Test
    void aPlanFolderThatIsItselfALinkIsNoTrouble() throws IOException {
        disk.read(LEAST);
        Path linked = root.resolve("linked");
        assumeTrue(canLink(linked, folder));
        assertEquals(folder.toRealPath().resolve("bathymetry.tif"),
                PlanReader.read(linked.resolve("plan.yaml"), false).bathymetry().source().file());
    }

    @Test
    void foldersMissingFilesAndImpossibleNamesAreRefused() {
        assertEquals(List.of("plan.yaml, line 2: file is \"layers\", which is a folder; name a file"),
                disk.problems(naming("layers")));
        assertEquals(List.of("plan.yaml, line 2: file is \".\", which is a folder; name a file"),
                disk.problems(naming(".")));
        assertEquals(List.of("plan.yaml, line 2: file is \"gone.tif\", and there is no such file; check the name (paths start from the plan's folder)"), disk.problems(naming("gone.tif")));
        assertEquals(List.of("plan.yaml, line 2: file is \"a?b\" with a control character in it; remove that"),
                disk.problems(naming("\"a\\0b\"")));
    }

    @Test
    void everyFileKeyIsHeldToTheFolder() {
        String expected = " and" + OUTSIDE;
        for (String[] block : new String[][] {
            {"inside: {file: ../x.shp}\n", "../x.shp"},
            {"depth-areas: {file: ../d.geojson}\n", "../d.geojson"},
            {"current: {file: ../c.csv}\n", "../c.csv"},
            {"reefs: {file: ../r.csv, keep-off: 60 m}\n", "../r.csv"},
            {"bottom: {file: ../b.gpkg, class: k, classes: {sand: never}}\n", "../b.gpkg"},
            {"keep-off: [{layer: a, file: ../l.shp, distance: 1 m}]\n", "../l.shp"},
            {"keep-off: [{layer: a, file: lanes.shp, distance: 1 m, coverage: {file: ../e.shp}}]\n", "../e.shp"}}) {
            assertEquals(List.of("plan.yaml, line 1: file is \"" + block[1] + "\"" + expected),
                    disk.problems(block[0] + LEAST));
        }
        assertEquals(List.of("plan.yaml, line 1: coverage is \"../e.shp\"" + expected),
                disk.problems("keep-off: [{layer: a, file: lanes.shp, distance: 1 m, coverage: ../e.shp}]\n" + LEAST));
        assertEquals(List.of("plan.yaml, line 5: file is \"../m.yaml\"" + expected),
                disk.problems(with(LEAST, "module:\n  height: 9 m\n  landing-radius: 25 m\n", "module: {file: ../m.yaml}\n")));
    }

    private void link(String name, Path target) throws IOException {
        assumeTrue(canLink(folder.resolve(name), target));
    }

    private static boolean canLink(Path link, Path target) throws IOException {
        try {
            Files.createSymbolicLink(link, target);
            return true;
        } catch (UnsupportedOperationException e) {
            return false;
        }
    }
}
