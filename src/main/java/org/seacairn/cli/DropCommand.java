package org.seacairn.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** {@code seacairn drop PLAN [--at SITE|LON,LAT]}: sinking, release point, landing circle, standing. */
@Command(name = "drop", description = "Tells how the module sinks, where to release it, where it lands and whether it stands.",
        footer = "Screening figures, not a lifting or mooring plan. Stand clear; the barge master and a licensed engineer decide.%n"
                + "Exit status 1: something speaks against the drop; the summary tells what.")
final class DropCommand extends PlanCommand {
    private static final int FEWEST_DRAWS = 100;
    private static final int MOST_DRAWS = 1_000_000;

    @Option(names = "--at", paramLabel = "SITE|LON,LAT", description = "The target: a site of the ranking by name, or longitude and latitude"
            + " such as --at=-85.3127,28.4410 (default: none; what the module can stand anywhere is told).")
    private String at;

    @Option(names = "--sites", paramLabel = "FILE", description = "Where to look the site up: any file that review takes"
            + " (default: sites.csv of the plan's ranking).")
    private Path sites;

    @Option(names = "--landings", paramLabel = "CSV", description = "Earlier drops, planned_longitude, planned_latitude, surveyed_longitude,"
            + " surveyed_latitude and depth_m: what they tell of scatter and bias.")
    private Path landings;

    @Option(names = "--draws", paramLabel = "N", description = "Landings to draw at random as a second opinion (default: 4000).")
    private int draws = 4000;

    @Option(names = "--seed", paramLabel = "N", description = "Where the random draws begin (default: 1).")
    private long seed = 1;

    @Mixin
    private final OutputOptions output = new OutputOptions();

    @Override
    public Integer call() {
        if (draws < FEWEST_DRAWS || draws > MOST_DRAWS) {
            throw new ParameterException(spec.commandLine(), "--draws is " + draws + "; give " + FEWEST_DRAWS + " to " + MOST_DRAWS);
        }
        Path outFolder = output.folder(options.plan, "-drop");
        Path found = sites == null ? ranking() : sites;
        boolean looksUp = at != null && at.indexOf(',') < 0 && Files.exists(found);
        PlanInputs inputs = output.inputs(options, outFolder, Stream.of(sites != null || looksUp ? found : null, landings)
                .filter(file -> file != null).map(file -> file.toAbsolutePath().normalize()).toList());
        DropRun run = new DropRun(new DropRun.Request(Optional.ofNullable(at), found, Optional.ofNullable(landings), draws, seed));
        DropRun.Result result = ProgressLine.over(options.quiet, progress -> run.run(
                new LayoutRun.Settings(inputs, outFolder, output.threads(), output.report(), commandText(), progress)));
        if (!options.quiet) {
            result.warnings().forEach(warning -> err().println("seacairn: warning: " + warning));
            out().print(options.json ? DropSummary.json(result) : DropSummary.text(result));
            out().flush();
        }
        return result.objections().isEmpty() ? 0 : Seacairn.ANSWER_IS_NO;
    }

    private Path ranking() {
        return OutputOptions.beside(options.plan, "-out").resolve("sites.csv");
    }

    private String commandText() {
        return "drop" + (at == null ? "" : " --at \"" + at + "\"") + (landings == null ? "" : " --landings \"" + landings.getFileName() + "\"")
                + " --draws " + draws + " --seed " + seed;
    }
}
