package org.seacairn.cli;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** {@code seacairn rank PLAN}: the main job. */
@Command(name = "rank", description = "Scores the working grid, chooses the best sites and writes them out.",
        footer = "Exit status 1: nothing on the grid is feasible; reasons.csv tells which limits did it.")
final class RankCommand extends PlanCommand {
    @Option(names = "--out", paramLabel = "DIR",
            description = "Output folder, replaced as a whole (default: <plan name>-out beside the plan).")
    private Path outFolder;

    @Option(names = "--exchange", description = "Improve the choice of sites by swaps.")
    private boolean exchange;

    @Option(names = "--threads", paramLabel = "N", description = "Worker threads (default: one for each processor).")
    private int threads = Runtime.getRuntime().availableProcessors();

    @Override
    public Integer call() {
        if (threads < 1) {
            throw new ParameterException(spec.commandLine(), "--threads is " + threads + "; give 1 or more");
        }
        if (outFolder != null && outFolder.toString().isEmpty()) {
            throw new ParameterException(spec.commandLine(), "--out is empty; name a folder");
        }
        RankRun.Result result = new RankRun(options.plan, options.allowOutside, folder(), threads, exchange).run();
        if (!options.quiet) {
            result.warnings().forEach(warning -> err().println("seacairn: warning: " + warning));
            out().print(options.json ? RankSummary.json(result) : RankSummary.text(result));
            out().flush();
        }
        return result.sites().isEmpty() ? Seacairn.ANSWER_IS_NO : 0;
    }

    private Path folder() {
        if (outFolder != null) {
            return outFolder;
        }
        String name = options.plan.getFileName() == null ? "plan" : options.plan.getFileName().toString();
        return options.plan.resolveSibling(name.replaceFirst("(?<=.)\\.[^.]*$", "") + "-out");
    }
}
