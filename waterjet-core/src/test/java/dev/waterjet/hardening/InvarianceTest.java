package dev.waterjet.hardening;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.junit.jupiter.api.Test;

/** The same question gets the same answer: in any locale, in any thread, in any unit. */
class InvarianceTest {

    private static final int THREADS = 8;

    /** Calls of everything public whose receivers never change, with their answers. */
    private static List<Surface.Call> calls() {
        List<Surface.Call> calls = new ArrayList<>();
        SurfaceTest.walk(5, 0, 10, (call, outcome) -> {
            if (!call.executable().getDeclaringClass().getSimpleName().endsWith("Builder")) {
                calls.add(call);
            }
        });
        return calls;
    }

    @Test
    void inAnyLocale() {
        List<Surface.Call> calls = calls();
        List<String> expected = answers(calls);
        Locale before = Locale.getDefault();
        try {
            for (String tag : List.of("de-DE", "tr-TR", "ar-EG", "hi-IN-u-nu-deva", "fr-CH")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                assertThat(differences(expected, answers(calls))).as(tag).isEmpty();
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void inAnyThread() throws Exception {
        List<Surface.Call> calls = calls();
        List<String> expected = answers(calls);
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
        try {
            List<Future<List<String>>> running = new ArrayList<>();
            for (int i = 0; i < THREADS; i++) {
                running.add(threads.submit(() -> answers(calls)));
            }
            for (Future<List<String>> answers : running) {
                assertThat(differences(expected, answers.get())).isEmpty();
            }
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void inAnyUnit() {
        List<String> faults = new ArrayList<>();
        int compared = 0;
        for (Surface.Call call : calls()) {
            List<Object> inSi = call.arguments().stream()
                    .map(argument -> argument instanceof Quantity<?> quantity ? inSi(quantity) : argument)
                    .toList();
            if (!inSi.equals(call.arguments())) {
                Surface.Call same = new Surface.Call(call.executable(), call.receiver(), inSi);
                List<Double> expected = numbers(call);
                List<Double> answer = numbers(same);
                compared++;
                if (!areClose(expected, answer)) {
                    faults.add(call + " -> " + expected + " but in SI " + answer);
                }
            }
        }

        assertThat(compared).isGreaterThan(100);
        assertThat(String.join("\n", faults)).isEmpty();
    }

    private static Quantity<?> inSi(Quantity<?> quantity) {
        return of(Numbers.kindOf(quantity.getUnit()), quantity);
    }

    @SuppressWarnings("unchecked")
    private static <Q extends Quantity<Q>> Quantity<Q> of(Kind<Q> kind, Quantity<?> quantity) {
        return kind.of(kind.si((Quantity<Q>) quantity));
    }

    private static List<Double> numbers(Surface.Call call) {
        return call.run().result().map(Numbers::of).orElse(List.of());
    }

    private static boolean areClose(List<Double> first, List<Double> second) {
        if (first.size() != second.size()) {
            return false;
        }
        for (int i = 0; i < first.size(); i++) {
            double scale = Math.max(Math.abs(first.get(i)), Math.abs(second.get(i)));
            if (Math.abs(first.get(i) - second.get(i)) > 1e-9 * scale + 1e-12) {
                return false;
            }
        }
        return true;
    }

    private static List<String> differences(List<String> expected, List<String> answers) {
        return IntStream.range(0, expected.size())
                .filter(i -> !expected.get(i).equals(answers.get(i)))
                .mapToObj(i -> expected.get(i) + " but " + answers.get(i))
                .toList();
    }

    private static List<String> answers(List<Surface.Call> calls) {
        return calls.stream().map(InvarianceTest::answer).toList();
    }

    /** Every bit of every number in the answer, and its words; or the words of the refusal. */
    private static String answer(Surface.Call call) {
        Surface.Outcome outcome = call.run();
        if (outcome.thrown().isPresent()) {
            Throwable refusal = outcome.thrown().get();
            // the compiler at run time may throw this one without its words
            String words = refusal instanceof IndexOutOfBoundsException ? "no such index" : refusal.getMessage();
            return call.executable() + " refused: " + words;
        }
        Object result = outcome.result().orElse("nothing");
        boolean hasWords = result instanceof String
                || result instanceof List
                || result.getClass().getName().startsWith("dev.waterjet.");
        String words = hasWords ? result.toString().replaceAll("@[0-9a-f]+", "") : "";
        return call.executable() + " " + Numbers.of(result) + words;
    }
}
