package org.seacairn.layer;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.seacairn.InputException;
import org.seacairn.plan.SitingPlan.LayerFile;

/** Reads one vector format. Implementations hold no state and may be shared by threads. */
interface VectorReader {
    /** The format's name, for messages. */
    String format();

    /** What a file's name ends with, dot included, in lower case. */
    List<String> extensions();

    /** Whether this reader takes the file, judged by its name. */
    default boolean takes(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return extensions().stream().anyMatch(name::endsWith);
    }

    /** Whether a file of the format holds several layers, of which a plan names one. */
    default boolean hasTables() {
        return false;
    }

    /** The file, and those beside it that are there and read with it. */
    default List<Path> files(Path file) {
        return List.of(file);
    }

    /**
     * Reads every feature of a file that exists and is not empty.
     *
     * @return the layer, which has no feature if no record has a geometry
     * @throws InputException if the file is damaged, or has no CRS and the plan states none
     */
    VectorLayer read(LayerFile source);

    /** The error for one place in a file. */
    static InputException problem(Path file, String place, String whatAndRemedy) {
        return problem(file, place, whatAndRemedy, null);
    }

    /** As {@link #problem(Path, String, String)}, with what led to it. */
    static InputException problem(Path file, String place, String whatAndRemedy, Throwable cause) {
        // The words of the file system and of libraries hold the whole path, which is nobody else's business, and names in a file
        // may hold the end of a line.
        String name = file.getFileName().toString();
        String problem = place + ": " + whatAndRemedy.replace(file.toString(), name);
        return new InputException(name + ", " + problem.replaceAll("[\\s\\p{Cntrl}]+", " "), cause);
    }
}
