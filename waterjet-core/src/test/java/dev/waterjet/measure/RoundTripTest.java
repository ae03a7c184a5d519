package dev.waterjet.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import tech.units.indriya.quantity.Quantities;

@SuppressWarnings("ReferenceEquality")
class RoundTripTest {

    @Provide
    Arbitrary<Kind<?>> kinds() {
        return Arbitraries.of(Kind.all());
    }

    @Property(tries = 500)
    void whatIsPrintedIsReadBack(
            @ForAll("kinds") Kind<?> kind, @ForAll @DoubleRange(min = -1e100, max = 1e100) @Scale(15) double value) {
        for (String symbol : symbolsOf(kind)) {
            readBack(kind, symbol, value);
        }
    }

    private static List<String> symbolsOf(Kind<?> kind) {
        return kind == Kind.RATIO ? List.of("", "%") : UnitSymbols.symbols(kind);
    }

    private static <Q extends Quantity<Q>> void readBack(Kind<Q> kind, String symbol, double value) {
        Unit<Q> unit = QuantityText.parseUnit(kind, symbol);
        Quantity<Q> read = kind.parse(QuantityText.print(Quantities.getQuantity(value, unit)));

        assertThat(read.getValue().doubleValue()).isEqualTo(value);
        assertThat(read.getUnit()).isSameAs(unit);
    }

    @Property(tries = 500)
    void siRoundTripsWithinAnUlpOrTwo(
            @ForAll("kinds") Kind<?> kind, @ForAll @DoubleRange(min = 1e-9, max = 1e9) @Scale(12) double value) {
        for (String symbol : symbolsOf(kind)) {
            roundTrip(kind, symbol, value);
        }
    }

    private static <Q extends Quantity<Q>> void roundTrip(Kind<Q> kind, String symbol, double value) {
        dev.waterjet.measure.Scale<Q> scale = dev.waterjet.measure.Scale.of(kind, QuantityText.parseUnit(kind, symbol));
        double back = scale.fromSi(scale.toSi(value));
        double offsetError = Math.abs(scale.toSi(0)) * 4e-16 / scale.differenceToSi(1);

        assertThat(Math.abs(back - value)).as(symbol).isLessThanOrEqualTo(2 * Math.ulp(value) + offsetError);
    }

    @Property(tries = 25)
    void kindsAndArraysSurviveSerialisation(@ForAll("kinds") Kind<?> kind) throws Exception {
        assertThat(copy(kind)).isSameAs(kind);
        QuantityArray<?> array = QuantityArray.ofSi(kind, 1, 2.5);
        assertThat(copy(array)).isEqualTo(array);
    }

    private static Object copy(Object original) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(original);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return in.readObject();
        }
    }
}
