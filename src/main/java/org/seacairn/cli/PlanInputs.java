package org.seacairn.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
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
        try {
            return files(plan, styles, others).stream().map(file -> Run.InputFile.of(plan.file(), file)).toList();
        } catch (InputException e) {
            throw new InputException(e.getMessage() + "; it was there when the run began", e);
        }
    }

    private static Set<Path> files(SitingPlan plan, List<Path> styles, Path... others) {
        Set<Path> files = new LinkedHashSet<>();
        files.add(plan.file());
        files.add(plan.bathymetry().source().file());
        plan.bottom().ifPresent(b -> files.add(b.source().file()));
        plan.reefs().ifPresent(r -> files.add(r.source().file()));
        plan.inside().map(LayerFile::file).ifPresent(files::add);
        plan.depthAreas().ifPresent(d -> files.add(d.source().file()));
        plan.keepOff().forEach(k -> {
            files.add(k.source().file());
            k.coverage().map(LayerFile::file).ifPresent(files::add);
        });
        plan.module().file().ifPresent(files::add);
        plan.current().flatMap(SitingPlan.Current::file).ifPresent(files::add);
        files.addAll(styles);
        files.addAll(List.of(others));
        return files;
    }

    /**
     * How the files stand now, with those that readers look for beside them under the same name (attributes, CRS, updates of a chart).
     * Hashes are taken beside the reading, so only this tells whether what was hashed is what was read.
     */
    static Watched watch(SitingPlan plan, List<Path> styles, Path... others) {
        Map<Path, String> states = new TreeMap<>();
        files(plan, styles, others).forEach(file -> namesakes(file).forEach(beside -> states.put(beside, state(beside))));
        return new Watched(states);
    }

    /** Files as they stood when a run began. */
    record Watched(Map<Path, String> states) {
        /** One line for each file that is another now. */
        List<String> warnings() {
            return states.entrySet().stream().filter(e -> !state(e.getKey()).equals(e.getValue()))
                    .map(e -> e.getKey().getFileName() + ": was changed while the run read it, so what was computed may come from the file before"
                            + " or after, or from a part of each; run again").toList();
        }
    }

    private static List<Path> namesakes(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        String stem = stem(file);
        try (Stream<Path> beside = Files.list(folder)) {
            return Stream.concat(Stream.of(file), beside.filter(path -> !path.equals(file) && stem(path).equals(stem) && Files.isRegularFile(path))).toList();
        } catch (IOException | UncheckedIOException e) {
            return List.of(file);
        }
    }

    private static String stem(Path file) {
        return file.getFileName().toString().replaceFirst("\\.[^.]*$", "");
    }

    /** Size and time of the last change. */
    private static String state(Path file) {
        try {
            return Files.size(file) + " " + Files.getLastModifiedTime(file);
        } catch (IOException e) {
            return "missing";
        }
    }
}
