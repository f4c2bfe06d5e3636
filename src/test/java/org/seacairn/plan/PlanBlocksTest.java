package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.seacairn.plan.PlanOnDisk.LEAST;
import static org.seacairn.plan.PlanOnDisk.with;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.KeepOff;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.Reefs;
import org.seacairn.plan.SitingPlan.Uncertainty;

/** The blocks that name layers, and the limits. */
class PlanBlocksTest {
    private static final String NO_UNCERTAINTY = "bathymetry: no uncertainty is stated (survey-order, or"
            + " vertical-uncertainty and horizontal-uncertainty); depths and positions are taken as exact";

    @TempDir
    private Path folder;

    private PlanOnDisk disk;

    @BeforeEach
    void writeTheFilesThatPlansName() {
        disk = new PlanOnDisk(folder);
    }

    private List<String> problemsBeside(String block) {
        return disk.problems(block + "\n" + LEAST);
    }

    // bathymetry

    /** 85 FR 62698: the foot is 0.3048 m, the US survey foot 1200/3937 m. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            -0.3 m,    -0.3
            +1 ft,     0.3048
            -1 ft_us,  -0.304800609601219
            -1 fathom, -1.8288
            0 m,       0
            """)
    void datumOffsetsHaveASign(String offset, double metres) {
        SitingPlan.Bathymetry bathymetry = disk.read(with(LEAST, "unit: m\n", "unit: ft\n  datum: MLLW\n  datum-offset: " + offset + "\n")).bathymetry();
        assertEquals(metres, bathymetry.datumOffsetM(), 1e-15);
    }

    @Test
    void griddingIsForSoundings() {
        disk.write("soundings.XYZ", "");
        SitingPlan.Bathymetry bathymetry = disk.read(with(LEAST, "file: bathymetry.tif\n", "file: soundings.XYZ\n  gridding: median\n  reach: 100 ft\n")).bathymetry();
        assertEquals(new SitingPlan.Gridding(SitingPlan.GriddingMethod.MEDIAN, OptionalDouble.of(30.48)), bathymetry.gridding());
        assertEquals(SitingPlan.Gridding.USUAL, disk.read(LEAST).bathymetry().gridding());
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            m,       1
            ft,      0.3048
            ft_us,   0.304800609601219
            fathom,  1.8288
            km,      1000
            cm,      0.01
            """)
    void bathymetryUnits(String unit, double metres) {
        SitingPlan.Bathymetry bathymetry = disk.read(with(LEAST, "unit: m\n", "unit: " + unit + "\n")).bathymetry();
        assertEquals(metres, bathymetry.metresPerUnit(), 1e-15);
        assertEquals(unit, bathymetry.unit());
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            exclusive, 0.15, 0.0075, 1,  0
            special,   0.25, 0.0075, 2,  0
            1a,        0.5,  0.013,  5,  0.05
            1b,        0.5,  0.013,  5,  0.05
            2,         1,    0.023,  20, 0.1
            """)
    void surveyOrders(String order, double a, double b, double fixedM, double share) {
        SitingPlan plan = disk.read(with(LEAST, "  unit: m\n", "  unit: m\n  survey-order: " + order + "\n"));
        assertEquals(new Uncertainty(a, b, fixedM, share, "IHO S-44 order " + order), plan.bathymetry().uncertainty());
        assertEquals(List.of(), plan.warnings());
    }

    @Test
    void statedUncertainty() {
        SitingPlan plan = disk.read(with(LEAST, "  unit: m\n",
                "  unit: m\n  vertical-uncertainty: 1 ft\n  horizontal-uncertainty: 0 m\n"));
        assertEquals(new Uncertainty(0.3048, 0, 0, 0, "stated in the plan"), plan.bathymetry().uncertainty());
        assertEquals(List.of(), plan.warnings());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            ''                                              | AS_THE_FILE_SAYS
            '\\n  uncertainty-in-file: standard-deviation'   | STANDARD_DEVIATION
            '\\n  uncertainty-in-file: 95 %'                 | HOLDS_95_PERCENT
            """)
    void verticalUncertaintyFromTheFile(String line, SitingPlan.CellFigures figures) {
        SitingPlan plan = disk.read(with(LEAST, "  unit: m\n",
                "  unit: m\n  vertical-uncertainty: from-file\n  horizontal-uncertainty: 5 m" + line.replace("\\n", "\n") + "\n"));
        Uncertainty uncertainty = plan.bathymetry().uncertainty();
        assertEquals(new Uncertainty(0, 0, 5, 0, Optional.of(figures), "vertical from the file, cell by cell"), uncertainty);
        assertEquals(List.of(), plan.warnings());
        assertThrows(IllegalStateException.class, () -> uncertainty.verticalM(100));
    }

    @Test
    void oneUncertaintyWithoutTheOtherIsWarnedOf() {
        assertEquals(List.of("bathymetry: horizontal-uncertainty is not stated and taken as 0 m"),
                disk.read(with(LEAST, "  unit: m\n", "  unit: m\n  vertical-uncertainty: from-file\n")).warnings());
        assertEquals(List.of("bathymetry: horizontal-uncertainty is not stated and taken as 0 m"),
                disk.read(with(LEAST, "  unit: m\n", "  unit: m\n  vertical-uncertainty: 1 m\n")).warnings());
        assertEquals(List.of("bathymetry: vertical-uncertainty is not stated and taken as 0 m"),
                disk.read(with(LEAST, "  unit: m\n", "  unit: m\n  horizontal-uncertainty: 1 m\n")).warnings());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            values: depth   | datum: MLLW             | line 1: bathymetry has no "values"; write "values: elevation" if depths are negative in the file, or "values: depth" if they are positive
            values: depth   | values: depths          | line 3: values is "depths"; did you mean "depth"?
            values: depth   | values: up              | line 3: values is "up"; known here: elevation, depth
            unit: m         | datum: MLLW             | line 1: bathymetry has no "unit"; add it, for example "unit: m"
            unit: m         | unit: yd                | line 4: unit is "yd"; known here: m, ft, ft_us, fathom, km, cm
            unit: m         | unit: fathoms           | line 4: unit is "fathoms"; did you mean "fathom"?
            unit: m         | unit: m\\n  survey-order: 1c                                 | line 5: survey-order is "1c"; known here: exclusive, special, 1a, 1b, 2
            unit: m         | unit: m\\n  survey-order: 1                                  | line 5: survey-order is "1"; known here: exclusive, special, 1a, 1b, 2
            unit: m         | unit: m\\n  survey-order: 1a\\n  vertical-uncertainty: 1 m   | line 5: survey-order is given beside vertical-uncertainty or horizontal-uncertainty; leave out the one or the other
            unit: m         | unit: m\\n  survey-order: 1a\\n  horizontal-uncertainty: 1 m | line 5: survey-order is given beside vertical-uncertainty or horizontal-uncertainty; leave out the one or the other
            unit: m         | unit: m\\n  uncertainty-in-file: 95 %                        | line 5: uncertainty-in-file says what the figures in the file are, and they are not used; write "vertical-uncertainty: from-file", or leave it out
            unit: m         | unit: m\\n  vertical-uncertainty: from-file\\n  uncertainty-in-file: 2 sigma | line 6: uncertainty-in-file is "2 sigma"; known here: standard-deviation, 95 %
            unit: m         | unit: m\\n  survey-order: 1a\\n  vertical-uncertainty: from-file | line 5: survey-order is given beside vertical-uncertainty or horizontal-uncertainty; leave out the one or the other
            unit: m         | unit: m\\n  vertical-uncertainty: file                       | line 5: vertical-uncertainty is "file"; write a number and a unit, for example "1 m", or "from-file"
            unit: m         | unit: m\\n  vertical-uncertainty: 1                          | line 5: vertical-uncertainty is "1"; write the unit, for example "1 m"
            unit: m         | unit: m\\n  datum-offset: -0.3 m                             | line 5: datum-offset is given and datum is not; name the datum to which it brings the depths, for example "datum: MLLW"
            unit: m         | unit: m\\n  datum: MLLW\\n  datum-offset: -0.3             | line 6: datum-offset is "-0.3"; write the unit, for example "-0.3 m"
            unit: m         | unit: m\\n  datum: MLLW\\n  datum-offset: 300 m            | line 6: datum-offset is "300 m"; an offset is -200 m to 200 m here
            unit: m         | unit: m\\n  reach: 30 m                                      | line 5: reach is for files of soundings (.xyz, .txt, .csv), and "bathymetry.tif" is a grid; leave it out
            unit: m         | unit: m\\n  gridding: median                                 | line 5: gridding is for files of soundings (.xyz, .txt, .csv), and "bathymetry.tif" is a grid; leave it out
            unit: m         | unit: m\\n  survey_order: 1a                                 | line 5: "survey_order" is not a key of bathymetry; did you mean "survey-order"?
            file: bathymetry.tif | datum: MLLW        | line 1: bathymetry has no "file"; add it, for example "file: depths.tif"
            """)
    void bathymetryMistakes(String good, String bad, String expected) {
        assertEquals(List.of("plan.yaml, " + expected), disk.problems(with(LEAST, good + "\n", bad.replace("\\n", "\n") + "\n")));
    }

    // bottom

    @Test
    void bottomMayScoreUnmappedGround() {
        SitingPlan.Bottom bottom = disk.read("bottom: {file: bottom-types.gpkg, class: kind, unmapped: 30 %,"
                + " classes: {1: {suitability: 0}, sea grass: never}}\n" + LEAST).bottom().orElseThrow();
        assertEquals(OptionalDouble.of(0.3), bottom.unmappedSuitability());
        assertEquals(List.of("1", "sea grass"), bottom.classes().stream().map(SitingPlan.BottomClass::name).toList());
        assertEquals(OptionalDouble.of(0), bottom.classes().get(0).suitability());
        assertEquals(OptionalDouble.empty(), bottom.classes().get(1).suitability());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            class: k, classes: {sand: 1.0}                                 | sand is "1.0"; write "sand: {suitability: 0.5}" or "sand: never"
            class: k, classes: {sand: [1]}                                 | sand is a list; write "sand: {suitability: 0.5}" or "sand: never"
            class: k, classes: {sand: nevr}                                | sand is "nevr"; write "sand: {suitability: 0.5}" or "sand: never"
            class: k, classes: {sand: }                                    | sand has no value; write one or leave the key out
            class: k, classes: {sand: {suitability: 1.5}}                  | suitability is "1.5"; a share is 0 to 1 here
            class: k, classes: {sand: {}}                                  | sand has no "suitability"; add it, for example "suitability: 0.5"
            class: k, classes: {sand: {suitability: 1, shear-strength: 4}} | shear-strength is "4"; write the unit, for example "4 kPa"
            class: k, classes: {sand: {suitability: 1, shear-strength: 4 kPa, gradient: 4 kPa}} | gradient is "4 kPa", which is a pressure; a gradient is written in Pa/m, kPa/m
            class: k, classes: {sand: {suitability: 1, sheer-strength: 4 kPa}} | "sheer-strength" is not a key of sand; did you mean "shear-strength"?
            class: k, classes: {sand: {suitability: 1, gradient: 4 kPa/m}} | gradient is given without a shear-strength to grow from; add it, for example "shear-strength: 4 kPa"
            class: k, classes: {}                                          | classes names no class; write for example "classes: {sand: {suitability: 1.0}, hardbottom: never}"
            class: k                                                       | bottom has no "classes"; add it, for example "classes: {sand: {suitability: 1.0}, hardbottom: never}"
            classes: {sand: never}                                         | bottom has no "class"; add it, for example "class: kind"
            class: k, classes: {sand: never}, unmapped: excluded           | unmapped is "excluded"; write exclude, or a suitability from 0 to 1
            class: k, classes: {sand: never}, edges: rhumb-line            | "edges" is not a key of bottom; known here: file, table, object-class, crs, x-column, y-column, class, unmapped, classes, repair
            class: k, classes: {sand: never}, unmapped: 2                  | unmapped is "2"; a share is 0 to 1 here
            class: k, classes: {sand: never, sand: never}                  | "sand" is written twice in classes (first in line 1); keep one
            """)
    void bottomMistakes(String keys, String expected) {
        assertEquals(List.of("plan.yaml, line 1: " + expected), problemsBeside("bottom: {file: bottom-types.gpkg, " + keys + "}"));
    }

    // keep-off and reefs

    @Test
    void keepOffDefaults() {
        SitingPlan plan = disk.read("keep-off: [{layer: cables, file: cables.geojson, name: id, distance: 0 m}]\n" + LEAST);
        KeepOff cables = plan.keepOff().get(0);
        assertEquals("cables", cables.source().label());
        assertEquals(Optional.of("id"), cables.nameAttribute());
        assertEquals(0, cables.distanceM());
        assertEquals(OptionalDouble.empty(), cables.comfortableM());
        assertEquals(0, cables.positionUncertaintyM());
        assertEquals(Optional.empty(), cables.ruleSource());
        assertEquals(false, cables.confirmed());
        assertEquals(Optional.empty(), cables.coverage());
        assertEquals(Edges.GEODESIC, cables.source().edges());
    }

    @Test
    void coverageIsAFileNameOrABlock() throws IOException {
        disk.write("extent.gpkg", "");
        List<KeepOff> layers = disk.read("""
                keep-off:
                  - {layer: cables, file: cables.geojson, distance: 5 m}
                  - {layer: lanes, file: lanes.shp, edges: rhumb-line, distance: 5 m, coverage: extent.gpkg}
                  - layer: wrecks
                    file: reefs.csv
                    distance: 5 m
                    coverage:
                      crs: "EPSG:4326"
                      file: extent.gpkg
                      table: charted
                """ + LEAST).keepOff();
        Optional<String> none = Optional.empty();
        Path extent = folder.toRealPath().resolve("extent.gpkg");
        assertEquals(List.of(
                Optional.empty(),
                Optional.of(new LayerFile("lanes coverage", extent, none, none, none, none, 3, Edges.GEODESIC)),
                Optional.of(new LayerFile("wrecks coverage", extent, Optional.of("charted"), Optional.of("EPSG:4326"), none,
                        none, 9, Edges.GEODESIC))), layers.stream().map(KeepOff::coverage).toList());
    }

    @ParameterizedTest
    @CsvSource({"class", "object-class", "table"})
    void objectClassOfAChart(String key) throws IOException {
        disk.write("chart.000", "");
        SitingPlan plan = disk.read("""
                keep-off: [{layer: cables, file: chart.000, KEY: CBLSUB, distance: 5 m, coverage: {file: chart.000, KEY: M_COVR}}]
                reefs: {file: chart.000, KEY: OBSTRN, keep-off: 60 m}
                inside: {file: chart.000, KEY: RESARE}
                """.replace("KEY", key) + LEAST);
        assertEquals(List.of("CBLSUB", "M_COVR", "OBSTRN", "RESARE"), List.of(plan.keepOff().get(0).source().table().orElseThrow(),
                plan.keepOff().get(0).coverage().orElseThrow().table().orElseThrow(),
                plan.reefs().orElseThrow().source().table().orElseThrow(), plan.inside().orElseThrow().table().orElseThrow()));
    }

    @Test
    void theBottomsClassIsAnAttributeAndItsObjectClassIsNot() {
        SitingPlan.Bottom bottom = disk.read("bottom: {file: bottom-types.gpkg, object-class: SBDARE, class: NATSUR, classes: {\"4,1\": never, rock: never}}\n"
                + LEAST).bottom().orElseThrow();
        assertEquals(Optional.of("SBDARE"), bottom.source().table());
        assertEquals("NATSUR", bottom.classAttribute());
        assertEquals(List.of("4,1", "rock"), bottom.classes().stream().map(SitingPlan.BottomClass::name).toList());
        assertEquals(List.of("plan.yaml, line 1: table and object-class are given, and each names what to read of the file; give one"),
                problemsBeside("bottom: {file: bottom-types.gpkg, object-class: a, table: a, class: k, classes: {sand: never}}"));
        assertEquals(List.of("plan.yaml, line 1: object-class and class are given, and each names what to read of the file; give one"),
                problemsBeside("reefs: {file: reefs.csv, keep-off: 5 m, object-class: a, class: k}"));
    }

    @ParameterizedTest
    @CsvSource({"'', GEODESIC", "', edges: geodesic', GEODESIC", "', edges: rhumb-line', RHUMB_LINE"})
    void edgesOfTheLayersThatAreMeasuredTo(String keys, Edges expected) {
        SitingPlan plan = disk.read("""
                keep-off: [{layer: lanes, file: lanes.shp, distance: 5 m%s}]
                reefs: {file: reefs.csv, keep-off: 60 m%s}
                inside: {file: permit-areas.geojson%s}
                """.formatted(keys, keys, keys) + LEAST);
        assertEquals(List.of(expected, expected, expected), List.of(plan.keepOff().get(0).source().edges(),
                plan.reefs().orElseThrow().source().edges(), plan.inside().orElseThrow().edges()));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            source: rule                    | true  | ''
            source: rule, confirmed: true   | true  | ''
            source: rule, confirmed: false  | false | the rule's source is not confirmed
            confirmed: false                | false | the rule names no source
            """)
    void aRuleIsConfirmedOnlyWithItsSource(String keys, boolean confirmed, String warning) {
        SitingPlan plan = disk.read("""
                keep-off: [{layer: cables, file: cables.geojson, distance: 50 m, %s}]
                reefs: {file: reefs.csv, keep-off: 60 m, %s}
                """.formatted(keys, keys) + LEAST);
        assertEquals(confirmed, plan.keepOff().get(0).confirmed());
        assertEquals(confirmed, plan.reefs().orElseThrow().confirmed());
        assertEquals(warning.isEmpty() ? List.of(NO_UNCERTAINTY)
                : List.of(NO_UNCERTAINTY, "reefs: " + warning, "keep-off \"cables\": " + warning), plan.warnings());
    }

    @Test
    void reefsMayStateUncertaintyAndSource() {
        Reefs reefs = disk.read("reefs: {file: reefs.csv, keep-off: 200 ft, position-uncertainty: 10 m, source: permit}\n"
                + LEAST).reefs().orElseThrow();
        assertEquals(60.96, reefs.keepOffM(), 1e-12);
        assertEquals(10, reefs.positionUncertaintyM());
        assertEquals(Optional.empty(), reefs.nameAttribute());
        assertEquals(Optional.of("permit"), reefs.ruleSource());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            file: lanes.shp, distance: 5 m                            | this keep-off layer has no "layer"; add it, for example "{layer: cables, file: cables.geojson, distance: 500 m}"
            layer: a, distance: 5 m                                   | this keep-off layer has no "file"; add it, for example "file: cables.geojson"
            layer: a, file: lanes.shp                                 | this keep-off layer has no "distance"; add it, for example "distance: 500 m"
            layer: a, file: lanes.shp, distance: 500                  | distance is "500"; write the unit, for example "500 m"
            layer: a, file: lanes.shp, distance: 5 cm                 | distance is "5 cm"; write 0 m, or from 0.1 m to 200 km
            layer: a, file: lanes.shp, distance: 201 km               | distance is "201 km"; write 0 m, or from 0.1 m to 200 km
            layer: a, file: lanes.shp, distance: 5 m, comfortable: 5 m | comfortable is "5 m", which is not more than the distance "5 m"; raise it or leave it out
            layer: a, file: lanes.shp, distance: 5 m, confirmed: yes  | confirmed is "yes"; known here: true, false
            layer: a, file: lanes.shp, distance: 5 m, confirmed: true | confirmed is true and no source is named; add it, for example "source: permit, condition 4"
            layer: a, file: lanes.shp, distance: 5 m, confirmd: false | "confirmd" is not a key of this keep-off layer; did you mean "confirmed"?
            layer: Reefs, file: lanes.shp, distance: 5 m              | layer is "Reefs", which becomes the same column name "reefs" as that of the existing reefs; write another name
            layer: a, file: lanes.shp, distance: 5 m, edges: rhumb    | edges is "rhumb"; known here: geodesic, rhumb-line
            layer: a, file: lanes.shp, distance: 5 m, coverage: []    | coverage is a list; write a single value
            layer: a, file: lanes.shp, distance: 5 m, coverage:       | coverage has no value; write one or leave the key out
            layer: a, file: lanes.shp, distance: 5 m, coverage: gone.geojson | coverage is "gone.geojson", and there is no such file; check the name (paths start from the plan's folder)
            layer: a, file: lanes.shp, distance: 5 m, coverage: {file: gone.shp} | file is "gone.shp", and there is no such file; check the name (paths start from the plan's folder)
            layer: a, file: lanes.shp, distance: 5 m, coverage: {table: t} | coverage has no "file"; add it, for example "file: survey-extent.geojson"
            layer: a, file: lanes.shp, distance: 5 m, coverage: {file: lanes.shp, edges: geodesic} | "edges" is not a key of coverage; known here: file, table, object-class, class, crs, repair
            layer: a, file: lanes.shp, distance: 5 m, coverage: {file: lanes.shp, crs: 7} | CRS "7" is not known; write an EPSG code such as EPSG:32617, or well-known text
            layer: "--", file: lanes.shp, distance: 5 m               | layer is "--" without a letter or digit; write a name
            """)
    void keepOffMistakes(String keys, String expected) {
        assertEquals(List.of("plan.yaml, line 2: " + expected), problemsBeside("keep-off:\n  - {" + keys + "}"));
    }

    @Test
    void labelsThatBecomeOneColumnCollide() {
        assertEquals(List.of("plan.yaml, line 3: layer is \"Power (cables)\", which becomes the same column name"
                + " \"power_cables\" as \"power-cables\"; write another name"), problemsBeside("""
                keep-off:
                  - {layer: power-cables, file: cables.geojson, distance: 5 m}
                  - {layer: Power (cables), file: cables.geojson, distance: 5 m}
                """.strip()));
    }

    @Test
    void nineteenLayersAreReadAndTwentyRefused() {
        List<String> items = new ArrayList<>();
        for (int i = 1; i <= 19; i++) {
            items.add("  - {layer: layer " + i + ", file: lanes.shp, distance: 500 m, source: s}\n");
        }
        assertEquals(19, disk.read("keep-off:\n" + String.join("", items) + LEAST).keepOff().size());
        items.add("  - {layer: one more, file: lanes.shp, distance: 500 m}\n");
        assertEquals(List.of("plan.yaml, line 21: keep-off has more than 19 layers; put layers with the same rule into"
                + " one file"), disk.problems("keep-off:\n" + String.join("", items) + LEAST));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            keep-off: {layer: a}              | keep-off is not a list; write its items in brackets, or one a line after "- "
            keep-off: [cables]                | item 1 of keep-off is not a block of keys; write "key: value" lines below it
            reefs: {file: reefs.csv}          | reefs has no "keep-off"; add it, for example "keep-off: 60 m"
            reefs: {keep-off: 60 m}           | reefs has no "file"; add it, for example "file: reefs.csv"
            reefs: [reefs.csv]                | reefs is not a block of keys; write "key: value" lines below it
            limits: {depth: [60, 150 m]}      | item 1 of depth is "60"; write the unit, for example "60 m"
            limits: {depth: [60 m]}           | depth is a list of 1; write the shallowest and the deepest, for example "[60 m, 150 m]"
            limits: {depth: [60 m, 60 m]}     | depth does not run from shallow to deep; write the shallowest first, for example "[60 m, 150 m]"
            limits: {depth: 60 m}             | depth is not a list; write its items in brackets, or one a line after "- "
            limits: {depth: [-60 m, 150 m]}   | item 1 of depth is "-60 m"; a length is 0 or more (depths are positive down) here
            limits: {slope: 5}                | slope is "5"; write the unit, for example "5 deg"
            limits: {slope: 5 m}              | slope is "5 m", which is a length; a slope is written in deg, rad, %
            limits: {ruggedness: 0.1 m}       | ruggedness is "0.1 m", which is a length; a ruggedness is written as a number from 0 to 1
            limits: {ruggedness: 2}           | ruggedness is "2"; a ruggedness is 0 to 1 here
            limits: {clearance-above: 85}     | clearance-above is "85"; write the unit, for example "85 m"
            limits: {height-share: 0}         | height-share is "0"; it must be more than 0
            limits: {height-share: 1.1}       | height-share is "1.1"; a share is 0 to 1 here
            limits: {heightshare: 0.5}        | "heightshare" is not a key of limits; did you mean "height-share"?
            """)
    void otherBlockMistakes(String block, String expected) {
        assertEquals(List.of("plan.yaml, line 1: " + expected), problemsBeside(block));
    }

    @Test
    void everyLimitIsOptionalAndReadInItsUnits() {
        Limits limits = disk.read("limits: {depth: [30 fathom, 500 ft], slope: 10 %, ruggedness: 0.02,"
                + " clearance-above: 85 ft, height-share: 50 %}\n" + LEAST).limits();
        assertEquals(54.864, limits.shallowestM().getAsDouble(), 1e-12);
        assertEquals(152.4, limits.deepestM().getAsDouble(), 1e-12);
        assertEquals(5.710593137, limits.steepestDeg().getAsDouble(), 1e-9);
        assertEquals(0.02, limits.roughest().getAsDouble());
        assertEquals(25.908, limits.clearanceAboveM().getAsDouble(), 1e-12);
        assertEquals(0.5, limits.heightShare().getAsDouble());
        assertEquals(OptionalDouble.empty(), disk.read("limits: {slope: 5 deg}\n" + LEAST).limits().shallowestM());
    }
}
