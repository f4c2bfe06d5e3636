package org.seacairn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.seacairn.report.StyleSet;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What every command that writes an output folder takes. */
final class OutputOptions {
    @Option(names = "--out", paramLabel = "DIR",
            description = "Output folder, replaced as a whole (default: beside the plan, named after it and the command).")
    private Path outFolder;

    @Option(names = "--styles", paramLabel = "DIR", description = "Folder of styles (.sld) that replace those of the map and of the output"
            + " (default: the bundled ones).")
    private Path styles;

    @Option(names = "--pdf", description = "Write the report as report.pdf too (A4; US letter where the plan's display is us).")
    private boolean pdf;

    @Option(names = "--threads", paramLabel = "N", description = "Worker threads (default: one for each processor).")
    private int threads = Runtime.getRuntime().availableProcessors();

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    /** @throws ParameterException if there are none */
    int threads() {
        if (threads < 1) {
            throw new ParameterException(spec.commandLine(), "--threads is " + threads + "; give 1 or more");
        }
        return threads;
    }

    /**
     * What a run reads, watched from now on: to be asked for before {@link #report} and anything else that reads.
     *
     * @param others files that the command line names beside the plan and the styles
     * @throws org.seacairn.InputException if one is not there, or lies in the output folder
     */
    PlanInputs inputs(PlanOptions options, Path outFolder, List<Path> others) {
        List<Path> given = new ArrayList<>(styles == null ? List.of() : StyleSet.files(styles));
        given.addAll(others);
        return new PlanInputs(options.plan, options.allowOutside, outFolder, given);
    }

    /** @throws org.seacairn.InputException if a style in the folder named cannot be used */
    ReportFiles report() {
        return new ReportFiles(styles == null ? StyleSet.bundled() : StyleSet.of(styles), pdf);
    }

    /**
     * The folder asked for, or one named after the plan, beside it.
     *
     * @param suffix for example {@code -out}
     */
    Path folder(Path plan, String suffix) {
        if (outFolder == null) {
            return beside(plan, suffix);
        }
        if (outFolder.toString().isBlank()) {
            throw new ParameterException(spec.commandLine(), "--out is empty; name a folder");
        }
        return outFolder;
    }

    /** The folder named after a plan, beside it. */
    static Path beside(Path plan, String suffix) {
        String name = plan.getFileName() == null ? "plan" : plan.getFileName().toString();
        return plan.resolveSibling(name.replaceFirst("(?<=.)\\.[^.]*$", "") + suffix);
    }
}
