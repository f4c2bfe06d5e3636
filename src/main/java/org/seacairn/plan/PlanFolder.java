package org.seacairn.plan;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Finds the files that a plan names, relative to the plan's own folder, and keeps a plan that came
 * from someone else from reading what lies outside it.
 */
final class PlanFolder {
    private final Path folder;
    private final boolean allowOutside;

    /** @throws IOException if the plan's folder cannot be resolved */
    PlanFolder(Path planFile, boolean allowOutside) throws IOException {
        this.folder = planFile.toAbsolutePath().normalize().getParent().toRealPath();
        this.allowOutside = allowOutside;
    }

    /** The absolute path of an existing file, or empty after a problem was noted. */
    Optional<Path> file(Value value) {
        String text = value.text();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String met = value.name() + " is " + Shown.quoted(text);
        try {
            // The normalised path is both what is checked and what is used, so that no ".." behind
            // a symbolic link can lead elsewhere. It keeps the link's name: readers go by it.
            Path path = folder.resolve(text).normalize();
            boolean absolute = Path.of(text).isAbsolute();
            if (!allowOutside && (absolute || !path.startsWith(folder))) {
                value.problem(outside(met));
            } else if (!Files.exists(path)) {
                value.problem(met + ", and there is no such file; " + remedy(text));
            } else if (!allowOutside && !path.toRealPath().startsWith(folder)) {
                value.problem(outside(met + ", a link,"));
            } else if (Files.isDirectory(path)) {
                value.problem(met + ", which is a folder; name a file");
            } else if (!Files.isRegularFile(path) || !Files.isReadable(path)) {
                value.problem(met + ", which cannot be read; check its kind and its permissions");
            } else {
                return Optional.of(path);
            }
        } catch (InvalidPathException e) {
            value.problem(met + ", which is not a file name (" + e.getReason() + "); check it");
        } catch (IOException e) {
            value.problem(met + ", which cannot be resolved (" + e.getClass().getSimpleName() + "); check its permissions");
        }
        return Optional.empty();
    }

    private static String remedy(String text) {
        if (text.matches("[A-Za-z][A-Za-z0-9+.-]+:/.*")) {
            return "nothing is fetched from an address; put the file into the plan's folder and write its name";
        }
        return text.contains("\\") ? "write / and not \\ between folders, in paths that start from the plan's folder"
                : "check the name (paths start from the plan's folder)";
    }

    private static String outside(String met) {
        return met + " and leads out of the plan's folder; move the file there, or run with --allow-outside";
    }
}
