package dev.waterjet.embedding;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import javax.measure.MetricPrefix;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import tech.units.indriya.quantity.Quantities;

/** A program that {@link ClassLoaderTest} runs behind a class loader of its own: it uses every door to the unit library. */
final class Guest {

    private Guest() {}

    static String run() {
        Quantity<Length> bore = Measures.millimetres(0.25);
        Quantity<Length> foreign = Quantities.getQuantity(7.6, MetricPrefix.CENTI(Units.METRE));
        return String.join(
                "; ",
                bore.toString(),
                QuantityText.print(bore),
                QuantityText.print(Kind.LENGTH, bore, Units.MICROMETRE, 4),
                Measures.ksi(1).toString(),
                foreign.toString(),
                Double.toString(Kind.LENGTH.si(foreign)),
                Double.toString(Kind.TEMPERATURE.si(Measures.celsius(20))),
                refused());
    }

    @SuppressWarnings({"unchecked", "rawtypes"})
    private static String refused() {
        try {
            return Double.toString(Kind.LENGTH.si((Quantity<Length>) (Quantity) Measures.seconds(1)));
        } catch (DomainException e) {
            return e.code();
        }
    }
}
