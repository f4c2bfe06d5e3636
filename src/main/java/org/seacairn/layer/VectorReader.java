package org.seacairn.layer;

import java.nio.file.Path;
import org.seacairn.plan.SitingPlan.LayerFile;

/** Reads one vector format. Implementations hold no state and may be shared by threads. */
interface VectorReader {
    /** The format's name, for messages. */
    String format();

    /** Whether this reader takes the file, judged by its name. */
    boolean takes(Path file);

    /**
     * Reads every feature.
     *
     * @throws org.seacairn.InputException if the file is missing, damaged, has no CRS (and the plan
     *     states none) or holds no feature with a geometry
     */
    VectorLayer read(LayerFile source);
}
