package org.seacairn.cli;

import org.seacairn.plan.PlanReader;
import org.seacairn.score.LayersReport;
import picocli.CommandLine.Command;

/** {@code seacairn layers PLAN}: what each layer holds, and what is wrong with it. */
@Command(name = "layers", description = "Tells what each layer of a plan holds, and what is wrong with it.",
        footer = "Warnings leave the exit status at 0; a layer that cannot be read makes it 2, after the others were told.")
final class LayersCommand extends PlanCommand {
    @Override
    public Integer call() {
        LayersReport report = LayersReport.of(PlanReader.read(options.plan, options.allowOutside));
        if (!options.quiet) {
            out().print(options.json ? LayersJson.of(report) : LayersText.of(report));
            out().flush();
        }
        report.problems().forEach(problem -> err().println("seacairn: " + problem));
        return report.problems().isEmpty() ? 0 : Seacairn.INPUT_AT_FAULT;
    }
}
