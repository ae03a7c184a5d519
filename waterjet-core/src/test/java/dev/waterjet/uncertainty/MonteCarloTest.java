package dev.waterjet.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.DomainException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
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
    void sharesDoNotHangOnTheNumberOfThreads() {
        SobolStudy study = SobolStudy.of(PRODUCT, TWO).withTrials(20_000);
        SobolIndices alone = study.withThreads(1).run();
        SobolIndices many = study.withThreads(5).run();

        assertThat(many.firstOrder("bore")).isEqualTo(alone.firstOrder("bore"));
        assertThat(many.total("pressure")).isEqualTo(alone.total("pressure"));
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
        List<Long> heard = new ArrayList<>();
        MonteCarlo.of(PRODUCT, TWO)
                .withTrials(30_000)
                .withThreads(4)
                .withProgress((done, total) -> {
                    assertThat(total).isEqualTo(30_000);
                    heard.add(done);
                })
                .run();

        assertThat(heard).isSorted().hasSizeGreaterThan(5).endsWith(30_000L);
    }

    /** A share of variance takes one evaluation more than a draw for each input, and one beside. */
    @Test
    void progressCountsEvaluations() {
        List<Long> heard = new ArrayList<>();
        SobolStudy.of(PRODUCT, TWO)
                .withTrials(10_000)
                .withThreads(1)
                .withProgress((done, total) -> {
                    assertThat(total).isEqualTo(40_000);
                    heard.add(done);
                })
                .run();

        assertThat(heard).containsExactly(4 * 4096L, 4 * 8192L, 40_000L);
    }

    @Test
    void workIsCutIntoFullBlocksAndARest() {
        assertThat(Blocks.count(1)).isEqualTo(1);
        assertThat(Blocks.count(4096)).isEqualTo(1);
        assertThat(Blocks.count(4097)).isEqualTo(2);
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
        assertThatThrownBy(() -> study.withTrials(1)).hasMessage("number of trials is 1; it must be at least 2");
        assertThatThrownBy(() -> study.withTrials(100_000_001))
                .hasMessageContaining("number of trials is 100000001; it must be at most 100000000");
        assertThatThrownBy(() -> study.withThreads(0)).hasMessage("number of threads is 0; it must be at least 1");
        assertThatThrownBy(() -> study.withThreads(1025))
                .hasMessage("number of threads is 1025; it must be at most 1024");
    }

    @Test
    void theFirstFailureIsTold() {
        MonteCarlo study = MonteCarlo.of(in -> in[0] > 390 ? Double.NaN : in[0], TWO);

        assertThatThrownBy(study.withThreads(3)::run)
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("result of a trial");
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

        assertThatThrownBy(() -> MonteCarlo.of(PRODUCT, three).run())
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("correlations contradict each other");
        assertThat(MonteCarlo.of(PRODUCT, three.withCorrelation("pressure", "flow", 0.9))
                        .withTrials(100)
                        .run()
                        .trials())
                .isEqualTo(100);
        assertThatThrownBy(() -> UncertaintyBudget.of(PRODUCT, three))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("correlations contradict each other");
        assertThatThrownBy(() -> SobolStudy.of(PRODUCT, three)).hasMessageContaining("independent inputs only");
        assertThatThrownBy(() -> TWO.with("bore", Distribution.normal(0, 1)))
                .hasMessageContaining("repeated input \"bore\"");
        assertThatThrownBy(() -> Distribution.uniform(2, 1))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("upper limit is 1; it must be above 2");
    }
}
