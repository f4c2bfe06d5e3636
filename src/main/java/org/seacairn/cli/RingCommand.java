package org.seacairn.cli;

import java.nio.file.Path;
import java.util.List;
import org.seacairn.place.RingRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** {@code seacairn ring PLAN --around REEF}: modules about a reef. */
@Command(name = "ring", description = "Lays modules about a reef, bearings spread as evenly as the ground allows, and of those rings the best.",
        footer = "Exit status 1: so many modules do not fit; the summary tells how many do, and what stands in the way.")
final class RingCommand extends PlanCommand {
    @Option(names = "--around", required = true, paramLabel = "REEF", description = "The reef in the middle, by name.")
    private String around;

    @Option(names = "--radius", required = true, paramLabel = "RANGE",
            description = "Least and largest distance of a module to the reef, such as \"60 m to 150 m\".")
    private String radius;

    @Option(names = "--modules", required = true, paramLabel = "N", description = "How many modules.")
    private int modules;

    @Mixin
    private final OutputOptions output = new OutputOptions();

    @Override
    public Integer call() {
        if (modules < 1 || modules > RingRequest.MOST_MODULES) {
            throw new ParameterException(spec.commandLine(), "--modules is " + modules + "; give 1 to " + RingRequest.MOST_MODULES);
        }
        RingRun ring = new RingRun(around, LengthRange.of("--radius", radius), modules);
        Path outFolder = output.folder(options.plan, "-ring");
        PlanInputs inputs = output.inputs(options, outFolder, List.of());
        RingRun.Result result = ProgressLine.over(options.quiet, progress -> ring.run(new LayoutRun.Settings(
                inputs, outFolder, output.threads(), output.report(),
                "ring --around \"" + around + "\" --radius \"" + radius + "\" --modules " + modules, progress)));
        if (!options.quiet) {
            result.warnings().forEach(warning -> err().println("seacairn: warning: " + warning));
            out().print(options.json ? RingSummary.json(result) : RingSummary.text(result));
            out().flush();
        }
        return result.found().ring().isPresent() ? 0 : Seacairn.ANSWER_IS_NO;
    }
}
