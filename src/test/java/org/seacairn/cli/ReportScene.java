package org.seacairn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.seacairn.cli.TinyScene.Outcome;

/** A small invented sea floor with everything a page can show, for tests of other packages that need the page of a command. */
public final class ReportScene {
    /** In the order in which they can be run: the drop takes a site of the ranking. */
    public static final List<String> COMMANDS = List.of("rank", "review", "infill", "ring", "areas", "drop");

    private static final String MODULE = """
            name: Pole on a slab
            height: 8 m
            base: {shape: square, width: 2.4 m, height: 0.6 m, mass: 7700 kg, volume: 3.1 m3, open-share: 10 %}
            pole: {diameter: 200 mm, length: 7.4 m, mass: 300 kg, volume: 0.04 m3}
            drag: {uncertainty: 20 %}
            scatter-angle: 4 deg
            """;

    private final TinyScene scene;

    /** @param change of the plan's text */
    public ReportScene(Path folder, UnaryOperator<String> change) {
        scene = new TinyScene(folder).write("module.yaml", MODULE)
                .write("current.csv", "profile,depth_m,speed_kn,toward_deg\nebb,0,3,40\nebb,130,1,60\nflood,0,2,220\nflood,130,0.5,230\n")
                .write("reefs.csv", "name,longitude,latitude\nTeapot," + place(700, 200) + "\nKettle," + place(250, 250) + "\n")
                .write("proposal.csv", "site,longitude,latitude\nNear," + place(700, 230) + "\nFree," + place(900, 400) + "\nFar," + place(3000, 300) + "\n")
                .plan("module: {file: module.yaml}", "module: {file: module.yaml}\ncurrent: {file: current.csv, speed-uncertainty: 0.3 kn,"
                        + " direction-uncertainty: 10 deg}\nbarge: {position-uncertainty: 5 m}");
        scene.write("plan.yaml", change.apply(scene.read("plan.yaml")));
    }

    private static String place(double xM, double yM) {
        return TinyScene.lonLat(xM, yM).replace(" ", "");
    }

    /** Writes a file of the plan anew. */
    public ReportScene write(String name, String text) {
        scene.write(name, text);
        return this;
    }

    /** A file with one line across the scene. */
    public static String cable(String name) {
        return TinyScene.features(TinyScene.feature("name", name, "LineString", TinyScene.line(-200, 700, 1400, 600)));
    }

    /** A file of proposed sites with one that has a name. */
    public static String proposal(String name) {
        return "site,longitude,latitude\n\"" + name.replace("\"", "\"\"") + "\"," + place(700, 230) + "\n";
    }

    /** Runs a command and returns its page. */
    public Path page(String command) {
        Path out = scene.path(command + "-out");
        Outcome outcome = TinyScene.run(args(command, out).toArray(String[]::new));
        if (outcome.status() > 1) {
            throw new AssertionError(outcome.err());
        }
        return out.resolve("report.html");
    }

    /** The command line of a command that writes to a folder; the drop takes its site from {@code rank-out}. */
    List<String> args(String command, Path out, String... more) {
        List<String> args = new ArrayList<>(List.of(command, scene.path("plan.yaml").toString(), "--out", out.toString(), "--quiet"));
        args.addAll(switch (command) {
            case "review" -> List.of(scene.path("proposal.csv").toString());
            case "infill" -> List.of("--from", "Teapot", "--to", "Kettle");
            case "ring" -> List.of("--around", "Teapot", "--radius", "100 m to 250 m", "--modules", "3");
            case "areas" -> List.of("--size", "120 m x 100 m");
            case "drop" -> List.of("--at", "S01", "--sites", scene.path("rank-out/sites.csv").toString());
            default -> List.of();
        });
        args.addAll(List.of(more));
        return args;
    }
}
