package dev.waterjet.uncertainty;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.Refusals.refusal;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.DomainException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class MonteCarloTest {

    private static final UncertainInputs TWO = UncertainInputs.none()
            .with("pressure", Distribution.normal(380, 5))
            .with("bore", Distribution.uniform(0.24, 0.26));

    private static final Measurand PRODUCT = in -> in[0] * in[1] * in[1];

    @Test
    void theNumberOfThreadsChangesNoBit() {
        MonteCarlo study = MonteCarlo.of(PRODUCT, TWO).withTrials(50_001).withSeed(7);
        double[] alone = study.withThreads(1).run().results();

        for (int threads : new int[] {2, 3, 8}) {
            assertThat(study.withThreads(threads).run().results()).isEqualTo(alone);
        }
        assertThat(study.withSeed(8).withThreads(1).run().results()).isNotEqualTo(alone);
    }

    @Test
    void sharesDoNotDependOnTheNumberOfThreads() {
        SobolStudy study = SobolStudy.of(PRODUCT, TWO).withTrials(20_000);
        SobolIndices alone = study.withThreads(1).run();
        SobolIndices many = study.withThreads(5).run();

        assertThat(many.firstOrder("bore")).isEqualTo(alone.firstOrder("bore"));
        assertThat(many).isEqualTo(alone);
    }

    static List<Distribution> distributions() {
        return List.of(
                Distribution.normal(5, 2),
                Distribution.uniform(-1, 4),
                Distribution.triangular(0, 1, 5),
                Distribution.triangular(2, 2, 3),
                Distribution.arcsine(-2, 6),
                Distribution.logNormal(10, 0.02));
    }

    /** Moments of each distribution in closed form (JCGM 101, 6.4), drawn singly and by normal scores. */
    @ParameterizedTest
    @MethodSource("distributions")
    void drawsHaveTheMomentsOfTheirDistribution(Distribution distribution) {
        UncertainInputs alone = UncertainInputs.none().with("x", distribution);
        UncertainInputs correlated = alone.with("y", Distribution.normal(0, 1)).withCorrelation("x", "y", 0.6);
        double scatter = distribution.standardUncertainty() / Math.sqrt(200_000);

        for (UncertainInputs inputs : List.of(alone, correlated)) {
            MonteCarloResult drawn = MonteCarlo.of(in -> in[0], inputs).run();
            assertThat(drawn.mean()).isCloseTo(distribution.value(), within(4 * scatter + 3e-4 * drawn.mean()));
            assertThat(drawn.standardUncertainty() / distribution.standardUncertainty())
                    .isCloseTo(1, within(0.01));
        }
    }

    /** Variance of Student's distribution: u^2 nu/(nu - 2); also below two halves of a degree. */
    @Test
    void studentsDistributionIsWiderThanItsStandardUncertainty() {
        MonteCarloResult drawn = MonteCarlo.of(
                        in -> in[0], UncertainInputs.none().with("x", Distribution.student(3, 0.5, 9)))
                .run();

        assertThat(drawn.standardUncertainty()).isCloseTo(0.5 * Math.sqrt(9 / 7.0), within(0.005));
        // Cauchy's distribution: half of the draws within one scale of the middle
        MonteCarloResult cauchy = MonteCarlo.of(
                        in -> in[0], UncertainInputs.none().with("x", Distribution.student(0, 1, 1)))
                .run();
        assertThat(cauchy.lower(0.5)).isCloseTo(-1, within(0.02));
        assertThat(cauchy.upper(0.5)).isCloseTo(1, within(0.02));
    }

    /** Correlated normal inputs: the variance of a sum grows, that of a difference falls. */
    @Test
    void correlationReachesTheDraws() {
        UncertainInputs inputs = UncertainInputs.none()
                .with("a", Distribution.normal(0, 1))
                .with("b", Distribution.normal(0, 1))
                .withCorrelation("a", "b", 0.8);

        assertThat(MonteCarlo.of(in -> in[0] + in[1], inputs).run().standardUncertainty())
                .isCloseTo(Math.sqrt(3.6), within(0.01));
        assertThat(MonteCarlo.of(in -> in[0] - in[1], inputs).run().standardUncertainty())
                .isCloseTo(Math.sqrt(0.4), within(0.005));
        assertThat(MonteCarlo.of(in -> in[0] - in[1], inputs.withCorrelation("a", "b", 1))
                        .run()
                        .standardUncertainty())
                .isCloseTo(0, within(1e-7));
    }

    @Test
    void progressOnlyGrowsAndEnds() {
        List<Double> received = new ArrayList<>();
        MonteCarlo.of(PRODUCT, TWO)
                .withTrials(30_000)
                .withThreads(4)
                .withProgress(received::add)
                .run();

        assertThat(received).isSorted().hasSizeGreaterThan(5).endsWith(1.0);
    }

    @Test
    void progressIsTheShareOfTrials() {
        List<Double> received = new ArrayList<>();
        SobolStudy.of(PRODUCT, TWO)
                .withTrials(10_000)
                .withThreads(1)
                .withProgress(received::add)
                .run();

        assertThat(received).containsExactly(0.4096, 0.8192, 1.0);
    }

    @Test
    void workIsDividedIntoFullBatchesAndARest() {
        assertThat(DrawBatches.count(1)).isEqualTo(1);
        assertThat(DrawBatches.count(4096)).isEqualTo(1);
        assertThat(DrawBatches.count(4097)).isEqualTo(2);
    }

    /** The scatter of the indices over seeds is that of their standard errors. */
    @Test
    void standardErrorsAreTheScatterOfTheIndices() {
        Measurand product = in -> (1 + in[0]) * (2 + in[1]);
        UncertainInputs inputs =
                UncertainInputs.none().with("a", Distribution.normal(0, 1)).with("b", Distribution.uniform(-1, 1));
        StandardDeviation first = new StandardDeviation();
        StandardDeviation total = new StandardDeviation();
        double firstError = 0;
        double totalError = 0;
        int seeds = 100;
        for (int seed = 0; seed < seeds; seed++) {
            SobolIndices indices = SobolStudy.of(product, inputs)
                    .withTrials(2048)
                    .withSeed(seed)
                    .run();
            first.increment(indices.firstOrder("a"));
            total.increment(indices.total("a"));
            firstError += indices.standardError("a") / seeds;
            totalError += indices.totalStandardError("a") / seeds;
        }
        // variances in closed form: a alone 4, b alone 1/3, both 1/3
        assertThat(SobolStudy.of(product, inputs).run().firstOrder("a")).isCloseTo(12 / 14.0, within(0.002));
        assertThat(SobolStudy.of(product, inputs).run().total("a")).isCloseTo(13 / 14.0, within(0.002));
        assertThat(firstError / first.getResult()).isBetween(0.7, 1.8);
        assertThat(totalError / total.getResult()).isBetween(0.7, 1.8);
    }

    /** Each of two threads waits for the other on its first trial, so that neither can do all alone. */
    @Test
    void theThreadsAskedForDoTheWork() {
        Set<Thread> workers = ConcurrentHashMap.newKeySet();
        CountDownLatch both = new CountDownLatch(2);
        MonteCarlo.of(
                        in -> {
                            if (workers.add(Thread.currentThread())) {
                                both.countDown();
                                await(both);
                            }
                            return in[0];
                        },
                        TWO)
                .withTrials(40_000)
                .withThreads(2)
                .run();

        assertThat(workers).hasSize(2).contains(Thread.currentThread());
        assertThat(workers)
                .filteredOn(worker -> !worker.equals(Thread.currentThread()))
                .allSatisfy(helper -> {
                    assertThat(helper.isDaemon()).isTrue();
                    assertThat(helper.isAlive()).as("after the study").isFalse();
                });
    }

    private static void await(CountDownLatch latch) {
        try {
            assertThat(latch.await(60, TimeUnit.SECONDS))
                    .as("the other thread came")
                    .isTrue();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void trialsAndThreadsHaveLimits() {
        MonteCarlo study = MonteCarlo.of(PRODUCT, TWO);

        assertThat(study.withTrials(2).withThreads(1024).run().trials()).isEqualTo(2);
        assertRefused(() -> study.withTrials(1), "must-be-at-least", "number of trials", 2);
        assertRefused(() -> study.withTrials(100_000_001), "must-be-at-most", "number of trials", 1e8);
        assertRefused(() -> study.withThreads(0), "must-be-at-least", "number of threads", 1);
        assertRefused(() -> study.withThreads(1025), "must-be-at-most", "number of threads", 1024);
    }

    @Test
    void theFirstFailureIsTold() {
        MonteCarlo study = MonteCarlo.of(in -> in[0] > 390 ? Double.NaN : in[0], TWO);

        assertThat(refusal(DomainException.class, study.withThreads(3)::run).quantity())
                .isEqualTo("result of a trial");
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void anInterruptEndsTheStudyAndIsPassedOn(int threads) throws Exception {
        List<Boolean> interrupted = new ArrayList<>();
        Thread runner = new Thread(() -> {
            Thread.currentThread().interrupt();
            try {
                MonteCarlo.of(PRODUCT, TWO)
                        .withTrials(50_000)
                        .withThreads(threads)
                        .run();
            } catch (CancellationException e) {
                interrupted.add(Thread.currentThread().isInterrupted());
            }
        });
        runner.start();
        runner.join();

        assertThat(interrupted).containsExactly(true);
    }

    @Test
    void contradictionsAreRefused() {
        UncertainInputs three = TWO.with("flow", Distribution.normal(1, 1))
                .withCorrelation("pressure", "bore", 0.9)
                .withCorrelation("bore", "flow", 0.9);

        assertRefused(() -> MonteCarlo.of(PRODUCT, three).run(), "contradictory-correlations");
        assertThat(MonteCarlo.of(PRODUCT, three.withCorrelation("pressure", "flow", 0.9))
                        .withTrials(100)
                        .run()
                        .trials())
                .isEqualTo(100);
        assertRefused(() -> UncertaintyBudget.of(PRODUCT, three), "contradictory-correlations");
        assertRefused(() -> SobolStudy.of(PRODUCT, three), "correlated-inputs");
        assertRefused(() -> TWO.with("bore", Distribution.normal(0, 1)), "repeated-input");
        assertRefused(() -> Distribution.uniform(2, 1), "must-be-above", "upper limit", 2);
    }
}
