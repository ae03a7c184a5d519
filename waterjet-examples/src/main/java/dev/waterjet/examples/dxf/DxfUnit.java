package dev.waterjet.examples.dxf;

import java.util.Optional;

/** Units of the header variable {@code $INSUNITS}. */
final class DxfUnit {

    private static final double INCH_M = 0.0254;

    private DxfUnit() {}

    /** Length of a unit in m; empty for "no unit" and codes that are no workshop unit. */
    static Optional<Double> metres(int code) {
        return switch (code) {
            case 1 -> Optional.of(INCH_M);
            case 2 -> Optional.of(12 * INCH_M);
            case 4 -> Optional.of(1e-3);
            case 5 -> Optional.of(1e-2);
            case 6 -> Optional.of(1.0);
            case 8 -> Optional.of(1e-6 * INCH_M);
            case 9 -> Optional.of(1e-3 * INCH_M);
            case 10 -> Optional.of(36 * INCH_M);
            case 12 -> Optional.of(1e-9);
            case 13 -> Optional.of(1e-6);
            case 14 -> Optional.of(0.1);
            default -> Optional.empty();
        };
    }
}
