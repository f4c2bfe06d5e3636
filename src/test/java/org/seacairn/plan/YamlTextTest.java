package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.seacairn.plan.PlanOnDisk.LEAST;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;

class YamlTextTest {
    @TempDir
    private Path folder;

    private PlanOnDisk disk;

    @BeforeEach
    void writeTheFilesThatPlansName() {
        disk = new PlanOnDisk(folder);
    }

    private List<String> problems(byte[] bytes) throws IOException {
        Path plan = folder.resolve("plan.yaml");
        Files.write(plan, bytes);
        return assertTimeoutPreemptively(Duration.ofSeconds(60),
                () -> assertThrows(InputException.class, () -> PlanReader.read(plan, false)).problems());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            title: a: b                 | line 1: this is not YAML (mapping values are not allowed here); check indentation, colons and quotes here and above
            title: a\\n\\tcell: 20 m    | line 2: a tab stands where spaces belong; indent with spaces
            title: a\\n cell: 20 m      | line 2: this is not YAML (mapping values are not allowed here); check indentation, colons and quotes here and above
            title: x\\nsites: {a: 1\\n\\n | line 4: this is not YAML (while parsing a flow mapping that begins in line 2, expected ',' or '}', but got <stream end>); check indentation, colons and quotes here and above
            title: "x\\ncell: 1 m       | line 2: this is not YAML (while scanning a quoted scalar that begins in line 1, found unexpected end of stream); check indentation, colons and quotes here and above
            title: *gone                | line 1: this is not YAML (found undefined alias gone); check indentation, colons and quotes here and above
            a: 1\\n---\\nb: 2           | line 2: this is not YAML (expected a single document in the stream that begins in line 1, but found another document); check indentation, colons and quotes here and above
            - title: a                  | line 1: the plan is not a block of keys; write "key: value" lines below it
            only words                  | line 1: the plan is not a block of keys; write "key: value" lines below it
            """)
    void brokenYamlNamesItsLine(String text, String expected) throws IOException {
        String plan = text.replace("\\n", "\n").replace("\\t", "\t");
        assertEquals(List.of("plan.yaml, " + expected), problems(plan.getBytes(StandardCharsets.UTF_8)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            ''                 | : the file is empty; write keys and values in it
            '\n\n'           | : the file is empty; write keys and values in it
            '# only a remark'  | : the file is empty; write keys and values in it
            '---\n'           | , line 2: the plan is empty and must be a block of keys; write "key: value" lines below it
            """)
    void emptyPlan(String text, String expected) throws IOException {
        assertEquals(List.of("plan.yaml" + expected), problems(text.replace("\\n", "\n").getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void byteOrderMarkIsLeftOut() {
        assertEquals("Marked", disk.read("\uFEFFtitle: Marked\n" + LEAST).title());
    }

    @Test
    void windowsLineEndsCountAsOneLine() {
        assertEquals("Tamarack", disk.read(("title: Tamarack\n" + LEAST).replace("\n", "\r\n")).title());
        assertEquals(List.of("plan.yaml, line 11: apart is \"1\"; write the unit, for example \"1 m\""),
                disk.problems(("title: x\n" + LEAST).replace("150 m}\n", "150 m}\r\n").replace("\n", "\r\n")
                        .replace("\r\r", "\r").replace("apart: 150 m", "apart: 1")));
    }

    @Test
    void otherEncodingsAreRefusedWithTheLineOfTheFirstBadByte() throws IOException {
        assertEquals(List.of("plan.yaml, line 2: this is not UTF-8 text; save the file as UTF-8"),
                problems("display: us\ntitle: Kabeltr\u00E4ger\n".getBytes(StandardCharsets.ISO_8859_1)));
        assertEquals(List.of("plan.yaml, line 1: this is not UTF-8 text; save the file as UTF-8"),
                problems("title: x\n".getBytes(Charset.forName("UTF-16"))));
    }

    @Test
    void charactersThatYamlForbidsNameTheirLine() throws IOException {
        assertEquals(List.of("plan.yaml, line 2: the character U+0000 is not allowed here; remove it"),
                problems("display: us\ntitle: a\u0000b\n".getBytes(StandardCharsets.UTF_8)));
        assertEquals(List.of("plan.yaml, line 9001: the character U+0007 is not allowed here; remove it"),
                problems(("# b\u00F6j\n".repeat(9000) + "title: \u0007\n").getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void muchRandomDataIsOneProblem() throws IOException {
        byte[] junk = new byte[250_000];
        new Random(20260101).nextBytes(junk);
        assertEquals(List.of("plan.yaml, line 1: this is not UTF-8 text; save the file as UTF-8"), problems(junk));
    }

    @Test
    void muchOfOneLetterIsOneShortProblem() throws IOException {
        assertEquals(List.of("plan.yaml, line 1: the plan is not a block of keys; write \"key: value\" lines below it"),
                problems("x".repeat(250_000).getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void manyBracketsAreTooDeep() throws IOException {
        String expected = "lists and blocks are nested more than 30 deep; a plan never is, check the brackets";
        assertEquals(List.of("plan.yaml, line 1: " + expected),
                problems("[".repeat(250_000).getBytes(StandardCharsets.UTF_8)));
        assertEquals(List.of("plan.yaml, line 1: " + expected),
                problems("{a: ".repeat(60_000).getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void manyKeysShowTheFirstHundredProblems() throws IOException {
        StringBuilder keys = new StringBuilder();
        for (int i = 0; i < 3_000; i++) {
            keys.append("k").append(i).append(": x\n");
        }
        List<String> found = problems(keys.toString().getBytes(StandardCharsets.UTF_8));
        assertEquals(Findings.MOST_REPORTED + 1, found.size());
        assertEquals("plan.yaml: 2904 more problems are not shown; mend these first",
                found.get(Findings.MOST_REPORTED));
    }

    @Test
    void aMegabyteOfJunkIsNotRead() throws IOException {
        assertEquals(List.of("plan.yaml: the file has 1000000 bytes and at most 262144 are read; is this the right file?"),
                problems("junk ".repeat(200_000).getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void moreThanAQuarterOfAMebibyteIsNotRead() throws IOException {
        assertEquals(List.of("plan.yaml: the file has 262145 bytes and at most 262144 are read; is this the right file?"),
                problems(new byte[(1 << 18) + 1]));
    }

    @Test
    void aBombOfAliasesIsRefused() throws IOException {
        StringBuilder bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
        for (int i = 1; i < 9; i++) {
            bomb.append("a%d: &a%d [*a%d, *a%d, *a%d, *a%d, *a%d, *a%d, *a%d, *a%d, *a%d]%n"
                    .replace("%n", "\n").replaceFirst("%d", "" + i).replaceFirst("%d", "" + i)
                    .replace("%d", "" + (i - 1)));
        }
        assertEquals(List.of("plan.yaml: this is not usable YAML (Number of aliases for non-scalar nodes exceeds the"
                + " specified max=50); write it more simply"), problems(bomb.toString().getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void aListThatHoldsItselfDoesNotHangTheReader() throws IOException {
        List<String> found = problems("keep-off: &me [*me]\nlimits: &l {depth: *l}\n".getBytes(StandardCharsets.UTF_8));
        assertTrue(found.contains("plan.yaml, line 1: item 1 of keep-off is not a block of keys;"
                + " write \"key: value\" lines below it"), () -> "found " + found);
        assertTrue(found.contains("plan.yaml, line 2: depth is not a list; write its items in brackets,"
                + " or one a line after \"- \""), () -> "found " + found);
    }
}
