package org.seacairn.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** A command in a process of its own, and what it leaves beside its output folder. */
final class RunProcess {
    private RunProcess() {}

    /** @param log takes what the process prints */
    static Process start(List<String> args, Path log) throws IOException {
        ProcessBuilder run = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1", "-Xshare:auto", "-cp", System.getProperty("java.class.path"), Seacairn.class.getName());
        run.command().addAll(args);
        return run.redirectErrorStream(true).redirectOutput(log.toFile()).start();
    }

    /** What stands beside an output folder under one of our own names. */
    static List<String> leftBeside(Path out) throws IOException {
        try (Stream<Path> beside = Files.list(out.getParent())) {
            return beside.map(path -> path.getFileName().toString()).filter(name -> name.contains(".seacairn-")).sorted().toList();
        }
    }

    /** The folder in which a run that is under way writes its files, once it is there. */
    static boolean isWriting(Path out, String file) throws IOException {
        for (String name : leftBeside(out)) {
            if (name.contains("seacairn-tmp-") && Files.exists(out.resolveSibling(name).resolve(file))) {
                return true;
            }
        }
        return false;
    }

    /** Every file of an output; run.json, which holds timings, only by its name. */
    static Map<String, String> output(Path folder) {
        Map<String, String> files = new TreeMap<>(TinyScene.bytes(folder));
        files.computeIfPresent("run.json", (name, text) -> "");
        return files;
    }

    /** Puts a copy of a folder in the place of another. */
    static void restore(Path from, Path to) throws IOException {
        delete(to);
        try (Stream<Path> walk = Files.walk(from)) {
            walk.forEach(path -> {
                try {
                    Files.copy(path, to.resolve(from.relativize(path).toString()), StandardCopyOption.COPY_ATTRIBUTES);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
    }

    private static void delete(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path visited, IOException failure) throws IOException {
                Files.delete(visited);
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
