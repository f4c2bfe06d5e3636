package org.seacairn.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Supplier;
import org.seacairn.InputException;
import org.seacairn.export.Run;
import org.seacairn.layer.Bathymetries;
import org.seacairn.layer.VectorLayers;
import org.seacairn.plan.PlanReader;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * What a run reads: the plan, the files that it names, those that the command line names, and what belongs to each. None
 * may lie in the folder that the run replaces, and none may change from before it is first read until the output is moved
 * into place: layers are read beside each other and a grid block by block, so what was computed would be of no one state.
 */
final class PlanInputs {
    private final Path planFile;
    private final boolean allowOutside;
    private final Path outFolder;
    private final List<Path> given;
    private final Map<Path, String> before = new TreeMap<>();
    private SitingPlan plan;

    /**
     * Watches from now on what the command line names; to be made before any of it is read.
     *
     * @param given files that the command line names beside the plan
     * @throws InputException if one is not there, or lies in the output folder
     */
    PlanInputs(Path planFile, boolean allowOutside, Path outFolder, List<Path> given) {
        this.planFile = planFile;
        this.allowOutside = allowOutside;
        this.outFolder = outFolder;
        this.given = List.copyOf(given);
        for (Path file : given) {
            if (!Files.exists(file)) {
                throw new InputException(file.getFileName() + ": there is no such file; check its name");
            }
        }
        watch(files(List.of()));
    }

    /** The plan, whose files are watched from now on too. */
    SitingPlan read() {
        // Once to learn which files there are, and once more, for the module's and the current's stand in the plan that is returned.
        watch(files(ofPlan(PlanReader.read(planFile, allowOutside))));
        plan = PlanReader.read(planFile, allowOutside);
        return plan;
    }

    /** Every file of the run with its hash, the plan itself first. */
    List<Run.InputFile> hashed() {
        return files(ofPlan(plan)).stream().map(file -> Run.InputFile.of(planFile, file)).toList();
    }

    /** @throws InputException if a file is another than when the run began; to be asked last before the output is moved into place */
    void requireUnchanged() {
        Set<String> changed = changed();
        if (!changed.isEmpty()) {
            throw another(changed, null);
        }
    }

    /** Does work that reads the files. Where it fails and one of them has changed, that is what is told: the failure may be of its making. */
    <T> T during(Supplier<T> work) {
        try {
            return work.get();
        } catch (RuntimeException | Error e) {
            Set<String> changed = changed();
            if (!changed.isEmpty()) {
                throw another(changed, e);
            }
            throw e;
        }
    }

    private static InputException another(Set<String> changed, Throwable cause) {
        return new InputException(String.join(", ", changed) + ": changed while the run was reading, so what it computed could mix"
                + " before and after; nothing was written, run again", cause);
    }

    /** Names of the files that are another now, or that came or went. */
    private Set<String> changed() {
        Set<Path> all = new TreeSet<>(before.keySet());
        all.addAll(files(plan == null ? List.of() : ofPlan(plan)));
        Set<String> changed = new TreeSet<>();
        for (Path file : all) {
            if (!state(file).equals(before.get(file))) {
                changed.add(file.getFileName().toString());
            }
        }
        return changed;
    }

    private void watch(Set<Path> files) {
        files.forEach(this::requireOutside);
        files.forEach(file -> before.putIfAbsent(file, state(file)));
    }

    private Set<Path> files(List<Path> ofPlan) {
        Set<Path> files = new LinkedHashSet<>(List.of(planFile));
        files.addAll(ofPlan);
        given.forEach(file -> files.addAll(VectorLayers.files(file)));
        return files;
    }

    private static List<Path> ofPlan(SitingPlan plan) {
        List<Path> files = new ArrayList<>(Bathymetries.files(plan.bathymetry().source()));
        List<LayerFile> layers = new ArrayList<>();
        plan.bottom().ifPresent(bottom -> layers.add(bottom.source()));
        plan.reefs().ifPresent(reefs -> layers.add(reefs.source()));
        plan.inside().ifPresent(layers::add);
        plan.depthAreas().ifPresent(areas -> layers.add(areas.source()));
        plan.keepOff().forEach(keepOff -> {
            layers.add(keepOff.source());
            keepOff.coverage().ifPresent(layers::add);
        });
        layers.forEach(layer -> files.addAll(VectorLayers.files(layer.file())));
        plan.module().file().ifPresent(files::add);
        plan.current().flatMap(SitingPlan.Current::file).ifPresent(files::add);
        return files;
    }

    private void requireOutside(Path file) {
        Path folder = outFolder.toAbsolutePath().normalize();
        // The root, and a file in place of a folder, are refused with a reason of their own when it comes to writing.
        if (folder.getFileName() != null && (isWithin(file.toAbsolutePath().normalize(), folder) || isWithin(real(file), real(folder)))) {
            throw new InputException(file.getFileName() + ": lies in the output folder " + folder.getFileName()
                    + ", which would be replaced; name another folder with --out");
        }
    }

    private static boolean isWithin(Path file, Path folder) {
        return file.startsWith(folder) && !file.equals(folder);
    }

    private static Path real(Path file) {
        try {
            return file.toRealPath();
        } catch (IOException e) {
            return file.toAbsolutePath().normalize();
        }
    }

    /** Size and time of the last change, where there is one with that of its name and rights: a copy can be given an older time, but not an older one of these. */
    private static String state(Path file) {
        try {
            boolean unix = file.getFileSystem().supportedFileAttributeViews().contains("unix");
            return Files.readAttributes(file, unix ? "unix:size,lastModifiedTime,ctime" : "size,lastModifiedTime").toString();
        } catch (IOException e) {
            return "missing";
        }
    }
}
