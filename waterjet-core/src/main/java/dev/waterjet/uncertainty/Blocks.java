package dev.waterjet.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/**
 * Work in numbered blocks, shared by threads. Each block writes to separate places, so that the result does not depend on
 * the assignment of blocks to threads. If blocks fail, the failure of the first of them is thrown.
 */
final class Blocks {

    /** Draws in one block. */
    static final int SIZE = 1 << 12;

    /** Work on one block. */
    interface Task {

        /** Runs block {@code block}: draws from {@code from} up to, without, {@code to}. */
        void run(int block, int from, int to);
    }

    private final int draws;
    private final long evaluationsPerDraw;
    private final Progress progress;
    private final Task task;
    private final AtomicInteger next = new AtomicInteger();
    private final Object lock = new Object();
    private long done;
    private int failedBlock = Integer.MAX_VALUE;
    private @Nullable RuntimeException failure;

    private Blocks(int draws, long evaluationsPerDraw, Progress progress, Task task) {
        this.draws = draws;
        this.evaluationsPerDraw = evaluationsPerDraw;
        this.progress = progress;
        this.task = task;
    }

    static int count(int draws) {
        return (draws + SIZE - 1) / SIZE;
    }

    static void run(RunSettings settings, long evaluationsPerDraw, Task task) {
        new Blocks(settings.trials(), evaluationsPerDraw, settings.progress(), task)
                .run(Math.min(settings.threads(), count(settings.trials())));
    }

    private void run(int threads) {
        List<Thread> helpers = new ArrayList<>();
        for (int i = 1; i < threads; i++) {
            Thread helper = new Thread(this::work, "waterjet-draws-" + i);
            helper.setDaemon(true);
            helper.start();
            helpers.add(helper);
        }
        work();
        boolean isInterrupted = false;
        for (Thread helper : helpers) {
            while (helper.isAlive()) {
                try {
                    helper.join();
                } catch (InterruptedException e) {
                    isInterrupted = true;
                    stop(-1, new CancellationException("interrupted while drawing"));
                }
            }
        }
        if (isInterrupted) {
            Thread.currentThread().interrupt();
        }
        synchronized (lock) {
            if (failure != null) {
                throw failure;
            }
        }
    }

    private void work() {
        int count = count(draws);
        for (int block = next.getAndIncrement(); block < count; block = next.getAndIncrement()) {
            synchronized (lock) {
                if (block > failedBlock) {
                    return;
                }
            }
            int from = block * SIZE;
            int to = Math.min(draws, from + SIZE);
            if (Thread.currentThread().isInterrupted()) {
                stop(-1, new CancellationException("interrupted while drawing"));
                return;
            }
            try {
                task.run(block, from, to);
                synchronized (lock) {
                    done += (to - from) * evaluationsPerDraw;
                    progress.at(done, draws * evaluationsPerDraw);
                }
            } catch (RuntimeException e) {
                stop(block, e);
            }
        }
    }

    private void stop(int block, RuntimeException cause) {
        synchronized (lock) {
            if (block < failedBlock) {
                failedBlock = block;
                failure = cause;
            }
        }
    }
}
