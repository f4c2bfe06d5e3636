package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seacairn.cli.TinyScene.Outcome;

/** What may be wrong with what {@code drop} is given: status 2, one line for each mistake, and no file more than before. */
class DropBadInputTest {
    private static final String MODULE = """
            name: Pole on a slab
            height: 8 m
            base: {shape: square, width: 2.5 m, height: 0.6 m, mass: 7.5 t, volume: 3.1 m3, open-share: 12 %}
            pole: {diameter: 219 mm, length: 7.4 m, mass: 300 kg, volume: 0.04 m3}
            drag: {uncertainty: 20 %}
            release-tilt: 20 deg
            """;
    private static final String CURRENT = "depth_m,speed_kn,toward_deg\n0,2,20\n60,1,30\n150,0.4,40\n";
    private static final String LANDINGS = "planned_longitude,planned_latitude,surveyed_longitude,surveyed_latitude,depth_m\n";

    /**
     * One mistake.
     *
     * @param lines of standard error without {@code seacairn: }
     */
    private record Mistake(String name, Consumer<TinyScene> make, List<String> options, List<String> lines) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static Mistake mistake(String name, Consumer<TinyScene> make, String... lines) {
        return new Mistake(name, make, List.of("--at=" + middle()), List.of(lines));
    }

    /** With options in one text, spaces between; nothing is wrong with the files. */
    private static Mistake asked(String options, String... lines) {
        return new Mistake(options, scene -> { }, Arrays.asList(options.split(" ")), List.of(lines));
    }

    static String middle() {
        return TinyScene.lonLat(610, 410).replace(" ", "");
    }

    static TinyScene scene(Path folder) {
        return new TinyScene(folder.resolve("scene")).write("module.yaml", MODULE).write("current.csv", CURRENT)
                .plan("module: {file: module.yaml}", "module: {file: module.yaml}\ncurrent: {file: current.csv, speed-uncertainty: 10 %}")
                .plan("mud: {suitability: 0.4}", "mud: {suitability: 0.4, shear-strength: 4 kPa, gradient: 1.5 kPa/m}");
    }

    private static Outcome drop(TinyScene scene, List<String> options) {
        List<String> args = new ArrayList<>(List.of("drop", scene.path("plan.yaml").toString()));
        options.stream().map(option -> option.replace("{scene}", scene.folder.toString())).forEach(args::add);
        return TinyScene.run(args.toArray(String[]::new));
    }

    private static void module(TinyScene scene, String old, String changed) {
        change(scene, "module.yaml", old, changed);
    }

    private static void change(TinyScene scene, String file, String old, String changed) {
        assertTrue(scene.read(file).contains(old), "not there: " + old);
        scene.write(file, scene.read(file).replace(old, changed));
    }

    @Test
    void withoutMistakeItIsDone(@TempDir Path folder) {
        TinyScene scene = scene(folder).write("landings.csv", LANDINGS + "-80.79,29.55,-80.7901,29.5501,80\n-80.79,29.55,-80.7899,29.5501,80\n"
                + "-80.79,29.55,-80.79,29.5498,80\n-80.79,29.55,-80.7901,29.5499,80\n");
        Outcome outcome = drop(scene, List.of("--at=" + middle(), "--landings={scene}/landings.csv", "--draws=100"));
        assertEquals(0, outcome.status(), outcome.out() + outcome.err());
    }

    @ParameterizedTest
    @MethodSource({"modules", "currents", "targets", "landings"})
    void isToldInOneLine(Mistake mistake, @TempDir Path folder) {
        TinyScene scene = scene(folder);
        mistake.make.accept(scene);
        Map<String, String> before = TinyScene.bytes(scene.folder);
        Outcome outcome = drop(scene, mistake.options);
        assertEquals(String.join("\n", mistake.lines), outcome.err().replaceAll("(?m)^seacairn: ", "").strip());
        assertEquals(2, outcome.status());
        assertEquals("", outcome.out());
        assertEquals(before, TinyScene.bytes(scene.folder), "files changed, or were left behind");
    }

    static Stream<Mistake> modules() {
        return Stream.of(
                mistake("module floats", s -> module(s, "mass: 7.5 t", "mass: 2.8 t"),
                        "module.yaml, line 1: the module floats: 3100 kg in all, and the sea water it displaces weighs 3219 kg; check"
                                + " masses and volumes"),
                mistake("base lighter than its buoyancy", s -> { module(s, "mass: 7.5 t", "mass: 3.1 t"); module(s, "mass: 300 kg", "mass: 1.5 t"); },
                        "module.yaml, line 1: the base is lighter (3100 kg) than the sea water it displaces (3178 kg), so the module"
                                + " would sink pole first; check mass and volume of the base"),
                mistake("pole heavier than base", s -> module(s, "mass: 300 kg", "mass: 7.6 t"),
                        "module.yaml, line 1: the pole (7600 kg) is as heavy as the base (7500 kg) or heavier: the module will not right"
                                + " itself; check the masses"),
                mistake("drag of nothing", s -> module(s, "drag: {uncertainty: 20 %}", "drag: {base: 0}"),
                        "module.yaml, line 5: base is \"0\"; it must be more than 0"),
                mistake("unit left out", s -> module(s, "mass: 7.5 t", "mass: 7.5"),
                        "module.yaml, line 3: mass is \"7.5\"; write the unit, for example \"7.5 short_ton\""),
                mistake("unit of another kind", s -> module(s, "volume: 3.1 m3", "volume: 3.1 t"),
                        "module.yaml, line 3: volume is \"3.1 t\", which is a mass; a volume is written in m3, ft3, yd3"),
                mistake("no base", s -> module(s, "base: {shape: square, width: 2.5 m, height: 0.6 m, mass: 7.5 t, volume: 3.1 m3, open-share: 12 %}\n", ""),
                        "plan.yaml, line 17: the module states no landing-radius, so it is computed, and for that the module lacks"
                                + " base; add it to module.yaml, or state for example \"landing-radius: 25 m\""),
                mistake("no base, radius stated", s -> module(s, "base: {shape: square, width: 2.5 m, height: 0.6 m, mass: 7.5 t, volume: 3.1 m3, open-share: 12 %}", "landing-radius: 25 m"),
                        "plan.yaml: to tell how the module sinks, the plan must also state the module's base; add it"),
                mistake("no mass of the base", s -> module(s, "mass: 7.5 t, ", ""),
                        "plan.yaml, line 17: the module states no landing-radius, so it is computed, and for that the module lacks"
                                + " base: mass; add it to module.yaml, or state for example \"landing-radius: 25 m\""),
                mistake("no pole, radius stated", s -> module(s, "pole: {diameter: 219 mm, length: 7.4 m, mass: 300 kg, volume: 0.04 m3}", "landing-radius: 25 m"),
                        "plan.yaml: to tell how the module sinks, the plan must also state the module's pole; add it"),
                mistake("shape unknown", s -> module(s, "shape: square", "shape: star"),
                        "module.yaml, line 3: shape is \"star\"; write square, rectangle or round"),
                mistake("open share in pieces", s -> module(s, "open-share: 12 %", "open-share: 12"),
                        "module.yaml, line 3: open-share is \"12\"; a share is 0 to 1 here"),
                mistake("volume beyond the outline", s -> module(s, "volume: 3.1 m3", "volume: 31 m3"),
                        "module.yaml, line 1: the base's volume of 31 m3 is more than its outline holds (3.75 m3); check width, height"
                                + " and volume"),
                mistake("height that base and pole do not make", s -> module(s, "height: 8 m", "height: 80 m"),
                        "module.yaml, line 1: base and pole together are 8 m high and the module 80 m; check the three"),
                mistake("negative drag", s -> module(s, "drag: {uncertainty: 20 %}", "drag: {base: -1.2}"),
                        "module.yaml, line 5: base is \"-1.2\"; a factor is 0 or more here"),
                mistake("key misspelt", s -> module(s, "drag: {uncertainty: 20 %}", "drag: {basis: 1.2}"),
                        "module.yaml, line 5: \"basis\" is not a key of drag; known here: base, pole, base-axial, base-lateral,"
                                + " pole-axial, pole-lateral, uncertainty"),
                mistake("negative strength", s -> s.plan("shear-strength: 4 kPa", "shear-strength: -4 kPa"),
                        "plan.yaml, line 10: shear-strength is \"-4 kPa\"; a pressure is 0 or more here"),
                mistake("strength without unit", s -> s.plan("shear-strength: 4 kPa", "shear-strength: 4"),
                        "plan.yaml, line 10: shear-strength is \"4\"; write the unit, for example \"4 kPa\""),
                mistake("gradient as a pressure", s -> s.plan("gradient: 1.5 kPa/m", "gradient: 1.5 kPa"),
                        "plan.yaml, line 10: gradient is \"1.5 kPa\", which is a pressure; a gradient is written in Pa/m, kPa/m"));
    }

    static Stream<Mistake> currents() {
        return Stream.of(
                mistake("no current", s -> s.plan("current: {file: current.csv, speed-uncertainty: 10 %}\n", ""),
                        "plan.yaml, line 17: the module states no landing-radius, so it is computed, and that needs a current; add"
                                + " \"current: {file: current.csv}\", or state for example \"landing-radius: 25 m\""),
                mistake("no current, radius stated", s -> { s.plan("current: {file: current.csv, speed-uncertainty: 10 %}\n", ""); module(s, "release-tilt", "landing-radius: 25 m\nrelease-tilt"); },
                        "plan.yaml: to tell how the module sinks, the plan must also state a current (current: {file: current.csv}); add"
                                + " it"),
                mistake("current stops above the bottom", s -> change(s, "current.csv", "150,", "110,"),
                        "plan.yaml, line 18: the current stops at 110 m, limits allow depths down to 120 m; add a level at the bottom"),
                mistake("target deeper than the current", s -> { change(s, "current.csv", "150,", "75,"); module(s, "release-tilt", "landing-radius: 25 m\nrelease-tilt"); },
                        "plan.yaml: the current stops at 75 m, limits allow depths down to 120 m; add a level at the bottom"),
                mistake("current at the surface alone", s -> { s.write("current.csv", "depth_m,speed_kn,toward_deg\n0,2,20\n"); module(s, "release-tilt", "landing-radius: 25 m\nrelease-tilt"); },
                        "plan.yaml: to tell how the module sinks, the plan must also state a current below the surface (a level at the"
                                + " bottom); add it"),
                mistake("current without units", s -> change(s, "current.csv", "speed_kn", "speed"),
                        "current.csv, line 1: column \"speed\" names no unit of speed (_m_s, _kn, _km_h, _ft_s); write a header such as"
                                + " depth_m,speed_kn,toward_deg"),
                mistake("current of no number", s -> change(s, "current.csv", "60,1,30", "60,fast,30"),
                        "current.csv, line 3: speed is \"fast kn\"; write a number with a decimal point and a unit, for example \"3.5 kn\""),
                mistake("negative speed", s -> change(s, "current.csv", "60,1,30", "60,-1,30"),
                        "current.csv, line 3: speed is \"-1 kn\"; a speed is 0 or more here"),
                mistake("levels upside down", s -> change(s, "current.csv", "60,1,30", "160,1,30"),
                        "current.csv, line 4: this level is not deeper than the one before; write the levels from the surface down"),
                mistake("table not there", s -> s.delete("current.csv"),
                        "plan.yaml, line 18: file is \"current.csv\", and there is no such file; check the name (paths start from the"
                                + " plan's folder)"),
                mistake("direction beyond the turn", s -> change(s, "current.csv", "60,1,30", "60,1,390"),
                        "current.csv, line 3: toward is \"390 deg\"; an angle is 0 deg to 360 deg here"),
                mistake("no depth limit", s -> s.plan("depth: [60 m, 120 m], ", ""),
                        "plan.yaml, line 17: the module states no landing-radius, so it is computed down to the deepest depth allowed;"
                                + " add for example \"limits: {depth: [60 m, 150 m]}\", or state for example \"landing-radius: 25 m\""));
    }

    static Stream<Mistake> targets() {
        return Stream.of(
                asked("--at=S1",
                        "--at \"S1\": there is no sites.csv of a ranking in plan-out to look the site up in; run rank first, name a file"
                                + " with --sites, or give longitude and latitude, for example --at=-85.3127,28.4410"),
                new Mistake("unknown site", s -> s.write("sites.csv", "site,longitude,latitude\nS01," + middle() + "\n"), List.of("--at=S1", "--sites={scene}/sites.csv"), List.of(
                        "sites.csv: no site is named \"S1\"; did you mean \"S01\"?")),
                new Mistake("two of one name", s -> s.write("sites.csv", "site,longitude,latitude\nS1," + middle() + "\nS1," + middle() + "\n"), List.of("--at=S1", "--sites={scene}/sites.csv"), List.of(
                        "sites.csv: two sites are named \"S1\"; give longitude and latitude")),
                asked("--at=S1 --sites={scene}/sites.csv",
                        "sites.csv: there is no such file; check its name"),
                asked("--at=-70.5,29.5",
                        "target: the place lies off the grid of the bathymetry; check longitude (it comes first, west is negative) and"
                                + " latitude"),
                new Mistake("dry land", s -> change(s, "depths.asc", "-", "+"), List.of("--at=" + middle()), List.of(
                        "depths.asc, target: the place is dry land (depth -91.44 m); check longitude and latitude")),
                new Mistake("no depth", s -> { }, List.of("--at=" + TinyScene.lonLat(5 * 20 + 10, 34 * 20 + 10).replace(" ", "")), List.of(
                        "depths.asc, target: the bathymetry has no depth there; choose another place")),
                asked("--at=29.5587,-80.7875",
                        "target: the place lies off the grid of the bathymetry; check longitude (it comes first, west is negative) and"
                                + " latitude"),
                asked("--at=somewhere,nice",
                        "--at \"somewhere,nice\": \"somewhere\" is no longitude; write it as 27.2437, 27 14.620 E or 27 14 37.2 E (longitude"
                                + " first, then latitude, for example -85.3127,28.4410)"),
                asked("--at=,",
                        "--at \",\": \"\" is no longitude; write it as 27.2437, 27 14.620 E or 27 14 37.2 E (longitude first, then latitude,"
                                + " for example -85.3127,28.4410)"),
                asked("--at=",
                        "--at \"\": there is no sites.csv of a ranking in plan-out to look the site up in; run rank first, name a file"
                                + " with --sites, or give longitude and latitude, for example --at=-85.3127,28.4410"),
                asked("--at=-80.7875",
                        "--at \"-80.7875\": there is no sites.csv of a ranking in plan-out to look the site up in; run rank first, name a"
                                + " file with --sites, or give longitude and latitude, for example --at=-85.3127,28.4410"),
                asked("--at=-80.7875,29.5587,30",
                        "--at \"-80.7875,29.5587,30\": \"29.5587,30\" is no latitude; write it as 27.2437, 27 14.620 N or 27 14 37.2 N"
                                + " (longitude first, then latitude, for example -85.3127,28.4410)"),
                asked("--draws=0",
                        "--draws is 0; give 100 to 1000000",
                        "Try: seacairn drop --help"),
                asked("--draws=many",
                        "--draws is \"many\"; give a whole number",
                        "Try: seacairn drop --help"),
                new Mistake("deeper than the limits", s -> s.plan("depth: [60 m, 120 m]", "depth: [60 m, 80 m]"), List.of("--at=" + middle()), List.of(
                        "depths.asc, target: the depth is 91.44 m, deeper than the 80 m that the plan allows or its current is known to;"
                                + " choose another place, or extend limits: depth and the current")),
                asked("--draws=1000001",
                        "--draws is 1000001; give 100 to 1000000",
                        "Try: seacairn drop --help"));
    }

    private static Mistake landed(String name, String text, String... lines) {
        return new Mistake(name, s -> s.write("landings.csv", text), List.of("--landings={scene}/landings.csv"), List.of(lines));
    }

    static Stream<Mistake> landings() {
        return Stream.of(
                asked("--landings={scene}/landings.csv",
                        "landings.csv: there is no such file; check its name"),
                landed("empty", "",
                        "landings.csv, landings: is empty (0 bytes); export it again"),
                landed("header alone", LANDINGS,
                        "landings.csv, line 1: has no row below its header; give a row for each drop"),
                landed("one drop", LANDINGS + "-80.79,29.55,-80.7901,29.5501,80\n",
                        "landings.csv: 1 landing tells nothing of scatter; give 3 or more (10 for bounds that are of use)"),
                landed("two drops", LANDINGS + "-80.79,29.55,-80.7901,29.5501,80\n-80.79,29.55,-80.7899,29.5501,80\n",
                        "landings.csv: 2 landings tell nothing of scatter; give 3 or more (10 for bounds that are of use)"),
                landed("bad rows", LANDINGS + "-80.79,29.55,-80.7901,,80\n-80.79,north,-80.7899,29.5501,80\n-80.79,29.55,-80.7899,29.5501,-80\n",
                        "landings.csv, line 2, column \"surveyed_latitude\": \"\" is no latitude; write it as 27.2437, 27 14.620 N or 27 14"
                                + " 37.2 N",
                        "landings.csv, line 3, column \"planned_latitude\": \"north\" is no latitude; write it as 27.2437, 27 14.620 N or 27"
                                + " 14 37.2 N",
                        "landings.csv, line 4, column \"depth_m\": \"-80\" is no depth of a bottom; write a number above 0, positive down"
                                + " and no deeper than 11000 m, or leave it empty"),
                landed("swapped columns", LANDINGS + "-80.79,29.55,29.5501,-80.7901,80\n",
                        "landings.csv, line 2: the surveyed place lies 13586.4 km from the planned one, more than 5 km; check for"
                                + " swapped columns, signs and digits"),
                landed("miss of 11 km", LANDINGS + "-80.79,29.55,-80.79,29.65,80\n",
                        "landings.csv, line 2: the surveyed place lies 11.1 km from the planned one, more than 5 km; check for swapped"
                                + " columns, signs and digits"),
                landed("no surveyed place", "planned_longitude,planned_latitude\n-80.79,29.55\n",
                        "landings.csv, line 1: no columns \"surveyed_longitude\" and \"surveyed_latitude\"; write a header such as"
                                + " name,planned_longitude,planned_latitude,surveyed_longitude,surveyed_latitude,depth_m"),
                landed("depth without unit", LANDINGS.replace("depth_m", "depth") + "-80.79,29.55,-80.7901,29.5501,80\n",
                        "landings.csv, line 1: its column \"depth\" names no unit of length; name it depth_m, depth_ft or depth_fathom"));
    }
}
