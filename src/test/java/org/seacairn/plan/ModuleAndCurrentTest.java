package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
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
            landing-radius: 25 m    | "#"                          | line 1: the module has no "landing-radius", and computing it is not available yet; state it, for example "landing-radius: 25 m"
            width: 8 ft             | width: 8                     | line 4: width is "8"; write the unit, for example "8 m"
            mass: 8.5 short_ton     | mass: 8.5 ton                | line 4: mass is "8.5 ton", but "ton" is not a unit known here; a mass is written in kg, t, lb, short_ton, long_ton
            volume: 2.5 m3          | volume: 2.5 m                | line 4: volume is "2.5 m", which is a length; a volume is written in m3, ft3, yd3
            open-share: 10 %        | open-share: 110 %            | line 4: open-share is "110 %"; a share is 0 to 1 here
            diameter: 300 mm        | diametre: 300 mm             | line 5: "diametre" is not a key of pole; did you mean "diameter"?
            length: 28 ft           | length: 28 kn                | line 5: length is "28 kn", which is a speed; a length is written in m, km, cm, mm, ft, ft_us, fathom, nmi, mi, yd
            broadside: 1.2          | broadside: high              | line 6: broadside is "high"; write a bare number, 0 or more
            broadside: 1.2          | broadside: -1                | line 6: broadside is "-1"; write a bare number, 0 or more
            added-mass: {broadside: 1} | added-mass: 1             | line 7: added-mass is not a block of keys; write "key: value" lines below it
            """)
    void mistakesInTheModuleFileNameThatFile(String good, String bad, String expected) {
        String module = with(MODULE, good, bad);
        if (bad.startsWith("drag")) {
            module = module.replace("drag: {broadside: 1.2, end-on: 0.9}\n", "");
        }
        if (bad.equals("\"#\"")) {
            module = with(MODULE, "landing-radius: 25 m\n", "");
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
        assertEquals(List.of(new CurrentLevel(0, 3.5 * KNOT, 20), new CurrentLevel(30 * 1.8288, 0.5, 0)), plan.current());
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
        CurrentLevel level = disk.read("current: {file: current.csv}\n" + LEAST).current().get(0);
        assertEquals(depthM, level.depthM(), 1e-6);
        assertEquals(speedMPerS, level.speedMPerS(), 1e-12);
        assertEquals(5, level.towardDeg());
    }

    @Test
    void currentTableMayHaveAByteOrderMarkWindowsLineEndsAndEmptyLines() {
        disk.write("current.csv", "\uFEFFdepth_m,speed_kn,toward_deg\r\n0,1,0\r\n\r\n10,1,0\r\n");
        assertEquals(2, disk.read("current: {file: current.csv}\n" + LEAST).current().size());
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
