package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.seacairn.plan.PlanOnDisk.LEAST;
import static org.seacairn.plan.PlanOnDisk.MODULE;
import static org.seacairn.plan.PlanOnDisk.with;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.plan.SitingPlan.CurrentLevel;

class ModuleAndCurrentTest {
    private static final double KNOT = 1852.0 / 3600;
    private static final String IN_FILE = with(LEAST,
            "module:\n  height: 9 m\n  landing-radius: 25 m\n", "module: {file: module.yaml}\n");

    @TempDir
    private Path folder;

    private PlanOnDisk disk;

    @BeforeEach
    void writeTheFilesThatPlansName() {
        disk = new PlanOnDisk(folder);
    }

    @Test
    void moduleInPlaceMayHaveEveryKeyOfTheFile() {
        SitingPlan.ReefModule module = disk.read(with(LEAST, "  height: 9 m\n  landing-radius: 25 m\n", MODULE.indent(2)))
                .module();
        assertEquals("Pole on a slab", module.name());
        assertEquals(9.144, module.heightM(), 1e-12);
        assertEquals(true, module.file().isEmpty());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            height: 30 ft           | height: 30                   | line 2: height is "30"; write the unit, for example "30 m"
            height: 30 ft           | height: 0 m                  | line 2: height is "0 m"; it must be more than 0
            height: 30 ft           | hieght: 30 ft                | line 2: "hieght" is not a key of the module file; did you mean "height"?
            height: 30 ft           | drag: {}                     | line 1: the module file has no "height"; add it, for example "height: 30 ft"
            landing-radius: 25 m    | landing-radius: 25           | line 3: landing-radius is "25"; write the unit, for example "25 m"
            width: 8 ft             | width: 8                     | line 4: width is "8"; write the unit, for example "8 m"
            width: 8 ft             | width: 8 nmi                 | line 4: width is "8 nmi", which no part of a module has; check number and unit (0.001 to 200 m)
            diameter: 300 mm        | diameter: 0.3 mm             | line 5: diameter is "0.3 mm", which no part of a module has; check number and unit (0.001 to 200 m)
            base-axial: 1.2         | base-axial: 1200             | line 6: base-axial is "1200", which no part of a module has; check number and unit (0.001 to 100)
            mass: 8.5 short_ton     | mass: 8.5 ton                | line 4: mass is "8.5 ton", but "ton" is not a unit known here; a mass is written in kg, t, lb, short_ton, long_ton
            volume: 2.5 m3          | volume: 2.5 m                | line 4: volume is "2.5 m", which is a length; a volume is written in m3, ft3, yd3
            open-share: 10 %        | open-share: 110 %            | line 4: open-share is "110 %"; a share is 0 to 1 here
            diameter: 300 mm        | diametre: 300 mm             | line 5: "diametre" is not a key of pole; did you mean "diameter"?
            length: 28 ft           | length: 28 kn                | line 5: length is "28 kn", which is a speed; a length is written in m, km, cm, mm, ft, ft_us, fathom, nmi, mi, yd
            base-axial: 1.2         | base-axial: high             | line 6: base-axial is "high"; write a number with a decimal point, for example "1.5"
            base-axial: 1.2         | base-axial: -1               | line 6: base-axial is "-1"; a factor is 0 or more here
            base-axial: 1.2         | broadside: 1.2               | line 6: "broadside" is not a key of drag; known here: base, pole, base-axial, base-lateral, pole-axial, pole-lateral, uncertainty
            added-mass: {base-axial: 1} | added-mass: 1            | line 7: added-mass is not a block of keys; write "key: value" lines below it
            """)
    void mistakesInTheModuleFileNameThatFile(String good, String bad, String expected) {
        String module = with(MODULE, good, bad);
        if (bad.startsWith("drag")) {
            module = module.replaceFirst("(?m)^drag: \\{base.*\n", "");
        }
        disk.write("module.yaml", module);
        assertEquals(List.of("module.yaml, " + expected), disk.problems(IN_FILE));
    }

    @Test
    void aModuleFileThatIsNoYamlOrEmptyIsNamed() {
        disk.write("module.yaml", "name: a: b\n");
        assertEquals(List.of("module.yaml, line 1: this is not YAML (mapping values are not allowed here);"
                + " check indentation, colons and quotes here and above"), disk.problems(IN_FILE));
        disk.write("module.yaml", "");
        assertEquals(List.of("module.yaml: the file is empty; write keys and values in it"), disk.problems(IN_FILE));
        disk.write("module.yaml", "- name: a\n");
        assertEquals(List.of("module.yaml, line 1: the module file is not a block of keys;"
                + " write \"key: value\" lines below it"), disk.problems(IN_FILE));
    }

    @Test
    void aModuleIsInAFileOrInPlaceNotBoth() {
        assertEquals(List.of("plan.yaml, line 5: module names a file and describes the module as well;"
                + " leave out the one or the other"),
                disk.problems(with(IN_FILE, "module: {file: module.yaml}", "module: {file: module.yaml, height: 9 m}")));
    }

    @Test
    void currentInPlace() {
        SitingPlan plan = disk.read("""
                current:
                  - {depth: 0 m, speed: 3.5 kn, toward: 20 deg}
                  - {depth: 30 fathom, speed: 0.5 m/s, toward: 360 deg}
                """ + LEAST);
        assertEquals(List.of(new CurrentLevel(0, 3.5 * KNOT, 20), new CurrentLevel(30 * 1.8288, 0.5, 0)), levels(plan));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            current: [{depth: 0 m, speed: 3.5, toward: 20 deg}]      | speed is "3.5"; write the unit, for example "3.5 kn"
            current: [{depth: 0 m, speed: 3.5 kn, toward: 400 deg}]  | toward is "400 deg"; an angle is 0 deg to 360 deg here
            current: [{depth: 0 m, speed: 3.5 kn}]                   | this level of the current has no "toward"; add it, for example "- {depth: 0 m, speed: 3.5 kn, toward: 20 deg}"
            current: [{depth: 0 m, speed: 3.5 kn, to: 20 deg}, 5]    | "to" is not a key of this level of the current; known here: depth, speed, toward
            current: []                                              | current has no level; write for example "- {depth: 0 m, speed: 3.5 kn, toward: 20 deg}"
            current: fast                                            | current is not a list; write its items in brackets, or one a line after "- "
            current: {fil: current.csv}                              | "fil" is not a key of current; did you mean "file"?
            current: {}                                              | current has no "file"; add it, for example "file: current.csv"
            """)
    void mistakesInTheCurrent(String block, String expected) {
        assertEquals("plan.yaml, line 1: " + expected, disk.problems(block + "\n" + LEAST).get(0));
    }

    private static List<CurrentLevel> levels(SitingPlan plan) {
        List<SitingPlan.CurrentProfile> profiles = plan.current().orElseThrow().profiles();
        assertEquals(1, profiles.size());
        return profiles.get(0).levels();
    }

    @Test
    void severalProfilesStandInOneTableAndKeepTheirOrder() {
        disk.write("current.csv", "profile,depth_m,speed_kn,toward_deg\nspring,0,3,10\nneap,0,1,20\nspring,90,1,10\nneap,80,0.5,20\n");
        SitingPlan.Current current = disk.read(
                "current: {file: current.csv, speed-uncertainty: 15 %, direction-uncertainty: 10 deg}\n" + LEAST).current().orElseThrow();
        assertEquals(List.of("spring", "neap"), current.profiles().stream().map(SitingPlan.CurrentProfile::name).toList());
        assertEquals(List.of(0.0, 90.0), current.profiles().get(0).levels().stream().map(CurrentLevel::depthM).toList());
        assertEquals(List.of(0.0, 80.0), current.profiles().get(1).levels().stream().map(CurrentLevel::depthM).toList());
        assertEquals(0.15, current.speedUncertaintyShare());
        assertEquals(10, current.directionUncertaintyDeg());
    }

    @Test
    void levelsInPlaceMayHaveAnUncertaintyToo() {
        SitingPlan.Current current = disk.read("""
                current:
                  speed-uncertainty: 0.5 kn
                  levels: [{depth: 0 m, speed: 3 kn, toward: 20 deg}, {depth: 90 m, speed: 1 kn, toward: 20 deg}]
                """ + LEAST).current().orElseThrow();
        assertEquals(0.5 * KNOT, current.speedUncertaintyMPerS());
        assertEquals(0, current.speedUncertaintyShare());
        assertEquals(2, current.profiles().get(0).levels().size());
    }

    /** What must be there where a rule rests on how the module sinks. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            landing-radius: 25 m    |                      | plan.yaml, line 5: the module states no landing-radius, so it is computed, and that needs a current; add "current: {file: current.csv}", or state for example "landing-radius: 25 m"
            landing-radius: 25 m    |                      | plan.yaml, line 5: the module states no landing-radius, so it is computed down to the deepest depth allowed; add for example "limits: {depth: [60 m, 150 m]}", or state for example "landing-radius: 25 m"
            volume: 2.5 m3,         |                        | plan.yaml, line 5: limits: stability rests on how the module sinks, and for that the module lacks base: volume; add it to module.yaml, or leave the limit out
            pole: {                 | poleless: {            | module.yaml, line 5: "poleless" is not a key of the module file; known here: name, height, landing-radius, base, pole, drag, added-mass, scatter-angle, release-tilt
            volume: 2.5 m3          | volume: 25 m3          | module.yaml, line 1: the base's volume of 25 m3 is more than its outline holds (3.62456 m3); check width, height and volume
            mass: 8.5 short_ton     | mass: 2000 kg          | module.yaml, line 1: the module floats: 2544 kg in all, and the sea water it displaces weighs 2641 kg; check masses and volumes
            mass: 8.5 short_ton     | mass: 2550 kg          | module.yaml, line 1: the base is lighter (2550 kg) than the sea water it displaces (2563 kg), so the module would sink pole first; check mass and volume of the base
            mass: 1200 lb           | mass: 9 t              | module.yaml, line 1: the pole (9000 kg) is as heavy as the base (7711 kg) or heavier: the module will not right itself; check the masses
            length: 28 ft           | length: 40 ft          | module.yaml, line 1: the module's height of 9.144 m is less than that of its base or its pole; height counts from the underside of the base to the top of the pole
            length: 28 ft           | length: 20 ft          | module.yaml, line 1: base and pole together are 6.7056 m high and the module 9.144 m; check the three
            shape: square           | shape: star            | module.yaml, line 4: shape is "star"; write square, rectangle or round
            shape: square           | shape: square, length: 9 ft | module.yaml, line 4: length is given for a base that is not a rectangle; leave it out, or write "shape: rectangle"
            """)
    void whatSinkingNeedsAndWhatNoModuleMayBe(String good, String bad, String expected) {
        disk.write("module.yaml", with(MODULE, good, bad == null ? "" : bad));
        boolean computed = good.startsWith("landing");
        String limits = computed ? "" : "limits: {depth: [60 m, 150 m], stability: 1.5}\n";
        String plan = IN_FILE + limits + (computed ? "" : "current: [{depth: 0 m, speed: 3 kn, toward: 5 deg}, {depth: 150 m, speed: 1 kn, toward: 5 deg}]\n");
        List<String> problems = disk.problems(plan);
        assertTrue(problems.contains(expected), () -> problems.toString());
    }

    @Test
    void aCurrentThatStopsAboveTheDeepestDepthIsNoCurrentToSinkThrough() {
        disk.write("module.yaml", with(MODULE, "landing-radius: 25 m\n", ""));
        assertEquals(List.of("plan.yaml, line 10: the current stops at 90 m, limits allow depths down to 150 m;"
                + " add a level at the bottom"), disk.problems(IN_FILE + """
                limits: {depth: [60 m, 150 m]}
                current: [{depth: 0 m, speed: 3 kn, toward: 5 deg}, {depth: 90 m, speed: 1 kn, toward: 5 deg}]
                """));
    }

    @Test
    void levelsGoDown() {
        assertEquals(List.of("plan.yaml, line 3: this level is not deeper than the one before;"
                + " write the levels from the surface down"), disk.problems("""
                current:
                  - {depth: 10 m, speed: 1 kn, toward: 0 deg}
                  - {depth: 10 m, speed: 1 kn, toward: 0 deg}
                """ + LEAST));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            depth_m,speed_kn,toward_deg            | 10,2,5        | 10       | 1.028888888888889
            Depth_ft,Speed_m_s,Toward_deg          | 10,2,5        | 3.048    | 2
            depth_fathom , speed_km_h , toward_deg | 10 , 7.2 , 5  | 18.288   | 2
            toward_deg,note,speed_ft_s,depth_ft_us | 5,"a, b",2,10 | 3.048006 | 0.6096
            """)
    void currentTableTakesItsUnitsFromTheHeader(String header, String row, double depthM, double speedMPerS) {
        disk.write("current.csv", header + "\n" + row + "\n");
        CurrentLevel level = levels(disk.read("current: {file: current.csv}\n" + LEAST)).get(0);
        assertEquals(depthM, level.depthM(), 1e-6);
        assertEquals(speedMPerS, level.speedMPerS(), 1e-12);
        assertEquals(5, level.towardDeg());
    }

    @Test
    void currentTableMayHaveAByteOrderMarkWindowsLineEndsAndEmptyLines() {
        disk.write("current.csv", "\uFEFFdepth_m,speed_kn,toward_deg\r\n0,1,0\r\n\r\n10,1,0\r\n");
        assertEquals(2, levels(disk.read("current: {file: current.csv}\n" + LEAST)).size());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            depth,speed_kn,toward_deg\\n0,1,2           | , line 1: column "depth" names no unit of depth (_m, _km, _cm, _mm, _ft, _ft_us, _fathom, _nmi, _mi, _yd); write a header such as depth_m,speed_kn,toward_deg
            depth_m,speed_m,toward_deg\\n0,1,2          | , line 1: column "speed_m" names no unit of speed (_m_s, _kn, _km_h, _ft_s); write a header such as depth_m,speed_kn,toward_deg
            depth_m,speed_kn\\n0,1                      | , line 1: there is no column of toward; write a header such as depth_m,speed_kn,toward_deg
            depth_m,depth_ft,speed_kn,toward_deg\\n0,1,2,3 | , line 1: there are two columns of depth; write a header such as depth_m,speed_kn,toward_deg
            depth_m,speed_kn,toward_deg\\n0,fast,2      | , line 2: speed is "fast kn"; write a number with a decimal point and a unit, for example "3.5 kn"
            depth_m,speed_kn,toward_deg\\n0,1,2\\n\\n9,,2 | , line 4: speed is empty; write a number
            depth_m,speed_kn,toward_deg\\n0,1           | , line 2: toward is empty; write a number
            depth_m,speed_kn,toward_deg\\n0,1,2\\n0,1,2 | , line 3: this level is not deeper than the one before; write the levels from the surface down
            depth_m,speed_kn,toward_deg\\n-5,1,2        | , line 2: depth is "-5 m"; a length is 0 or more (depths are positive down) here
            depth_m,speed_kn,toward_deg                 | : the table has no level; write a header such as depth_m,speed_kn,toward_deg and a row for each depth
            ''                                          | : the table has no level; write a header such as depth_m,speed_kn,toward_deg and a row for each depth
            depth_m;speed_kn;toward_deg\\n0;1;2         | , line 1: column "depth_m;speed_kn;toward_deg" names no unit of depth (_m, _km, _cm, _mm, _ft, _ft_us, _fathom, _nmi, _mi, _yd); write a header such as depth_m,speed_kn,toward_deg
            """)
    void mistakesInTheCurrentTableNameThatFile(String table, String expected) {
        disk.write("current.csv", table.replace("\\n", "\n"));
        assertEquals("current.csv" + expected, disk.problems("current: {file: current.csv}\n" + LEAST).get(0));
    }

    @Test
    void anOpenQuoteInTheCurrentTableIsNoCrash() {
        disk.write("current.csv", "depth_m,speed_kn,toward_deg\n\"0,1,2\n");
        assertEquals(1, disk.problems("current: {file: current.csv}\n" + LEAST).size());
    }
}
