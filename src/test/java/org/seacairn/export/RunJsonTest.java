package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan;

class RunJsonTest {
    @TempDir Path folder;

    private static Run run(double readS) {
        Map<String, Double> timings = new LinkedHashMap<>();
        timings.put("read", readS);
        timings.put("score", 0.25);
        return new Run("0.1.0", "rank plan.yaml", Samples.plan(), List.of(new Run.InputFile("plan.yaml", "00ff", 3)),
                Run.WorkingCrs.of(Crs.ofEpsg(32617)), new Run.WorkingGrid(12, 9, 20, 600000, 3013000), Double.NaN,
                new Run.Counts(108, 100, 50, 2, List.of(new ReasonCount("no-depth", 1, 8, 0.0032, 8))), List.of(), timings);
    }

    private Map<String, String> written(Run run) throws IOException {
        Path file = folder.resolve("run.json");
        RunJson.write(file, run);
        return flat(file);
    }

    /** Every value by its place: {@code plan.sites.count}, {@code inputs[0].file}. */
    private static Map<String, String> flat(Path file) throws IOException {
        Map<String, String> values = new LinkedHashMap<>();
        try (JsonParser json = new JsonFactory().createParser(file.toFile())) {
            for (JsonToken token = json.nextToken(); token != null; token = json.nextToken()) {
                if (token.isScalarValue()) {
                    values.put(json.getParsingContext().pathAsPointer().toString().substring(1).replaceAll("/(\\d+)", "[$1]").replace('/', '.'),
                            json.getText());
                }
            }
        }
        return values;
    }

    @Test
    void planStandsThereAsUnderstood() throws IOException {
        Map<String, String> json = written(run(1));
        assertEquals("Seacairn", json.get("program"));
        assertEquals("Infill off <Nowhere> & back", json.get("plan.title"));
        assertEquals("us", json.get("plan.display"));
        assertEquals("weighted-mean", json.get("plan.combine"));
        assertEquals("null", json.get("plan.crs"));
        assertEquals("20.0", json.get("plan.cell_m"));
        assertEquals("bathymetry.tif", json.get("plan.bathymetry.source.file"));
        assertEquals("1.0", json.get("plan.bathymetry.metres_per_unit"));
        assertEquals("layers/lanes.shp", json.get("plan.keep_off[1].source.file"));
        assertEquals("rhumb-line", json.get("plan.keep_off[1].source.edges"));
        assertEquals("geodesic", json.get("plan.bathymetry.source.edges"));
        assertEquals("layers/extent.geojson", json.get("plan.keep_off[1].coverage.file"));
        assertEquals("cables coverage", json.get("plan.keep_off[1].coverage.label"));
        assertEquals("false", json.get("plan.keep_off[1].confirmed"));
        assertEquals("25.908", json.get("plan.limits.clearance_above_m"));
        assertEquals("null", json.get("plan.limits.height_share"));
        assertEquals("depth", json.get("plan.criteria[0].measure"));
        assertEquals("120.0", json.get("plan.criteria[0].curve.c"));
        assertEquals("0.3333333333333333", json.get("plan.pairwise.matrix[1][0]"));
        assertEquals("150.0", json.get("plan.sites.apart_m"));
    }

    @Test
    void runStandsThere() throws IOException {
        Map<String, String> json = written(run(1.5));
        assertEquals("0.1.0", json.get("version"));
        assertEquals("rank plan.yaml", json.get("command"));
        assertEquals("00ff", json.get("inputs[0].sha256"));
        assertEquals("EPSG:32617 (WGS 84 / UTM zone 17N)", json.get("crs.label"));
        assertTrue(json.get("crs.wkt").startsWith("PROJCS[\"WGS 84 / UTM zone 17N\""), json.get("crs.wkt"));
        assertEquals("600000.0", json.get("grid.west_m"));
        assertEquals("null", json.get("largest_scale_error"));
        assertEquals("8", json.get("counts.reasons[0].alone_cells"));
        assertEquals("1.5", json.get("timings_s.read"));
    }

    @Test
    void filesOfTheFolderAreListed() throws IOException {
        Files.createDirectory(folder.resolve("styles"));
        Files.createFile(folder.resolve("styles/b.sld"));
        Files.createFile(folder.resolve("sites.csv"));
        Map<String, String> json = written(run(1));
        assertEquals(List.of("run.json", "sites.csv", "styles/b.sld"),
                List.of(json.get("files[0]"), json.get("files[1]"), json.get("files[2]")));
        // The listing is what lets the next run replace the folder.
        FormerOutput.requireReplaceable(folder);
    }

    @Test
    void onlyTimingsDifferBetweenRuns() throws IOException {
        written(run(1));
        String first = Files.readString(folder.resolve("run.json"));
        written(run(2));
        String second = Files.readString(folder.resolve("run.json"));
        assertEquals(first, second.replace("\"read\" : 2.0", "\"read\" : 1.0"));
        assertFalse(first.contains("\r"));
        assertTrue(first.endsWith("}\n"));
    }

    @ParameterizedTest
    @CsvSource({
        "/invented/coast/plan.yaml, /invented/coast/layers/a.tif, layers/a.tif",
        "/invented/coast/plan.yaml, /invented/coast/x/../a.tif, a.tif",
        "/invented/coast/plan.yaml, /invented/other/a.tif, /invented/other/a.tif",
    })
    void pathsAreRelativeToThePlan(String plan, String path, String written) {
        assertEquals(written, RecordJson.relative(Path.of(plan), Path.of(path)));
    }

    @Test
    void inputIsNamedHashedAndMeasured() throws IOException {
        Path layers = Files.createDirectory(folder.resolve("layers"));
        Path file = Files.writeString(layers.resolve("a.csv"), "abc");
        assertEquals(new Run.InputFile("layers/a.csv", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", 3),
                Run.InputFile.of(folder.resolve("plan.yaml"), file));
    }

    @Test
    void namesSplitAtWords() throws IOException {
        Map<String, String> json = written(new Run("0", "", withCurrent(), List.of(), null, null, 0, null, List.of(), Map.of()));
        assertEquals("1.8", json.get("plan.current.profiles[0].levels[0].speed_m_per_s"));
        assertEquals("1500.0", json.get("plan.bottom.classes[0].strength_gradient_pa_per_m"));
    }

    private static SitingPlan withCurrent() {
        SitingPlan plan = Samples.plan();
        return new SitingPlan(plan.file(), plan.title(), plan.display(), plan.crs(), plan.cellM(), plan.bathymetry(),
                Optional.of(new SitingPlan.Bottom(plan.bathymetry().source(), "kind", OptionalDouble.empty(),
                        List.of(new SitingPlan.BottomClass("mud", OptionalDouble.of(0.45),
                                OptionalDouble.of(4000), OptionalDouble.of(1500))))),
                plan.reefs(), plan.inside(), plan.depthAreas(), plan.keepOff(), plan.limits(), plan.module(),
                Optional.of(new SitingPlan.Current(Optional.empty(), List.of(new SitingPlan.CurrentProfile("", List.of(
                        new SitingPlan.CurrentLevel(0, 1.8, 10)))), 0, 0, 0)), plan.bargeUncertaintyM(), plan.ruggednessWindowCells(), plan.criteria(),
                plan.pairwise(), plan.combine(), plan.sites(), plan.warnings());
    }
}
