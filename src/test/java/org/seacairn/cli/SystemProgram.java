package org.seacairn.cli;

import java.io.IOException;
import java.util.concurrent.TimeUnit;

/** Runs a system program that a test may have no right to. */
final class SystemProgram {
    private static final int LONGEST_S = 10;

    private SystemProgram() {}

    /** Whether it was done. */
    static boolean done(String... command) throws InterruptedException {
        try {
            Process process = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
            if (process.waitFor(LONGEST_S, TimeUnit.SECONDS)) {
                return process.exitValue() == 0;
            }
            process.destroyForcibly();
            return false;
        } catch (IOException e) {
            return false;
        }
    }
}
