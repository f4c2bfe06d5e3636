package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.cli.TinyScene.Outcome;

/** Arguments that cannot be meant: status 2, what is wrong in words, and where to look. */
class ArgumentsTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            ''                        | seacairn      | name a command: rank, infill, ring, areas, drop, review, layers
            rnk plan.yaml             | seacairn      | there is no command "rnk"; did you mean rank?
            RANK plan.yaml            | seacairn      | there is no command "RANK"; did you mean rank?
            help                      | seacairn      | there is no command "help"; name one of rank, infill, ring, areas, drop, review, layers
            -x                        | seacairn      | there is no option -x; options of a command come after its name
            --quiet rank plan.yaml    | seacairn      | there is no option --quiet; options of a command come after its name
            rank                      | seacairn rank | name a siting plan, for example: seacairn rank plan.yaml
            layers                    | seacairn layers | name a siting plan, for example: seacairn layers plan.yaml
            rank my plan.yaml         | seacairn rank | "plan.yaml" is one argument too many; a path with spaces needs quotes
            rank plan.yaml --thread 2 | seacairn rank | there is no option --thread; did you mean --threads?
            rank plan.yaml --outt o   | seacairn rank | there is no option --outt; did you mean --out?
            rank plan.yaml --threads  | seacairn rank | --threads needs a value, N
            rank plan.yaml --out      | seacairn rank | --out needs a value, DIR
            rank plan.yaml --out=     | seacairn rank | --out is empty; name a folder
            rank plan.yaml --threads 0    | seacairn rank | --threads is 0; give 1 or more
            rank plan.yaml --threads -2   | seacairn rank | --threads is -2; give 1 or more
            rank plan.yaml --threads two  | seacairn rank | --threads is "two"; give a whole number
            rank plan.yaml --threads 1e3  | seacairn rank | --threads is "1e3"; give a whole number
            rank plan.yaml --threads 99999999999 | seacairn rank | --threads is "99999999999"; give a whole number
            rank plan.yaml --quiet=no     | seacairn rank | --quiet is "no"; it takes no value
            review                        | seacairn review | name a siting plan, for example: seacairn review plan.yaml
            review plan.yaml              | seacairn review | name a proposal after the plan, for example: seacairn review plan.yaml proposal.csv
            review plan.yaml p.csv --display imperial | seacairn review | --display is "imperial"; write us or metric
            """)
    void areToldInWords(String typed, String command, String message) {
        String[] args = typed.isEmpty() ? new String[0] : typed.split(" ");
        assertEquals(new Outcome(2, "", "seacairn: " + message + "\nTry: " + command + " --help\n"), TinyScene.run(args));
    }

    @Test
    void aNameThatNoFileCanHave() {
        assertEquals("seacairn: PLAN is \"plan\0.yaml\"; no file can have that name here; check it, and that the terminal is"
                + " set to UTF-8\nTry: seacairn rank --help\n", TinyScene.run("rank", "plan\0.yaml").err());
    }

    @Test
    void aPlanThatIsAFolder(@TempDir Path folder) {
        assertEquals(new Outcome(2, "", "seacairn: " + folder.getFileName() + ": this is a folder; name a file\n"),
                TinyScene.run("rank", folder.toString()));
        Path root = folder.getRoot();
        assertEquals(new Outcome(2, "", "seacairn: " + root + ": this is the root of a file system; name a file\n"),
                TinyScene.run("rank", root.toString()));
    }

    @Test
    void helpTellsTheExitStatus() {
        Outcome help = TinyScene.run("--help");
        assertEquals("0, ", help.status() + ", " + help.err());
        assertTrue(help.out().contains("""
                Exit status:
                  0   done
                  1   done, and the answer is no
                  2   the input is at fault
                  3   Seacairn is at fault
                """), help.out());
        for (String option : List.of("--allow-outside", "--exchange", "--json", "--out=DIR", "--quiet", "--threads=N", "--trace")) {
            assertTrue(TinyScene.run("rank", "--help").out().contains(option), option);
        }
    }

    @Test
    void theVersionIsTold() {
        assertTrue(TinyScene.run("--version").out().startsWith("Seacairn "));
    }

    @Test
    void aStackTraceOnlyWhenAskedFor(@TempDir Path folder) {
        String plan = folder.resolve("plan.yaml").toString();
        assertEquals(1, TinyScene.run("rank", plan).err().lines().count());
        String traced = TinyScene.run("rank", plan, "--trace").err();
        assertTrue(traced.contains("\tat org.seacairn.plan."), traced);
        assertTrue(traced.endsWith("seacairn: plan.yaml: there is no such file; check the name and the folder\n"), traced);
    }
}
