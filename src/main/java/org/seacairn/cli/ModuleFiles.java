package org.seacairn.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import org.seacairn.drop.ModuleDrop;
import org.seacairn.drop.StandingTable;
import org.seacairn.export.DropPlots;
import org.seacairn.export.DropTables;
import org.seacairn.plan.SitingPlan;

/** What there is to know of a plan's module wherever it is put: its weights and coefficients, its landing circle by depth, what it can stand. */
final class ModuleFiles {
    private ModuleFiles() {}

    /**
     * @param rows what it can stand
     * @param file where to write a file of the output
     */
    static void write(SitingPlan plan, ModuleDrop drop, List<StandingTable.Row> rows, Function<String, Path> file) {
        double factor = StandingTable.factor(plan);
        DropTables.writeModule(file.apply("module.csv"), drop);
        DropTables.writeLanding(file.apply("landing_radius.csv"), drop, StandingTable.depths(plan, drop));
        DropTables.writeStanding(file.apply("standing.csv"), rows, factor);
        DropPlots.write(file.apply("standing.svg"), DropPlots.standing(plan.module().name(), rows, factor));
    }
}
