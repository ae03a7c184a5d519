package dev.waterjet.measure;

import java.util.List;

/** Symbols of the units of a kind, for tests of other packages. */
public final class SymbolsOf {

    private SymbolsOf() {}

    /** All symbols, the SI unit's first. */
    public static List<String> kind(Kind<?> kind) {
        return UnitSymbols.symbols(kind);
    }
}
