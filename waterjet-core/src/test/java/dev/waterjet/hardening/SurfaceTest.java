package dev.waterjet.hardening;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.part.Contour;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;

/** Calls everything public with random arguments, feeding answers back as arguments of further calls. */
public class SurfaceTest {

    private static final int ROUNDS = 10;

    /**
     * Answers that are infinite by definition: degrees of freedom of a quantity that is known exactly (JCGM 100, G.4), and
     * the lag allowed where no lag breaks the tolerance; the deviation where nothing is cut; and zero over zero.
     */
    private static final Set<String> MAY_BE_INFINITE = Set.of(
            "CutFit.tailDegreesOfFreedom",
            "DeviationMap.addedSi",
            "DeviationMap.deviationSi",
            "DeviationMap.taperSi",
            "Distribution.degreesOfFreedom",
            "UncertaintyBudget.degreesOfFreedom",
            "EdgeRequirement.maximumFeedSi",
            "Estimate.degreesOfFreedom",
            "Estimate.relativeUncertainty");

    /** Longer contours are no arguments of later calls. */
    private static final int MOST_EDGES = 500;

    @Test
    void ordinaryArgumentsGetFiniteAnswersOrNamedRefusals() {
        Map<String, String> faults = new TreeMap<>();

        walk(1, 0, ROUNDS, (call, outcome) -> {
            if (!outcome.isAnswerOrRefusal()) {
                faults.putIfAbsent(name(call), call + " -> " + outcome.thrown().orElseThrow());
            } else if (isNotFinite(call, outcome) && !isPutTogether(call)) {
                faults.putIfAbsent(name(call), call + " -> " + outcome.result().orElseThrow());
            }
        });

        assertThat(String.join("\n", faults.values())).isEmpty();
    }

    @Test
    void hostileArgumentsAreRefusedByName() {
        Map<String, String> faults = new TreeMap<>();

        walk(2, 0.3, ROUNDS, (call, outcome) -> {
            if (!outcome.isAnswerOrRefusal()) {
                faults.putIfAbsent(name(call), call + " -> " + outcome.thrown().orElseThrow());
            } else if (isNotFinite(call, outcome) && !isOfMeasure(call) && !isPutTogether(call)) {
                faults.putIfAbsent(name(call), call + " -> " + outcome.result().orElseThrow());
            }
        });

        assertThat(String.join("\n", faults.values())).isEmpty();
    }

    /** A null argument ends in a NullPointerException whose message is the name of the parameter. */
    @Test
    void aNullArgumentIsNamed() {
        Map<String, String> faults = new TreeMap<>();
        Set<Executable> done = new HashSet<>();

        walk(4, 0, 2, (call, outcome) -> {
            if (outcome.thrown().isEmpty() && !isLenient(call) && done.add(call.executable())) {
                call.objects().forEach(place -> checkNull(call, place, faults));
            }
        });

        assertThat(done).isNotEmpty();
        assertThat(String.join("\n", faults.values())).isEmpty();
    }

    private static void checkNull(Surface.Call call, int place, Map<String, String> faults) {
        String name = call.executable().getParameters()[place].getName();
        Optional<Throwable> thrown = call.withNull(place).run().thrown();
        if (thrown.isEmpty()
                || !(thrown.get() instanceof NullPointerException)
                || !name.equals(thrown.get().getMessage())) {
            faults.put(name(call) + " " + name, call.executable() + ": null for " + name + " -> " + thrown);
        }
    }

    /** Equality, and checks that use names and units only for a refusal. */
    private static boolean isLenient(Surface.Call call) {
        return call.executable().getName().equals("equals")
                || call.executable().getDeclaringClass().equals(Require.class);
    }

    @Test
    void mostIsReached() {
        TreeSet<String> missed = new TreeSet<>();
        Surface.all().forEach(executable -> missed.add(executable.toGenericString()));
        int all = missed.size();

        walk(3, 0, ROUNDS, (call, outcome) -> {
            if (outcome.thrown().isEmpty()) {
                missed.remove(call.executable().toGenericString());
            }
        });

        assertThat(missed.size()).as("missed of %s: %s", all, missed).isLessThan(all * 2 / 5);
    }

    /** Conversions of plain numbers let infinity and not-a-number through, as arithmetic does. */
    private static boolean isOfMeasure(Surface.Call call) {
        return call.executable().getDeclaringClass().getPackageName().equals("dev.waterjet.measure");
    }

    /** A result put together from parts that do not belong together may have sums without an end. */
    private static boolean isPutTogether(Surface.Call call) {
        return call.executable() instanceof Constructor;
    }

    /** Methods on bare numbers check nothing: far outside, their arithmetic may overflow. */
    private static boolean isOfInnerLoop(Surface.Call call) {
        return call.executable().getName().endsWith("Si")
                && call.arguments().stream().anyMatch(Double.class::isInstance);
    }

    private static String name(Surface.Call call) {
        return call.executable().getDeclaringClass().getSimpleName() + "."
                + call.executable().getName();
    }

    private static boolean isNotFinite(Surface.Call call, Surface.Outcome outcome) {
        return outcome.result().isPresent()
                && !MAY_BE_INFINITE.contains(name(call))
                && !isOfInnerLoop(call)
                && Numbers.of(outcome.result().get()).stream().anyMatch(number -> !Double.isFinite(number));
    }

    /** Rounds of calls of everything public, each recorded by a witness; results become arguments of later calls. */
    public static void walk(
            long seed, double hostility, int rounds, BiConsumer<Surface.Call, Surface.Outcome> witness) {
        SplittableRandom random = new SplittableRandom(seed);
        Pool pool = new Pool();
        Kind.all().forEach(kind -> pool.add(kind, random));
        Values ordinary = new Values(random, pool, 0);
        Values values = hostility == 0 ? ordinary : new Values(random, pool, hostility);
        for (int round = 0; round < rounds; round++) {
            for (Executable executable : Surface.all()) {
                boolean keepsWhatItIsGiven = executable instanceof Constructor
                        || executable.getName().endsWith("Si");
                Optional<Surface.Call> call = (keepsWhatItIsGiven ? ordinary : values).call(executable);
                if (call.isPresent()) {
                    Surface.Outcome outcome = call.get().run();
                    witness.accept(call.get(), outcome);
                    outcome.result().ifPresent(result -> keep(result, pool, random));
                }
                // so that hostile rounds, too, have something to work with
                if (hostility > 0) {
                    ordinary.call(executable)
                            .ifPresent(next -> next.run().result().ifPresent(result -> keep(result, pool, random)));
                }
            }
        }
    }

    private static void keep(Object result, Pool pool, SplittableRandom random) {
        if (result instanceof Optional<?> optional) {
            optional.ifPresent(value -> keep(value, pool, random));
        } else if (result instanceof Collection<?> parts) {
            new ArrayList<>(parts).stream().limit(5).forEach(part -> keep(part, pool, random));
        } else if (result instanceof Contour contour && contour.size() > MOST_EDGES) {
            // an outline of a long predicted cut; plans of it would take the time of all else
        } else if (result != null && isFinite(result)) {
            pool.add(result, random);
        }
    }

    private static boolean isFinite(Object result) {
        List<Double> numbers = Numbers.of(result);
        return numbers.stream().allMatch(Double::isFinite);
    }
}
