package dev.waterjet.feed;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.List;
import javax.measure.Unit;

/** Input of a sweep. */
record SweepAxis(String label, Kind<?> kind, Unit<?> unit) {

    /** All inputs, the slowest first. */
    static final List<SweepAxis> ALL = List.of(
            new SweepAxis("pressure at the orifice", Kind.PRESSURE, Units.MEGAPASCAL),
            new SweepAxis("orifice bore", Kind.LENGTH, Units.MILLIMETRE),
            new SweepAxis("focusing tube bore", Kind.LENGTH, Units.MILLIMETRE),
            new SweepAxis("abrasive flow rate", Kind.MASS_FLOW, Units.GRAM_PER_MINUTE),
            new SweepAxis("thickness", Kind.LENGTH, Units.MILLIMETRE),
            new SweepAxis("quality index", Kind.RATIO, Units.ONE));

    /** Places of the inputs. */
    static final int PRESSURE = 0;

    static final int ORIFICE = 1;
    static final int TUBE = 2;
    static final int FLOW = 3;
    static final int THICKNESS = 4;
    static final int INDEX = 5;

    /** Each value above 0, an index 1 or more. */
    void require(QuantityArray<?> inputs) {
        if (!inputs.kind().equals(kind)) {
            throw new DomainException(
                    Message.of("sweep-kind", "{quantity} is given as {kind}")
                            .with("kind", inputs.kind().toString()),
                    label);
        }
        boolean isIndex = kind.equals(Kind.RATIO);
        for (int i = 0; i < inputs.size(); i++) {
            if (isIndex) {
                Settings.index(inputs.si(i));
            } else {
                Require.positive(label, inputs.si(i), unit);
            }
        }
    }
}
