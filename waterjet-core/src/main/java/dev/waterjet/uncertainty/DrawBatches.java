package dev.waterjet.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;

/**
 * Work in numbered batches, shared by threads. Each batch writes to separate places, so that the result does not depend on
 * the assignment of batches to threads. If batches fail, the failure of the first of them is thrown.
 */
final class DrawBatches {

    /** Draws in one batch. */
    static final int SIZE = 1 << 12;

    /** Work on one batch. */
    interface Task {

        /** Runs batch {@code batch}: draws from {@code from} up to, without, {@code to}. */
        void run(int batch, int from, int to);
    }

    private final int draws;
    private final DoubleConsumer progress;
    private final Task task;
    private final AtomicInteger next = new AtomicInteger();
    private final Object lock = new Object();
    private long done;
    private int failedBatch = Integer.MAX_VALUE;
    private @Nullable RuntimeException failure;

    private DrawBatches(int draws, DoubleConsumer progress, Task task) {
        this.draws = draws;
        this.progress = progress;
        this.task = task;
    }

    static int count(int draws) {
        return (draws + SIZE - 1) / SIZE;
    }

    static void run(RunSettings settings, Task task) {
        new DrawBatches(settings.trials(), settings.progress(), task)
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
        for (int batch = next.getAndIncrement(); batch < count; batch = next.getAndIncrement()) {
            synchronized (lock) {
                if (batch > failedBatch) {
                    return;
                }
            }
            int from = batch * SIZE;
            int to = Math.min(draws, from + SIZE);
            if (Thread.currentThread().isInterrupted()) {
                stop(-1, new CancellationException("interrupted while drawing"));
                return;
            }
            try {
                task.run(batch, from, to);
                synchronized (lock) {
                    done += to - from;
                    progress.accept((double) done / draws);
                }
            } catch (RuntimeException e) {
                stop(batch, e);
            }
        }
    }

    private void stop(int batch, RuntimeException cause) {
        synchronized (lock) {
            if (batch < failedBatch) {
                failedBatch = batch;
                failure = cause;
            }
        }
    }
}
