package dev.waterjet.calibrate;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Arrays;
import java.util.stream.DoubleStream;
import javax.measure.quantity.Length;

/** Checks and growth of the pairs of depth and reading that a measurement consists of. */
final class Readings {

    static final QuantityArray<Length> NONE = QuantityArray.ofSi(Kind.LENGTH);

    private Readings() {}

    static void requireDepths(QuantityArray<Length> depths, double maximumM, String reason) {
        depths.stream().forEach(depth -> Require.between("depth", depth, 0, maximumM, Units.MILLIMETRE, reason));
    }

    static void requirePairs(QuantityArray<Length> depths, QuantityArray<Length> readings, String name) {
        if (depths.size() != readings.size()) {
            throw new DomainException(
                    Message.of("unequal-readings", "{limit} depths, but {value} {readings}")
                            .with("readings", name),
                    "number of " + name,
                    readings.size(),
                    depths.size(),
                    Units.ONE);
        }
    }

    static QuantityArray<Length> append(QuantityArray<Length> array, double... more) {
        return QuantityArray.ofSi(
                Kind.LENGTH,
                DoubleStream.concat(array.stream(), Arrays.stream(more)).toArray());
    }
}
