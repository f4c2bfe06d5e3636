package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seacairn.InputException;
import org.seacairn.plan.SitingPlan;

/**
 * Files of every format with random damage, also in what lies beside them, are read or refused with a message that can be used, within
 * ten seconds; nothing else ever happens. More with {@code -Dseacairn.damaged.draws=20000}; others with {@code -Dseacairn.damaged.seed=}; in less
 * memory with {@code -Dseacairn.test.heap=256m}.
 */
class DamagedFilesTest {
    private static final long SEED = Long.getLong("seacairn.damaged.seed", 20260117);
    private static final int DRAWS = Integer.getInteger("seacairn.damaged.draws", 150);
    private static final long MOST_SECONDS = 10;

    @TempDir
    Path folder;

    private int refused;

    @ParameterizedTest
    @EnumSource
    void damaged(AnyFormat format) throws IOException, InterruptedException {
        Path file = format.write(folder);
        SitingPlan plan = format == AnyFormat.SOUNDINGS ? AnyFormat.soundingsPlan(file) : null;
        Refused.openDataSet();
        AnyFormat.read(file);
        Random random = new Random(SEED);
        // Its thread is given up with the test where a reading does not end.
        ExecutorService reading = Executors.newSingleThreadExecutor(task -> {
            Thread thread = new Thread(task);
            thread.setDaemon(true);
            return thread;
        });
        for (int draw = 0; draw < DRAWS; draw++) {
            Path victim = folder.resolve(format.files.get(random.nextInt(format.files.size())));
            byte[] whole = Files.readAllBytes(victim);
            Files.write(victim, Damage.done(whole, random));
            String what = format + ", seed " + SEED + ", draw " + draw + ", in " + victim.getFileName();
            try {
                reading.submit(() -> read(file, plan)).get(MOST_SECONDS, TimeUnit.SECONDS);
            } catch (TimeoutException e) {
                fail(what + " takes more than " + MOST_SECONDS + " s", e);
            } catch (ExecutionException e) {
                fail(what, e.getCause());
            }
            Files.write(victim, whole);
        }
        reading.shutdown();
        assertTrue(refused > DRAWS / 10, format + ": only " + refused + " refused, so the damage does no harm and tests nothing");
    }

    private void read(Path file, SitingPlan plan) {
        try {
            if (plan != null) {
                AnyFormat.readGrid(Bathymetries.open(plan));
            } else if (file.toString().endsWith(".000")) {
                AnyFormat.read(file);
            } else if (AnyFormat.isGrid(file)) {
                AnyFormat.readGrid(Bathymetries.open(Sources.plain(file)));
            } else {
                VectorLayer layer = VectorLayers.read(Sources.plain(file));
                GeometryCheck.of(GeometryRepair.asPlanned(Sources.repaired(file), layer).layer());
            }
        } catch (InputException e) {
            refused++;
            Refusals.requireUsable(e);
        }
    }
}
