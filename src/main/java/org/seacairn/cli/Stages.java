package org.seacairn.cli;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** How long each stage of a run took. */
final class Stages {
    private final Map<String, Double> timingsS = new LinkedHashMap<>();
    private long startNs = System.nanoTime();

    /** Ends the stage that began with the one before it, or with the run. */
    void done(String stage) {
        long now = System.nanoTime();
        timingsS.put(stage, Math.round((now - startNs) / 1e6) / 1e3);
        startNs = now;
    }

    /** Seconds to the millisecond, in the order of the stages; goes on growing with them. */
    Map<String, Double> timingsS() {
        return Collections.unmodifiableMap(timingsS);
    }
}
