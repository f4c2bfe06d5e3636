package org.seacairn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seacairn.InputException;
import org.seacairn.place.AreaRequest;
import org.seacairn.place.AreaSize;
import org.seacairn.place.AreaTurns;
import org.seacairn.plan.Quantity;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.Shown;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code seacairn areas PLAN --size "0.25 nmi x 0.25 nmi"}: candidate permit areas. */
@Command(name = "areas", description = "Finds the rectangles with the highest mean score in which nothing is ruled out.",
        footer = "Exit status 1: no rectangle of that size will do.")
final class AreasCommand extends PlanCommand {
    private static final double LEAST_SIDE_M = 1;

    @Option(names = "--size", required = true, paramLabel = "SIZE", description = "Sides of a rectangle, such as \"0.5 nmi x 0.25 nmi\";"
            + " may be given again for other sizes to try.")
    private List<String> sizes = new ArrayList<>();

    @Option(names = "--turn", paramLabel = "TURN", defaultValue = "north", description = "north: sides along true north and east; isobath:"
            + " along the isobath, to 15 degrees; any: the best of every 15 degrees; or the true bearing of the long side, such as"
            + " \"30 deg\" (default: north).")
    private String turn;

    @Option(names = "--count", paramLabel = "N", defaultValue = "5", description = "How many areas (default: 5).")
    private int count;

    @Option(names = "--blemish", paramLabel = "SHARE", defaultValue = "0 %",
            description = "Largest share of an area that may be ruled out, such as 2%% (default: 0).")
    private String blemish;

    @Mixin
    private final OutputOptions output = new OutputOptions();

    @Override
    public Integer call() {
        AreaRequest request = new AreaRequest(sizes.stream().map(AreasCommand::size).toList(), turns(turn), count,
                Quantity.si("--blemish", blemish, Kind.SHARE));
        StringBuilder command = new StringBuilder("areas");
        sizes.forEach(size -> command.append(" --size \"").append(size).append('"'));
        command.append(" --turn \"").append(turn).append("\" --count ").append(count).append(" --blemish \"").append(blemish).append('"');
        Path outFolder = output.folder(options.plan, "-areas");
        PlanInputs inputs = output.inputs(options, outFolder, List.of());
        AreasRun.Result result = ProgressLine.over(options.quiet, progress -> new AreasRun(request, turn).run(new LayoutRun.Settings(
                inputs, outFolder, output.threads(), output.report(), command.toString(), progress)));
        if (!options.quiet) {
            result.warnings().forEach(warning -> err().println("seacairn: warning: " + warning));
            out().print(options.json ? AreasSummary.json(result) : AreasSummary.text(result));
            out().flush();
        }
        return result.areas().isEmpty() ? Seacairn.ANSWER_IS_NO : 0;
    }

    private static AreaSize size(String text) {
        // A unit holds no x with a space on both sides.
        String[] sides = text.strip().split("\\s+[xX×]\\s+", -1);
        if (sides.length != 2) {
            throw new InputException("--size is " + Shown.quoted(text) + "; write two lengths, for example \"0.25 nmi x 0.25 nmi\"");
        }
        double first = Quantity.si("--size", sides[0], Kind.LENGTH);
        double second = Quantity.si("--size", sides[1], Kind.LENGTH);
        if (Math.min(first, second) < LEAST_SIDE_M) {
            throw new InputException("--size is " + Shown.quoted(text) + ", too small for a module; give sides of 1 m or more");
        }
        return new AreaSize(first, second);
    }

    private static AreaTurns turns(String text) {
        return switch (text.strip().toLowerCase(Locale.ROOT)) {
            case "north" -> AreaTurns.NORTH;
            case "any" -> AreaTurns.ANY;
            case "isobath" -> AreaTurns.ISOBATH;
            default -> bearing(text);
        };
    }

    private static AreaTurns bearing(String text) {
        try {
            return AreaTurns.fixed(Quantity.si("--turn", text, Kind.ANGLE));
        } catch (InputException e) {
            throw new InputException(e.getMessage() + "; or write north, isobath or any", e);
        }
    }
}
