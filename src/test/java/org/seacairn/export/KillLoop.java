package org.seacairn.export;

import java.io.IOException;
import java.nio.file.Path;
import org.seacairn.InputException;

/** A process that replaces one output folder again and again, until it is killed. */
final class KillLoop {
    private KillLoop() {}

    static Process start(Path target) throws IOException {
        return new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xshare:auto", "-XX:TieredStopAtLevel=1",
                "-cp", System.getProperty("java.class.path"), KillLoop.class.getName(), target.toString())
                .redirectErrorStream(true)
                .start();
    }

    public static void main(String[] args) throws IOException {
        try {
            for (int i = 0;; i++) {
                try (OutputFolder output = OutputFolder.stage(Path.of(args[0]))) {
                    OutputFolderTest.fill(output.path(), ProcessHandle.current().pid() + "-" + i);
                    output.commit();
                }
                if (i == 0) {
                    System.out.println("ready");
                }
            }
        } catch (InputException e) {
            System.out.print("InputException: " + e.getMessage() + "\n");
        }
    }
}
