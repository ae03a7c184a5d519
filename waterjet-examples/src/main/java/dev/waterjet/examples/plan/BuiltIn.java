package dev.waterjet.examples.plan;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The part that is planned when no file is given: a bracket of the mirror cell, from the workshop on Hollow Ridge. */
public final class BuiltIn {

    /** Name of the built-in part. */
    public static final String NAME = "mirror-cell-bracket";

    private BuiltIn() {}

    /** The program of the part. */
    public static String program() {
        try (InputStream stream = BuiltIn.class.getResourceAsStream(NAME + ".nc")) {
            if (stream == null) {
                throw new IllegalStateException(NAME + ".nc is missing from the jar");
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
