package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.seacairn.plan.PlanOnDisk.LEAST;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.plan.SitingPlan.DepthAreas;
import org.seacairn.plan.SitingPlan.Edges;

class DepthAreasBlockTest {
    @TempDir
    private Path folder;

    private PlanOnDisk disk;

    @BeforeEach
    void writeTheChart() {
        disk = new PlanOnDisk(folder).write("chart.000", "");
    }

    private DepthAreas read(String keys) {
        return disk.read("depth-areas: {" + keys + "}\n" + LEAST).depthAreas().orElseThrow();
    }

    @Test
    void aPlanNeedNotNameThem() {
        assertEquals(Optional.empty(), disk.read(LEAST).depthAreas());
    }

    @Test
    void whatIsLeftOutIsThatOfAChart() {
        DepthAreas areas = read("file: chart.000, class: DEPARE, source: chart 7 of an invented coast");
        assertEquals("depth areas", areas.source().label());
        assertEquals(folder.resolve("chart.000").toAbsolutePath(), areas.source().file());
        assertEquals(Optional.of("DEPARE"), areas.source().table());
        assertEquals("DRVAL1", areas.shallowAttribute());
        assertEquals("DRVAL2", areas.deepAttribute());
        assertEquals("m", areas.unit());
        assertEquals(1, areas.metresPerUnit());
        assertEquals(Optional.of("chart 7 of an invented coast"), areas.ruleSource());
        assertEquals(true, areas.confirmed());
        assertEquals(Edges.GEODESIC, areas.source().edges());
    }

    @Test
    void everyKeyIsRead() {
        DepthAreas areas = read("file: chart.000, object-class: DRGARE, crs: 'EPSG:4326', shallow: MIN, deep: MAX, unit: ft, edges: rhumb-line,"
                + " repair: true, source: chart 7, confirmed: false");
        assertEquals(Optional.of("DRGARE"), areas.source().table());
        assertEquals(Optional.of("EPSG:4326"), areas.source().crs());
        assertEquals("MIN", areas.shallowAttribute());
        assertEquals("MAX", areas.deepAttribute());
        assertEquals(Edges.RHUMB_LINE, areas.source().edges());
        assertEquals(true, areas.source().repair());
        assertEquals(false, areas.confirmed());
    }

    /** 85 FR 62698: the foot is 0.3048 m, the US survey foot 1200/3937 m; a fathom is six feet. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            m,       1
            ft,      0.3048
            ft_us,   0.304800609601219
            fathom,  1.8288
            """)
    void units(String unit, double metres) {
        assertEquals(metres, read("file: chart.000, unit: " + unit).metresPerUnit(), 1e-15);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            class: DEPARE                                     | line 1: depth-areas has no "file"; add it, for example "file: chart.000"
            file: charts.000                                  | line 1: file is "charts.000", and there is no such file; check the name (paths start from the plan's folder)
            file: chart.000, unit: cm                         | line 1: unit is "cm"; known here: m, ft, ft_us, fathom
            file: chart.000, unit: feet                       | line 1: unit is "feet"; known here: m, ft, ft_us, fathom
            file: chart.000, shalow: MIN                      | line 1: "shalow" is not a key of depth-areas; did you mean "shallow"?
            file: chart.000, distance: 500 m                  | line 1: "distance" is not a key of depth-areas; known here: file, table, object-class, crs, x-column, y-column, shallow, deep, unit, source, confirmed, class, edges, repair
            file: chart.000, shallow: DRVAL2                  | line 1: shallow and deep of depth-areas both name the attribute "DRVAL2"; name the attribute of each end
            file: chart.000, confirmed: true                  | line 1: confirmed is true and no source is named; add it, for example "source: permit, condition 4"
            file: chart.000, class: DEPARE, table: DEPARE     | line 1: table and class are given, and each names what to read of the file; give one
            file: chart.000, edges: straight                  | line 1: edges is "straight"; known here: geodesic, rhumb-line
            file: chart.000, repair: maybe                    | line 1: repair is "maybe"; known here: true, false
            """)
    void mistakes(String keys, String problem) {
        List<String> problems = disk.problems("depth-areas: {" + keys + "}\n" + LEAST);
        assertEquals(List.of("plan.yaml, " + problem), problems);
    }

    @Test
    void aListIsNotTaken() {
        assertEquals(List.of("plan.yaml, line 1: depth-areas is not a block of keys; write \"key: value\" lines below it"),
                disk.problems("depth-areas: [chart.000]\n" + LEAST));
    }

    @Test
    void allMistakesAreToldAtOnce() {
        assertEquals(3, disk.problems("depth-areas: {file: none.000, unit: yd, repair: 7}\n" + LEAST).size());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            file: chart.000                                     | depth-areas: the rule names no source
            file: chart.000, source: chart 7, confirmed: false  | depth-areas: the rule's source is not confirmed
            """)
    void anUncheckedSourceIsWarnedOf(String keys, String warning) {
        assertEquals(true, disk.read("depth-areas: {" + keys + "}\n" + LEAST).warnings().contains(warning));
    }
}
