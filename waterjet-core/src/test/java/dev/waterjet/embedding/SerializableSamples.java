package dev.waterjet.embedding;

import dev.waterjet.measure.Kind;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/** One instance or more of every public type that can be serialized: those of {@link Samples}, and those without a description. */
final class SerializableSamples {

    private SerializableSamples() {}

    static List<Object> all() {
        List<Object> all = new ArrayList<>();
        Samples.all().stream().filter(Serializable.class::isInstance).forEach(all::add);
        all.add(Kind.PRESSURE);
        return all;
    }
}
