package org.seacairn.layer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.seacairn.InputException;
import org.seacairn.plan.SitingPlan.LayerFile;

/** The vector formats that can be read. */
public final class VectorLayers {
    /** A new format is one line here. */
    private static final List<VectorReader> READERS = List.of(
            new GeoPackageReader(),
            new ShapefileReader(),
            new GeoJsonReader(),
            new GpxReader(),
            new KmlReader(),
            new CsvReader(),
            new FlatGeobufReader(),
            new S57Reader());

    private static final String WORKBOOK = "; of a workbook, save the sheet as CSV";

    /** Of a file that asks for more memory than there is, at whatever place. */
    static final String MEMORY = "needs more than the " + (Runtime.getRuntime().maxMemory() >> 20)
            + " MB that Java may take; give it more with -Xmx, or export a smaller part";

    private VectorLayers() {}

    /**
     * Reads a layer by the reader that its file name asks for, in any letter case; a chart also by how it begins.
     *
     * @return a layer with at least one feature
     * @throws InputException if the file is missing, unreadable, empty, damaged or of an unknown
     *     format, has no CRS and the plan states none, or holds no feature with a geometry
     */
    public static VectorLayer read(LayerFile source) {
        Path file = source.file();
        String place = "layer \"" + source.label() + "\"" + (source.line() > 0 ? " (line " + source.line() + " of the plan)" : "");
        requireExisting(file, place);
        VectorReader reader = READERS.stream().filter(r -> r.takes(file)).findFirst()
                .orElseThrow(() -> VectorReader.problem(file, place,
                        "its name is of no format that can be read; give " + formats() + WORKBOOK));
        requireContent(file, place);
        if (source.table().isPresent() && !reader.hasTables()) {
            throw VectorReader.problem(file, place, "\"" + source.table().get() + "\" is named as its table or object class, and a file of "
                    + reader.format() + " holds one layer only; leave the name out, or give the file that it is in");
        }
        VectorLayer layer = read(reader, source, place);
        if (layer.features().isEmpty()) {
            int without = layer.featuresWithoutGeometry();
            throw VectorReader.problem(file, place, "holds no feature" + (without == 0 ? "" : " with a geometry ("
                    + without + " without)") + "; give a file with features" + (source.line() > 0 ? ", or leave the layer out of the plan" : ""));
        }
        return layer;
    }

    /** What a layer consists of: its file, and those beside it that are read with it; the file alone if no reader takes it. */
    public static List<Path> files(Path file) {
        return READERS.stream().filter(r -> r.takes(file)).findFirst().map(r -> r.files(file)).orElse(List.of(file));
    }

    private static VectorLayer read(VectorReader reader, LayerFile source, String place) {
        try {
            return reader.read(source);
        } catch (OutOfMemoryError e) {
            // What was read of the file is garbage by now.
            throw VectorReader.problem(source.file(), place, MEMORY, e);
        }
    }

    static void requireExisting(Path file, String place) {
        if (!Files.exists(file)) {
            throw VectorReader.problem(file, place, "there is no such file; check its name and folder");
        }
    }

    /** That an existing file is a file, may be read, and is not empty. */
    static void requireContent(Path file, String place) {
        if (!Files.isRegularFile(file)) {
            throw VectorReader.problem(file, place, "is a folder and not a file; name the file in it");
        }
        if (!Files.isReadable(file)) {
            throw VectorReader.problem(file, place, "may not be read; check its permissions");
        }
        if (size(file) == 0) {
            throw VectorReader.problem(file, place, "is empty (0 bytes); export it again");
        }
    }

    private static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            throw VectorReader.problem(file, "the file", "cannot be read (" + e.getMessage() + "); check it", e);
        }
    }

    private static String formats() {
        return READERS.stream().map(r -> r.format() + " (" + String.join(", ", r.extensions()) + ")")
                .collect(Collectors.joining(", "));
    }
}
