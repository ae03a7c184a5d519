package dev.waterjet.docs;

import java.util.function.Supplier;

/**
 * A figure of the guides.
 *
 * @param name name of its file in {@code docs/figures}, without ending
 * @param svg draws it
 */
public record Figure(String name, Supplier<String> svg) {}
