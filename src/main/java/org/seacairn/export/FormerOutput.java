package org.seacairn.export;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.seacairn.InputException;

/**
 * Decides whether a folder may be replaced: only if it is empty, or if its {@code run.json} is
 * Seacairn's and lists every file in it. What people put beside an output is not ours to delete.
 */
final class FormerOutput {
    /** What desktops leave in every folder they show (from memory). */
    private static final Set<String> DESKTOP_FILES = Set.of(".DS_Store", "Thumbs.db", "desktop.ini");

    private FormerOutput() {}

    /** @throws InputException if the folder is there and holds something that Seacairn did not write */
    static void requireReplaceable(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        if (!Files.isDirectory(folder)) {
            throw new InputException(folder.getFileName() + ": is a file; choose a folder for the output");
        }
        try {
            List<String> present = filesIn(folder);
            if (present.isEmpty()) {
                return;
            }
            Set<String> ours = listedIn(folder.resolve(RunJson.FILE_NAME));
            if (ours.isEmpty()) {
                throw new InputException(folder.getFileName() + ": holds files and no " + RunJson.FILE_NAME
                        + " of Seacairn, so it is not a former output; empty it, or choose another output folder");
            }
            List<String> others = present.stream().filter(name -> !ours.contains(name) && !isSidecar(name, ours)).toList();
            if (!others.isEmpty()) {
                throw new InputException(folder.getFileName() + ": holds " + some(others)
                        + ", which Seacairn did not write and would delete; move that elsewhere,"
                        + " or choose another output folder");
            }
        } catch (IOException e) {
            throw OutputFile.cannotWrite(folder, e);
        }
    }

    /** Every file below a folder: sorted relative paths with forward slashes, desktop files left out. */
    static List<String> filesIn(Path folder) throws IOException {
        try (Stream<Path> walk = Files.walk(folder)) {
            return walk.filter(path -> !Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS))
                    .filter(path -> !DESKTOP_FILES.contains(path.getFileName().toString()))
                    .map(path -> folder.relativize(path).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    /** Files that programs keep beside the one they open: score.tif.aux.xml, seacairn.gpkg-wal. */
    private static boolean isSidecar(String name, Set<String> ours) {
        return ours.stream().anyMatch(our -> name.startsWith(our + ".") || name.startsWith(our + "-"));
    }

    /** The files that a run.json of Seacairn lists; empty if there is none or it is someone else's. */
    private static Set<String> listedIn(Path runJson) throws IOException {
        if (!Files.isRegularFile(runJson)) {
            return Set.of();
        }
        boolean ours = false;
        Set<String> files = new HashSet<>();
        try (JsonParser json = JsonFactory.builder().build().createParser(runJson.toFile())) {
            if (json.nextToken() != JsonToken.START_OBJECT) {
                return Set.of();
            }
            while (json.nextToken() == JsonToken.FIELD_NAME) {
                String key = json.currentName();
                json.nextToken();
                if (key.equals("program")) {
                    ours = RunJson.PROGRAM.equals(json.getValueAsString());
                } else if (key.equals("files") && json.currentToken() == JsonToken.START_ARRAY) {
                    while (json.nextToken() == JsonToken.VALUE_STRING) {
                        files.add(json.getText());
                    }
                }
                json.skipChildren();
            }
        } catch (JacksonException e) {
            return Set.of();
        }
        return ours ? files : Set.of();
    }

    private static String some(List<String> names) {
        List<String> shown = new ArrayList<>(names.subList(0, Math.min(3, names.size())));
        if (names.size() > shown.size()) {
            shown.add((names.size() - shown.size()) + " more");
        }
        return String.join(", ", shown);
    }
}
