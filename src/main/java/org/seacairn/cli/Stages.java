package org.seacairn.cli;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.seacairn.Progress;

/** The stages of a run, one after the other: announces each and takes its time. */
final class Stages {
    private final Map<String, Double> timingsS = new LinkedHashMap<>();
    private final Progress progress;
    private String current;
    private long startNs = System.nanoTime();

    /** @param first the stage that the run begins with */
    Stages(Progress progress, String first) {
        this.progress = progress;
        this.current = first;
        progress.stage(first);
    }

    /** Ends the present stage and begins the next. */
    void next(String stage) {
        end();
        current = stage;
        progress.stage(stage);
    }

    /** Ends the present stage, the last. */
    void end() {
        long now = System.nanoTime();
        timingsS.put(current, Math.round((now - startNs) / 1e6) / 1e3);
        startNs = now;
    }

    /** Seconds to the millisecond, in the order of the stages; goes on growing with them. */
    Map<String, Double> timingsS() {
        return Collections.unmodifiableMap(timingsS);
    }
}
