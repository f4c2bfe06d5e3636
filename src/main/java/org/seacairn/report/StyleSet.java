package org.seacairn.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.seacairn.InputException;
import org.seacairn.export.OutputFile;
import org.seacairn.export.Styles;

/** The styles of a map: those bundled with the program, some of them replaced by the user's. */
public final class StyleSet {
    private static final String SUFFIX = ".sld";

    private final Map<String, LayerStyle> byLayer;
    /** The user's own files, in the order of their names. */
    private final List<Path> own;

    private StyleSet(Map<String, LayerStyle> byLayer, List<Path> own) {
        this.byLayer = Map.copyOf(byLayer);
        this.own = List.copyOf(own);
    }

    /** The styles that are bundled with the program. */
    public static StyleSet bundled() {
        Map<String, LayerStyle> styles = new HashMap<>();
        for (String file : Styles.NAMES) {
            try (InputStream in = Styles.open(file)) {
                styles.put(layer(file), LayerStyle.read(in, file));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return new StyleSet(styles, List.of());
    }

    /**
     * The styles in a folder, read at once, and the bundled ones of the layers that it has no file for.
     *
     * @throws InputException if the folder has no style of the map or one that is none, or if one of them cannot be read
     */
    public static StyleSet of(Path folder) {
        Map<String, LayerStyle> styles = new HashMap<>(bundled().byLayer);
        List<Path> files = files(folder);
        if (files.isEmpty()) {
            throw new InputException(folder.getFileName() + ": has no style (" + SUFFIX + "); name a folder with one or more of: "
                    + String.join(", ", Styles.NAMES));
        }
        for (Path file : files) {
            String name = file.getFileName().toString();
            if (!Styles.NAMES.contains(name)) {
                throw new InputException(name + ": is the style of no layer of the map; remove it, or name it one of: "
                        + String.join(", ", Styles.NAMES));
            }
            styles.put(layer(name), read(file, name));
        }
        return new StyleSet(styles, files);
    }

    /**
     * The styles in a folder, by name.
     *
     * @throws InputException if the folder cannot be listed
     */
    public static List<Path> files(Path folder) {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(file -> file.getFileName().toString().endsWith(SUFFIX)).sorted().toList();
        } catch (IOException e) {
            throw new InputException(folder.getFileName() + ": cannot be listed (" + e.getClass().getSimpleName()
                    + "); name a folder of styles that can be read", e);
        }
    }

    private static LayerStyle read(Path file, String name) {
        try (InputStream in = Files.newInputStream(file)) {
            return LayerStyle.read(in, name);
        } catch (IOException e) {
            throw new InputException(name + ": cannot be read (" + e.getMessage() + "); copy it again", e);
        }
    }

    /**
     * Copies the styles of some layers to {@code styles/} of an output folder, the user's own where there is one.
     *
     * @throws InputException if that cannot be written
     */
    public void copyTo(Path outputFolder, List<String> layers) {
        Styles.copyTo(outputFolder, layers);
        for (Path file : own) {
            String name = file.getFileName().toString();
            if (layers.contains(layer(name))) {
                OutputFile.bytes(outputFolder.resolve("styles").resolve(name), out -> Files.copy(file, out));
            }
        }
    }

    private static String layer(String file) {
        return file.substring(0, file.length() - SUFFIX.length());
    }

    /** @param layer name of a style without its ending, for example {@code sites} */
    public LayerStyle style(String layer) {
        LayerStyle style = byLayer.get(layer);
        if (style == null) {
            throw new IllegalArgumentException("no style for the layer " + layer);
        }
        return style;
    }
}
