package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.seacairn.plan.PlanOnDisk.LEAST;
import static org.seacairn.plan.PlanOnDisk.WHOLE;
import static org.seacairn.plan.PlanOnDisk.with;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.seacairn.InputException;
import org.seacairn.plan.ModuleBody.AddedMass;
import org.seacairn.plan.ModuleBody.Base;
import org.seacairn.plan.ModuleBody.Drag;
import org.seacairn.plan.ModuleBody.Pole;
import org.seacairn.plan.ModuleBody.Shape;
import org.seacairn.plan.SitingPlan.BottomClass;
import org.seacairn.plan.SitingPlan.Combination;
import org.seacairn.plan.SitingPlan.Criterion;
import org.seacairn.plan.SitingPlan.Current;
import org.seacairn.plan.SitingPlan.CurrentLevel;
import org.seacairn.plan.SitingPlan.CurrentProfile;
import org.seacairn.plan.SitingPlan.Curve;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.KeepOff;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.Measure;
import org.seacairn.plan.SitingPlan.ReefModule;
import org.seacairn.plan.SitingPlan.Sites;
import org.seacairn.plan.SitingPlan.Uncertainty;
import org.seacairn.plan.SitingPlan.Values;

class PlanReaderTest {
    @TempDir
    private Path folder;

    private PlanOnDisk disk;

    @BeforeEach
    void writeTheFilesThatPlansName() {
        disk = new PlanOnDisk(folder);
    }

    private LayerFile layer(String label, String file, int line) throws Exception {
        Optional<String> none = Optional.empty();
        return new LayerFile(label, folder.toRealPath().resolve(file), none, none, none, none, line, Edges.GEODESIC);
    }

    private static OptionalDouble some(double value) {
        return OptionalDouble.of(value);
    }

    @Test
    void wholePlan() throws Exception {
        SitingPlan plan = disk.read(WHOLE);
        OptionalDouble none = OptionalDouble.empty();
        assertEquals("Infill off Tamarack Point", plan.title());
        assertEquals(Display.US, plan.display());
        assertEquals(Optional.of("EPSG:32617"), plan.crs());
        assertEquals(some(20), plan.cellM());
        assertEquals(new SitingPlan.Bathymetry(layer("bathymetry", "bathymetry.tif", 6), Values.ELEVATION, 1, "m",
                Optional.of("MLLW"), 0, SitingPlan.Gridding.USUAL, new Uncertainty(0.5, 0.013, 5, 0.05, "IHO S-44 order 1a")), plan.bathymetry());
        assertEquals(Optional.of(new SitingPlan.Bottom(layer("bottom", "bottom-types.gpkg", 12), "kind", none, List.of(
                new BottomClass("mud", some(0.45), some(4000), some(1500)),
                new BottomClass("sand", some(1), none, none),
                new BottomClass("hardbottom", none, none, none)))), plan.bottom());
        assertEquals(Optional.of(new SitingPlan.Reefs(layer("reefs", "reefs.csv", 19), Optional.of("name"), 60, 0,
                Optional.empty(), false)), plan.reefs());
        assertEquals(Optional.of(layer("inside", "permit-areas.geojson", 20)), plan.inside());
        assertEquals(List.of(
                new KeepOff(layer("shipping lanes", "lanes.shp", 22), Optional.empty(), 500, some(1852), 20,
                        Optional.of("invented rule 1"), true, Optional.empty(), false),
                new KeepOff(layer("cables", "cables.geojson", 23), Optional.empty(), 500, some(1000), 0,
                        Optional.of("invented rule 2"), false, Optional.empty(), true)), plan.keepOff());
        assertEquals(new Limits(some(60), some(150), some(5), none, some(85 * 0.3048), some(0.5), none, none), plan.limits());
        assertEquals(new ReefModule(Optional.of(folder.toRealPath().resolve("module.yaml")), "Pole on a slab",
                30 * 0.3048, some(25), Optional.of(new ModuleBody(
                new Base(Shape.SQUARE, 8 * 0.3048, 8 * 0.3048, 2 * 0.3048, 8.5 * 2000 * 0.45359237, 2.5, 0.1),
                new Pole(0.3, 28 * 0.3048, 1200 * 0.45359237, 0.1 * 0.9144 * 0.9144 * 0.9144),
                new Drag(some(1.2), none, none, some(0.9), 0.2), new AddedMass(some(1), none, none), none, 90)), List.of()), plan.module());
        assertEquals(Optional.of(new Current(Optional.of(folder.toRealPath().resolve("current.csv")), List.of(new CurrentProfile("", List.of(
                new CurrentLevel(0, 3.5 * (1852.0 / 3600), 20), new CurrentLevel(50, 1.5 * (1852.0 / 3600), 30)))), 0, 0, 0)),
                plan.current());
        assertEquals(3, plan.ruggednessWindowCells());
        assertEquals(List.of(
                new Criterion(Measure.DEPTH, 3, Optional.of(new Curve(60, 80, 120, 150))),
                new Criterion(Measure.SLOPE, 2, Optional.of(new Curve(0, 0, 2, 5))),
                new Criterion(Measure.BOTTOM, 3, Optional.empty()),
                new Criterion(Measure.CLEARANCE, 2, Optional.empty()),
                new Criterion(Measure.SPACING, 3, Optional.of(new Curve(60, 150, 500, 1500)))), plan.criteria());
        assertEquals(Optional.empty(), plan.pairwise());
        assertEquals(Combination.WEIGHTED_MEAN, plan.combine());
        assertEquals(new Sites(25, 150), plan.sites());
        assertEquals(List.of("reefs: the rule names no source",
                "keep-off \"cables\": the rule's source is not confirmed"), plan.warnings());
    }

    @Test
    void leastPlanHasItsDefaults() {
        SitingPlan plan = disk.read(LEAST);
        assertEquals("plan", plan.title());
        assertEquals(Display.METRIC, plan.display());
        assertEquals(Optional.empty(), plan.crs());
        assertEquals(OptionalDouble.empty(), plan.cellM());
        assertEquals(Uncertainty.NONE, plan.bathymetry().uncertainty());
        assertEquals(Optional.empty(), plan.bathymetry().datum());
        assertEquals(Optional.empty(), plan.bottom());
        assertEquals(Optional.empty(), plan.reefs());
        assertEquals(Optional.empty(), plan.inside());
        assertEquals(List.of(), plan.keepOff());
        OptionalDouble none = OptionalDouble.empty();
        assertEquals(new Limits(none, none, none, none, none, none, none, none), plan.limits());
        assertEquals(new ReefModule(Optional.empty(), "module", 9, some(25), Optional.empty(), List.of("base", "pole")), plan.module());
        assertEquals(Optional.empty(), plan.current());
        assertEquals(3, plan.ruggednessWindowCells());
        assertEquals(Combination.WEIGHTED_MEAN, plan.combine());
        assertEquals(new Sites(25, 150), plan.sites());
        assertEquals(List.of("bathymetry: no uncertainty is stated (survey-order, or vertical-uncertainty and"
                + " horizontal-uncertainty); depths and positions are taken as exact"), plan.warnings());
    }

    @Test
    void everyLayerMayStateTableCrsAndColumns() {
        SitingPlan plan = disk.read(with(WHOLE, "reefs: {file: reefs.csv,",
                "reefs: {file: reefs.csv, table: t, crs: \"EPSG:4326\", x-column: lon, y-column: lat,"));
        LayerFile reefs = plan.reefs().orElseThrow().source();
        assertEquals(Optional.of("t"), reefs.table());
        assertEquals(Optional.of("EPSG:4326"), reefs.crs());
        assertEquals(Optional.of("lon"), reefs.xColumn());
        assertEquals(Optional.of("lat"), reefs.yColumn());
        for (String block : List.of("  file: bathymetry.tif", "  file: bottom-types.gpkg")) {
            disk.read(with(WHOLE, block, "  table: t\n  crs: EPSG:32617\n  x-column: x\n  y-column: y\n" + block));
        }
        for (String block : List.of("{file: permit-areas.geojson", "{layer: cables")) {
            disk.read(with(WHOLE, block, block.replace("{", "{table: t, crs: \"EPSG:32617\", x-column: x, y-column: y, ")));
        }
    }

    @Test
    void thirteenMistakesAreReportedTogetherEachWithItsLine() {
        String plan = """
                title: Thirteen mistakes
                display: metrik
                cell: 20
                bathymetri:
                  file: missing.tif
                  unit: metres
                keep-off:
                  - {layer: cables, file: cables.geojson, distance: 5 kn}
                  - {layer: Cables, file: cables.geojson, distance: 500 m, comfortable: 400 m}
                limits: {depth: [150 m, 60 m]}
                module: {hieght: 9 m, landing-radius: 25 m}
                criteria:
                  depth: {weight: 1, curve: [60 m, 80 m, 70 m, 150 m]}
                sites: {count: 0, apart: 150 m}
                """;
        assertEquals(List.of(
                "plan.yaml, line 2: display is \"metrik\"; did you mean \"metric\"?",
                "plan.yaml, line 3: cell is \"20\"; write the unit, for example \"20 m\"",
                "plan.yaml, line 4: \"bathymetri\" is not a key of the plan; did you mean \"bathymetry\"?",
                "plan.yaml, line 4: bathymetry has no \"values\"; write \"values: elevation\" if depths are negative in"
                        + " the file, or \"values: depth\" if they are positive",
                "plan.yaml, line 5: file is \"missing.tif\", and there is no such file; check the name (paths start from the plan's folder)",
                "plan.yaml, line 6: unit is \"metres\"; known here: m, ft, ft_us, fathom, km, cm",
                "plan.yaml, line 8: distance is \"5 kn\", which is a speed; a length is written in m, km, cm, mm, ft,"
                        + " ft_us, fathom, nmi, mi, yd",
                "plan.yaml, line 9: layer is \"Cables\", which becomes the same column name \"cables\" as \"cables\";"
                        + " write another name",
                "plan.yaml, line 9: comfortable is \"400 m\", which is not more than the distance \"500 m\";"
                        + " raise it or leave it out",
                "plan.yaml, line 10: depth does not run from shallow to deep; write the shallowest first, for example"
                        + " \"[60 m, 150 m]\"",
                "plan.yaml, line 11: \"hieght\" is not a key of module; did you mean \"height\"?",
                "plan.yaml, line 13: corner 3 of curve is less than corner 2; write the four corners so that none falls",
                "plan.yaml, line 14: count is \"0\"; write a whole number from 1 to 10000"), disk.problems(plan));
    }

    @Test
    void missingBlocksAreReportedAtTheFirstLineOfThePlan() {
        assertEquals(List.of(
                "plan.yaml, line 2: the plan has no \"bathymetry\"; add it, for example"
                        + " \"bathymetry: {file: depths.tif, values: elevation, unit: m}\"",
                "plan.yaml, line 2: the plan has no \"module\"; add it, for example \"module: {file: module.yaml}\"",
                "plan.yaml, line 2: the plan has no \"criteria\"; add it, for example \"criteria: {bottom: {weight: 1}}\"",
                "plan.yaml, line 2: the plan has no \"sites\"; add it, for example \"sites: {count: 25, apart: 150 m}\""),
                disk.problems("# nothing yet\ntitle: Bare\n"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            sites: {apart: 150 m}       | sites: {}                             | line 10: sites has no "apart"; add it, for example "apart: 150 m"
            sites: {apart: 150 m}       | sites: {apart: 0 m}                   | line 10: apart is "0 m"; it must be more than 0
            sites: {apart: 150 m}       | sites: {apart: 150}                   | line 10: apart is "150"; write the unit, for example "150 m"
            sites: {apart: 150 m}       | sites: {apart: 150 m, count: 10001}   | line 10: count is "10001"; write a whole number from 1 to 10000
            sites: {apart: 150 m}       | sites: {apart: 150 m, count: 2.5}     | line 10: count is "2.5"; write a whole number from 1 to 10000
            sites: {apart: 150 m}       | sites:                                | line 10: sites is empty and must be a block of keys; write "key: value" lines below it
            sites: {apart: 150 m}       | sites: [150 m]                        | line 10: sites is not a block of keys; write "key: value" lines below it
            sites: {apart: 150 m}       | sites: {apart: [150 m]}               | line 10: apart is a list; write a single value
            sites: {apart: 150 m}       | sites: {apart: {m: 150}}              | line 10: apart is a block of keys; write a single value
            sites: {apart: 150 m}       | sites: {apart: ~}                     | line 10: apart has no value; write one or leave the key out
            sites: {apart: 150 m}       | sites: {apart: !len 150 m}            | line 10: apart has the tag "!len"; write the value alone
            sites: {apart: 150 m}       | sites: {apart: "150 m\\u0007"}        | line 10: apart is "150 m?" with a control character in it; remove that
            sites: {apart: 150 m}       | sites: {apart: 150 m, 1: x}           | line 10: "1" is not a key of sites; known here: count, apart
            sites: {apart: 150 m}       | sites: {apart: 150 m, [a]: x}         | line 10: sites holds a key that is no word; write "key: value" lines
            sites: {apart: 150 m}       | sites: {apart: 150 m, "a\\u0007": x} | line 10: sites holds a key that is no word; write "key: value" lines
            sites: {apart: 150 m}       | sites: {apart: 150 m, apart: 200 m}   | line 10: "apart" is written twice in sites (first in line 10); keep one
            bathymetry:                 | cell: 0 m\\nbathymetry:               | line 1: cell is "0 m"; it must be more than 0
            bathymetry:                 | cell: -5 m\\nbathymetry:              | line 1: cell is "-5 m"; a length is 0 or more (depths are positive down) here
            bathymetry:                 | combine: worst\\nbathymetry:          | line 1: combine is "worst"; known here: weighted-mean, weighted-geometric, limiting
            bathymetry:                 | combine: weighted mean\\nbathymetry:  | line 1: combine is "weighted mean"; did you mean "weighted-mean"?
            bathymetry:                 | display: imperial\\nbathymetry:       | line 1: display is "imperial"; known here: us, metric
            bathymetry:                 | terrain: {ruggedness-window: 3}\\nbathymetry:        | line 1: ruggedness-window is "3"; write the unit, for example "3 cells"
            bathymetry:                 | terrain: {ruggedness-window: 4 cells}\\nbathymetry:  | line 1: ruggedness-window is "4 cells"; write an odd number from 3 to 99, for example "3 cells"
            bathymetry:                 | terrain: {ruggedness-window: 1 cells}\\nbathymetry:  | line 1: ruggedness-window is "1 cells"; write an odd number from 3 to 99, for example "3 cells"
            bathymetry:                 | terrain: {ruggedness-window: 101 cells}\\nbathymetry: | line 1: ruggedness-window is "101 cells"; write an odd number from 3 to 99, for example "3 cells"
            bathymetry:                 | terrain: {ruggednes-window: 3 cells}\\nbathymetry:   | line 1: "ruggednes-window" is not a key of terrain; did you mean "ruggedness-window"?
            bathymetry:                 | crs: UTM 17\\nbathymetry:             | line 1: CRS "UTM 17" is not known; write an EPSG code such as EPSG:32617, or well-known text
            bathymetry:                 | crs: EPSG:4326\\nbathymetry:          | line 1: crs is "EPSG:4326", which is not projected in metres; write one that is, such as EPSG:32617, or leave it out for the UTM zone
            bathymetry:                 | crs: EPSG:2236\\nbathymetry:          | line 1: crs is "EPSG:2236", which is not projected in metres; write one that is, such as EPSG:32617, or leave it out for the UTM zone
            bathymetry:                 | inside: {file: lanes.shp, crs: EPSG:1}\\nbathymetry: | line 1: CRS EPSG:1 is not in the EPSG data set; check the code
            bathymetry:                 | inside: lanes.shp\\nbathymetry:       | line 1: inside is not a block of keys; write "key: value" lines below it
            bathymetry:                 | inside: {table: a}\\nbathymetry:      | line 1: inside has no "file"; add it, for example "file: permit-areas.geojson"
            bathymetry:                 | inside: {file: lanes.shp, x-column: a}\\nbathymetry: | line 1: x-column is given and y-column is not; give both
            """)
    void oneMistakeIsOneProblem(String good, String bad, String expected) {
        assertEquals(List.of("plan.yaml, " + expected), disk.problems(with(LEAST, good, bad.replace("\\n", "\n"))));
    }

    @Test
    void everyMisspeltKeyOfThePlanIsRecognised() {
        for (String key : List.of("title", "display", "bathymetry", "bottom", "inside", "limits", "module", "current",
                "terrain", "criteria", "pairwise", "combine", "sites")) {
            String misspelt = key.substring(0, 2) + key.substring(3);
            String first = disk.problems(misspelt + ": x\n").stream()
                    .filter(problem -> problem.contains("did you mean")).findFirst().orElse("none for " + misspelt);
            assertEquals("plan.yaml, line 1: \"" + misspelt + "\" is not a key of the plan; did you mean \"" + key + "\"?",
                    first);
        }
    }

    @Test
    void duplicateKeysAreRefusedAtEveryLevel() {
        assertEquals(List.of(
                "plan.yaml, line 2: \"title\" is written twice in the plan (first in line 1); keep one",
                "plan.yaml, line 7: \"unit\" is written twice in bathymetry (first in line 6); keep one"),
                disk.problems("title: a\ntitle: b\n" + with(LEAST, "  unit: m\n", "  unit: m\n  unit: ft\n")));
    }

    @ParameterizedTest
    @EnumSource(Combination.class)
    void everyCombinationHasItsWord(Combination combination) {
        assertEquals(combination, disk.read(LEAST + "combine: " + Value.word(combination)).combine());
    }

    @Test
    void ruggednessWindowIsRead() {
        assertEquals(9, disk.read(LEAST + "terrain: {ruggedness-window: 9 cells}").ruggednessWindowCells());
    }

    @Test
    void foldedTextBecomesOneLine() {
        assertEquals("Infill off Tamarack Point", disk.read("title: >\n  Infill off\n  Tamarack Point\n" + LEAST).title());
        assertEquals("two lines", disk.read("title: \"two\\nlines\"\n" + LEAST).title());
    }

    @Test
    void namesThatLookLikeOtherTypesStayText() {
        assertEquals("007", disk.read("title: 007\n" + LEAST).title());
        assertEquals("no", disk.read("title: no\n" + LEAST).title());
        assertEquals("null", disk.read("title: \"null\"\n" + LEAST).title());
    }

    @Test
    void anAliasStandsForItsAnchor() {
        SitingPlan plan = disk.read(WHOLE.replace("\"invented rule 1\"", "&rule one rule").replace("\"invented rule 2\"", "*rule"));
        assertEquals(Optional.of("one rule"), plan.keepOff().get(1).ruleSource());
    }

    @Test
    void aPlanWithAProblemAndAModuleWithOneReportsBothThePlanFirst() {
        disk.write("module.yaml", "name: x\nheight: 9\nlanding-radius: 25 m\n");
        assertEquals(List.of(
                "plan.yaml, line 34: apart is \"150\"; write the unit, for example \"150 m\"",
                "module.yaml, line 2: height is \"9\"; write the unit, for example \"9 m\""),
                disk.problems(with(WHOLE, "apart: 150 m", "apart: 150")));
    }

    @Test
    void aPlanFileThatIsNotThereOrAFolderIsSaidSo() {
        InputException missing = assertThrows(InputException.class,
                () -> PlanReader.read(folder.resolve("none.yaml"), false));
        assertEquals("none.yaml: there is no such file; check the name and the folder", missing.getMessage());
        InputException directory = assertThrows(InputException.class, () -> PlanReader.read(folder, false));
        assertEquals(folder.getFileName() + ": this is a folder; name a file", directory.getMessage());
    }

    @Test
    void planGivenByARelativePathIsFound() {
        disk.read(LEAST);
        Path relative = Path.of("").toAbsolutePath().relativize(folder.toAbsolutePath()).resolve("plan.yaml");
        SitingPlan plan = PlanReader.read(relative, false);
        assertTrue(plan.file().isAbsolute());
        assertTrue(plan.bathymetry().source().file().isAbsolute());
    }

    @Test
    void pairwiseComparisonsGiveTheWeights() {
        String plan = with(LEAST, "  depth: {weight: 1, curve: [60 m, 80 m, 120 m, 150 m]}", """
                  depth: {curve: [60 m, 80 m, 120 m, 150 m]}
                  slope: {curve: [0 deg, 0 deg, 2 deg, 5 deg]}
                  ruggedness: {curve: [0, 0, 0.01, 0.05]}
                """.indent(2).stripTrailing()) + """
                pairwise:
                  order: [slope, depth, ruggedness]
                  matrix:
                    - [1, 1/3, 3]
                    - [3, 1, 5]
                    - [0.33, 1/5, 1]
                """;
        SitingPlan read = disk.read(plan);
        // The published 3 x 3 example, with its rows in another order than the criteria.
        assertEquals(List.of(Measure.DEPTH, Measure.SLOPE, Measure.RUGGEDNESS),
                read.criteria().stream().map(Criterion::measure).toList());
        assertArrayEquals(new double[] {0.636986, 0.258285, 0.104729},
                read.criteria().stream().mapToDouble(Criterion::weight).toArray(), 1e-6);
        SitingPlan.Pairwise pairwise = read.pairwise().orElseThrow();
        assertEquals(3.038511, pairwise.lambdaMax(), 1e-6);
        assertEquals(0.033199, pairwise.consistencyRatio(), 1e-6);
        assertEquals("Saaty 1980", pairwise.randomIndexList());
        assertArrayEquals(new double[] {1, 3, 5}, pairwise.matrix()[0], 1e-15);
        assertArrayEquals(new double[] {1 / 3.0, 1, 3}, pairwise.matrix()[1], 1e-15);
        assertArrayEquals(new double[] {1 / 5.0, 1 / 3.0, 1}, pairwise.matrix()[2], 1e-15);
    }
}
