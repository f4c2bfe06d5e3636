package org.seacairn.cli;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code seacairn rank PLAN}: the main job. */
@Command(name = "rank", description = "Scores the working grid, chooses the best sites and writes them out.",
        footer = "Exit status 1: nothing on the grid is feasible; reasons.csv tells which limits did it.")
final class RankCommand extends PlanCommand {
    @Mixin
    private final OutputOptions output = new OutputOptions();

    @Option(names = "--exchange", description = "Improve the choice of sites by swaps.")
    private boolean exchange;

    @Override
    public Integer call() {
        Path outFolder = output.folder(options.plan, "-out");
        PlanInputs inputs = output.inputs(options, outFolder, List.of());
        RankRun.Result result = ProgressLine.over(options.quiet,
                progress -> new RankRun(inputs, outFolder, output.threads(), output.report(), exchange, progress).run());
        if (!options.quiet) {
            result.warnings().forEach(warning -> err().println("seacairn: warning: " + warning));
            out().print(options.json ? RankSummary.json(result) : RankSummary.text(result));
            out().flush();
        }
        return result.sites().isEmpty() ? Seacairn.ANSWER_IS_NO : 0;
    }
}
