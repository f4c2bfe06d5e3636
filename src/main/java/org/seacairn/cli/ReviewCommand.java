package org.seacairn.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.review.Verdict;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** {@code seacairn review PLAN PROPOSAL}: checks anybody's proposal against every rule of a plan. */
@Command(name = "review", description = "Checks proposed points or polygons against every rule of the plan, on the ellipsoid.",
        footer = "Exit status 0: every verdict is pass; 1: one is fail, no data or marginal.")
final class ReviewCommand extends PlanCommand {
    @Parameters(index = "1", paramLabel = "PROPOSAL", description = "What is proposed: points or polygons as CSV, GeoJSON,"
            + " GPX, KML, GeoPackage or shapefile; sites.csv of a ranking too.")
    private Path proposal;

    @Mixin
    private final OutputOptions output = new OutputOptions();

    @Option(names = "--marginal-ok", description = "A marginal verdict is no reason for exit status 1.")
    private boolean marginalOk;

    @Option(names = "--display", paramLabel = "us|metric", description = "Units of the summary (default: the plan's).")
    private Display display;

    @Option(names = "--name", paramLabel = "COLUMN", description = "Column of the proposal with the sites' names"
            + " (default: site, name, label, id, module or area).")
    private String name;

    @Option(names = "--table", paramLabel = "TABLE", description = "Table of the proposal, if it is a GeoPackage with several.")
    private String table;

    @Option(names = "--crs", paramLabel = "CRS", description = "CRS of the proposal, in place of its own, such as EPSG:4326.")
    private String crs;

    @Option(names = "--x-column", paramLabel = "COLUMN", description = "Column of a CSV proposal with longitude or easting.")
    private String xColumn;

    @Option(names = "--y-column", paramLabel = "COLUMN", description = "Column of a CSV proposal with latitude or northing.")
    private String yColumn;

    @Override
    public Integer call() {
        if ((xColumn == null) != (yColumn == null)) {
            throw new ParameterException(spec.commandLine(), "--x-column and --y-column go together; give both or neither");
        }
        LayerFile source = new LayerFile("proposal", proposal.toAbsolutePath().normalize(), Optional.ofNullable(table),
                Optional.ofNullable(crs), Optional.ofNullable(xColumn), Optional.ofNullable(yColumn), 0, Edges.GEODESIC);
        Path outFolder = output.folder(options.plan, "-review");
        PlanInputs inputs = output.inputs(options, outFolder, List.of(source.file()));
        ReviewRun.Result result = ProgressLine.over(options.quiet, progress -> new ReviewRun(inputs, source, Optional.ofNullable(name), outFolder,
                output.threads(), output.report(), Optional.ofNullable(display), marginalOk, progress).run());
        if (!options.quiet) {
            result.warnings().forEach(warning -> err().println("seacairn: warning: " + warning));
            out().print(options.json ? ReviewSummary.json(result) : ReviewSummary.text(result));
            out().flush();
        }
        Verdict worst = result.worst();
        return worst == Verdict.PASS || marginalOk && worst == Verdict.MARGINAL ? 0 : Seacairn.ANSWER_IS_NO;
    }
}
