package org.seacairn.cli;

import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.seacairn.InputException;
import org.seacairn.export.Run;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.LayerFile;

/** The files that a run read, with their hashes. */
final class PlanInputs {
    private PlanInputs() {}

    /**
     * Every file that the plan names, the plan itself first.
     *
     * @param styles that the user named
     * @param others files that the command line names
     */
    static List<Run.InputFile> hashed(SitingPlan plan, List<Path> styles, Path... others) {
        Set<Path> files = new LinkedHashSet<>();
        files.add(plan.file());
        files.add(plan.bathymetry().source().file());
        plan.bottom().ifPresent(b -> files.add(b.source().file()));
        plan.reefs().ifPresent(r -> files.add(r.source().file()));
        plan.inside().map(LayerFile::file).ifPresent(files::add);
        plan.keepOff().forEach(k -> {
            files.add(k.source().file());
            k.coverage().map(LayerFile::file).ifPresent(files::add);
        });
        plan.module().file().ifPresent(files::add);
        plan.current().flatMap(SitingPlan.Current::file).ifPresent(files::add);
        files.addAll(styles);
        files.addAll(List.of(others));
        try {
            return files.stream().map(file -> Run.InputFile.of(plan.file(), file)).toList();
        } catch (InputException e) {
            throw new InputException(e.getMessage() + "; it was there when the run began", e);
        }
    }
}
