package org.seacairn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.seacairn.InputException;
import org.seacairn.plan.Quantity;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.Shown;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** {@code seacairn infill PLAN --from REEF --to REEF}: a chain of modules from reef to reef. */
@Command(name = "infill", description = "Finds the chain of fewest modules from reef to reef, every gap within a range, and of those the best.",
        footer = "Exit status 1: no such chain exists; the summary tells which stretch cannot be bridged, and why.")
final class InfillCommand extends PlanCommand {
    @Option(names = "--from", required = true, paramLabel = "REEF", description = "The reef that the chain starts from, by name.")
    private String from;

    @Option(names = "--to", required = true, paramLabel = "REEF", description = "The reef that it ends at.")
    private String to;

    @Option(names = "--via", paramLabel = "REEF", description = "A reef between; may be given again for the next.")
    private List<String> via = new ArrayList<>();

    @Option(names = "--gap", paramLabel = "RANGE", description = "Least and largest gap, such as \"120 m to 250 m\""
            + " (default: from the plan's apart to twice that).")
    private String gap;

    @Option(names = "--corridor", paramLabel = "LENGTH", defaultValue = "200 m",
            description = "How far to each side of the line the chain may stray (default: 200 m).")
    private String corridor;

    @Option(names = "--along", paramLabel = "FILE", description = "A layer with one line to follow, such as a drift that was"
            + " logged (default: the shortest line from reef to reef).")
    private Path along;

    @Option(names = "--modules", paramLabel = "N", description = "Exactly so many modules (default: as few as will do).")
    private Integer modules;

    @Option(names = "--sight", paramLabel = "LENGTH", defaultValue = "15 m",
            description = "How near a straight drift must pass to a module to count (default: 15 m).")
    private String sight;

    @Option(names = "--heading", paramLabel = "ANGLE", description = "True heading of the drift, such as \"40 deg\""
            + " (default: the plan's current at the surface).")
    private String heading;

    @Mixin
    private final OutputOptions output = new OutputOptions();

    @Override
    public Integer call() {
        InfillRun.Request request = request();
        Path outFolder = output.folder(options.plan, "-infill");
        PlanInputs inputs = output.inputs(options, outFolder, along == null ? List.of() : List.of(file()));
        InfillRun.Result result = ProgressLine.over(options.quiet, progress -> new InfillRun(request).run(new LayoutRun.Settings(
                inputs, outFolder, output.threads(), output.report(), commandText(), progress)));
        if (!options.quiet) {
            result.warnings().forEach(warning -> err().println("seacairn: warning: " + warning));
            out().print(options.json ? InfillSummary.json(result) : InfillSummary.text(result));
            out().flush();
        }
        return result.complete() ? 0 : Seacairn.ANSWER_IS_NO;
    }

    private InfillRun.Request request() {
        if (modules != null && modules < 1) {
            throw new ParameterException(spec.commandLine(), "--modules is " + modules + "; give 1 or more");
        }
        if (modules != null && !via.isEmpty()) {
            throw new ParameterException(spec.commandLine(), "--modules counts the modules of one leg and cannot be given with --via;"
                    + " run infill once for each leg");
        }
        double corridorM = Quantity.si("--corridor", corridor, Kind.LENGTH);
        if (corridorM == 0) {
            throw new InputException("--corridor is \"" + corridor + "\", which leaves no room; give a width above 0");
        }
        LengthRange.requireNear("--corridor is " + Shown.quoted(corridor), corridorM);
        List<String> reefs = new ArrayList<>(List.of(from));
        reefs.addAll(via);
        reefs.add(to);
        return new InfillRun.Request(reefs, Optional.ofNullable(gap).map(g -> LengthRange.of("--gap", g)), corridorM,
                Optional.ofNullable(along).map(a -> file()), modules == null ? OptionalInt.empty() : OptionalInt.of(modules),
                Quantity.si("--sight", sight, Kind.LENGTH), Optional.ofNullable(heading).map(h -> Quantity.si("--heading", h, Kind.ANGLE)));
    }

    private Path file() {
        return along.toAbsolutePath().normalize();
    }

    /** As it was called, without folders. */
    private String commandText() {
        StringBuilder text = new StringBuilder("infill");
        option(text, "--from", from);
        via.forEach(reef -> option(text, "--via", reef));
        option(text, "--to", to);
        option(text, "--gap", gap);
        option(text, "--corridor", corridor);
        option(text, "--along", along == null ? null : file().getFileName().toString());
        option(text, "--modules", modules == null ? null : modules.toString());
        option(text, "--sight", sight);
        option(text, "--heading", heading);
        return text.toString();
    }

    private static void option(StringBuilder text, String name, String value) {
        if (value != null) {
            text.append(' ').append(name).append(" \"").append(value).append('"');
        }
    }
}
