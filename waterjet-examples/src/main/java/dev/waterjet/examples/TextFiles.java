package dev.waterjet.examples;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Text files in UTF-8. A failure names the file in one line. */
final class TextFiles {

    private TextFiles() {}

    static String read(Path file) {
        try {
            return Files.readString(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw named(file, e);
        }
    }

    /** The bytes of a file of any kind. */
    static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw named(file, e);
        }
    }

    static void write(Path file, String text) {
        try {
            Files.writeString(file, text, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw named(file, e);
        }
    }

    /** Errors of the file system name their file; others get it. */
    private static UncheckedIOException named(Path file, IOException e) {
        return new UncheckedIOException(
                e instanceof FileSystemException ? e : new IOException(file + ": " + e.getMessage(), e));
    }
}
