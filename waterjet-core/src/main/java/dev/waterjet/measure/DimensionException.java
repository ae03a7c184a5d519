package dev.waterjet.measure;

import javax.measure.Unit;

/** A unit of one dimension stood where another dimension is needed, as a metre for a mass flow. */
public final class DimensionException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    DimensionException(Kind<?> kind, Unit<?> unit) {
        super(message(kind, unit));
    }

    DimensionException(Kind<?> kind, Unit<?> unit, Throwable cause) {
        super(message(kind, unit), cause);
    }

    private static Message message(Kind<?> kind, Unit<?> unit) {
        return Message.of("wrong-kind", "a {kind} cannot be given in \"{unit}\"; its SI unit is {si_unit}")
                .with("kind", kind.name())
                .with("unit", String.valueOf(unit))
                .with("si_unit", Units.symbol(kind.siUnit()));
    }
}
