package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.seacairn.layer.ChartFixture.attributes;
import static org.seacairn.layer.ChartFixture.control;
import static org.seacairn.layer.ChartFixture.feature;
import static org.seacairn.layer.ChartFixture.positions;
import static org.seacairn.layer.ChartFixture.vector;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.InputException;

/** Charts and updates with damage are read or refused with a message that can be used; nothing else ever happens. */
class DamagedChartsTest {
    /** Others, and more of them, by hand: {@code -Dseacairn.seed=7 -Dseacairn.draws=100000}. */
    private static final long SEED = Long.getLong("seacairn.seed", 20260211);
    private static final int DRAWS = Integer.getInteger("seacairn.draws", 2000);
    private static final String[] CLASSES = {"OBSTRN", "CBLSUB", "SBDARE", "SOUNDG"};

    @TempDir
    Path folder;

    private static byte[] update() {
        return ChartFixture.update(3, 1)
                .with(feature(11, 1, 86, 2, 3), attributes(42, "\u007f", 179, "9"))
                .with(vector(130, 1, 2, 3), control("SGCC", 1, 2, 1), positions(-6, 30))
                .with(feature(12, 2, 22, 2, 3), control("FSPC", 2, 2, 1))
                .bytes();
    }

    @Test
    void refusesAChartCutOffAnywhere() {
        byte[] whole = S57ReaderTest.trial().bytes();
        for (int length = 0; length < whole.length; length++) {
            byte[] cut = Arrays.copyOf(whole, length);
            Refusals.requireUsable(assertThrows(InputException.class, () -> new S57File(Path.of("a.000"), cut).read()));
        }
    }

    @Test
    void refusesAnUpdateCutOffAnywhere() {
        byte[] chart = S57ReaderTest.trial().bytes();
        byte[] whole = update();
        for (int length = 0; length < whole.length; length++) {
            byte[] cut = Arrays.copyOf(whole, length);
            S57Cell cell = new S57File(Path.of("a.000"), chart).read();
            Refusals.requireUsable(assertThrows(InputException.class, () -> new S57File(Path.of("a.001"), cut).applyTo(cell)));
        }
    }

    @Test
    void readsOrRefusesAnyDamageOfAChart() throws IOException {
        Files.write(folder.resolve("a.001"), update());
        damage("a.000", S57ReaderTest.trial().bytes());
    }

    @Test
    void readsOrRefusesAnyDamageOfAnUpdate() throws IOException {
        S57ReaderTest.trial().write(folder, "a.000");
        damage("a.001", update());
    }

    private void damage(String victim, byte[] whole) throws IOException {
        Random random = new Random(SEED);
        int refused = 0;
        for (int draw = 0; draw < DRAWS; draw++) {
            Files.write(folder.resolve(victim), damaged(whole, random));
            String objectClass = CLASSES[random.nextInt(CLASSES.length)];
            try {
                assertTimeout(Duration.ofSeconds(10), () -> GeometryCheck.of(VectorLayers.read(Sources.withTable(folder.resolve("a.000"), objectClass))));
            } catch (InputException e) {
                refused++;
                Refusals.requireUsable(e);
            } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
                fail("seed " + SEED + ", draw " + draw + ", in " + victim, e);
            }
        }
        assertTrue(refused > DRAWS / 2 && refused < DRAWS, refused + " of " + DRAWS + " refused");
    }

    /** Damage of one to three sorts: single bytes, digits of lengths, numbers at their limits, pieces that move or are lost. */
    private static byte[] damaged(byte[] whole, Random random) {
        byte[] bytes = whole.clone();
        for (int i = random.nextInt(3); i >= 0 && bytes.length > 8; i--) {
            int at = random.nextInt(bytes.length - 4);
            switch (random.nextInt(6)) {
                case 0 -> bytes[at] = (byte) random.nextInt(256);
                case 1 -> digit(bytes, at, random);
                case 2 -> number(bytes, at, random);
                case 3 -> bytes = moved(bytes, at, random);
                case 4 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
                default -> bytes = Arrays.copyOf(bytes, random.nextInt(8) == 0 ? at : bytes.length);
            }
        }
        return bytes;
    }

    /** The next digit from here becomes another: leaders and directories are digits. */
    private static void digit(byte[] bytes, int from, Random random) {
        for (int i = from; i < bytes.length; i++) {
            if (bytes[i] >= '0' && bytes[i] <= '9') {
                bytes[i] = (byte) ('0' + random.nextInt(10));
                return;
            }
        }
    }

    private static void number(byte[] bytes, int at, Random random) {
        int[] numbers = {0, 1, 2, 255, 65_535, Integer.MAX_VALUE, Integer.MIN_VALUE, -1};
        int number = numbers[random.nextInt(numbers.length)];
        for (int b = 0; b < 4; b++) {
            bytes[at + b] = (byte) (number >> 8 * b);
        }
    }

    /** A piece of the file written over, into or out of it, or the end of one record and the beginning of another. */
    private static byte[] moved(byte[] bytes, int at, Random random) {
        int length = Math.min(bytes.length - at, 1 + random.nextInt(60));
        byte[] piece = Arrays.copyOfRange(bytes, at, at + length);
        int to = random.nextInt(bytes.length);
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        String moved = switch (random.nextInt(3)) {
            case 0 -> text.substring(0, to) + new String(piece, StandardCharsets.ISO_8859_1) + text.substring(to);
            case 1 -> text.substring(0, at) + text.substring(at + length);
            default -> text.substring(0, to) + new String(piece, StandardCharsets.ISO_8859_1)
                    + text.substring(Math.min(text.length(), to + length));
        };
        return moved.getBytes(StandardCharsets.ISO_8859_1);
    }
}
