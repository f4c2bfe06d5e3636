package org.seacairn.cli;

import org.seacairn.score.ScoreRun;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.seacairn.InputException;

class AsideTest {
    @Test
    void aFailureIsPassedOnOnlyWhenAllHaveStopped() {
        CountDownLatch failed = new CountDownLatch(1);
        AtomicBoolean stopped = new AtomicBoolean();
        try (Aside aside = new Aside(2)) {
            InputException first = assertThrows(InputException.class, () -> aside.all(
                    () -> {
                        failed.countDown();
                        throw new InputException("first");
                    },
                    () -> {
                        awaitAndLinger(failed);
                        stopped.set(true);
                        throw new InputException("second");
                    }));
            assertEquals("first", first.getMessage());
            assertTrue(stopped.get(), "the second was still at work");
        }
    }

    private static void awaitAndLinger(CountDownLatch failed) {
        try {
            assertTrue(failed.await(10, TimeUnit.SECONDS));
            TimeUnit.MILLISECONDS.sleep(50);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void resultsAndFailuresComeAsTheyAre() {
        try (Aside aside = new Aside(1)) {
            assertEquals(7, ScoreRun.result(aside.begin(() -> 7)));
            Error error = new StackOverflowError();
            assertEquals(error, assertThrows(StackOverflowError.class, () -> ScoreRun.result(aside.begin(() -> {
                throw error;
            }))));
        }
    }
}
