package dev.waterjet.embedding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import dev.waterjet.LibraryClasses;
import dev.waterjet.ValueContract;
import java.io.Serializable;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every public type that can be serialized keeps the promises of a value, and no bytes make an impossible one. */
class SafeValuesTest {

    private static final List<Object> SAMPLES = samples();

    static List<Object> samples() {
        return SerializableSamples.all().stream().toList();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void isASafeValue(Object sample) {
        assertThatCode(() -> ValueContract.holdsFor(sample))
                .as(sample.getClass().getName())
                .doesNotThrowAnyException();
    }

    @Test
    void everySerializableTypeHasASample() {
        Set<String> missing = new TreeSet<>();
        for (Class<?> type : LibraryClasses.all()) {
            boolean isValue = Serializable.class.isAssignableFrom(type)
                    && !type.isInterface()
                    && !type.isEnum()
                    && !Throwable.class.isAssignableFrom(type);
            if (isValue) {
                missing.add(type.getName());
            }
        }
        SAMPLES.forEach(sample -> missing.remove(sample.getClass().getName()));
        assertThat(missing).as("serializable types without a sample").isEmpty();
    }
}
