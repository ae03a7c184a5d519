package dev.waterjet.examples.plan;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Files of a plan: all are written or none. Each is first written beside its place under another name; when all exist, they
 * are moved into place one by one.
 */
public final class PlanFiles {

    private final Map<Path, byte[]> contents = new LinkedHashMap<>();

    /** Starts with no files. */
    public PlanFiles() {}

    /**
     * Adds a file.
     *
     * @param file path of the file
     * @param text content
     * @param charset character set
     * @return these files
     */
    public PlanFiles add(Path file, String text, Charset charset) {
        contents.put(file, text.getBytes(charset));
        return this;
    }

    /**
     * Writes all files.
     *
     * @param input a file that must stay as it is
     * @throws IOException if one cannot be written, or would replace the input
     */
    public void write(Path input) throws IOException {
        for (Path file : contents.keySet()) {
            if (Files.exists(file) && Files.exists(input) && Files.isSameFile(file, input)) {
                throw new FileAlreadyExistsException(file + ": it is the input, which stays as it is");
            }
        }
        Map<Path, Path> written = new LinkedHashMap<>();
        try {
            for (Map.Entry<Path, byte[]> entry : contents.entrySet()) {
                Path folder = Optional.ofNullable(
                                entry.getKey().toAbsolutePath().getParent())
                        .orElse(Path.of("."));
                Files.createDirectories(folder);
                Path draft = folder.resolve("." + UUID.randomUUID() + ".draft");
                written.put(entry.getKey(), draft);
                Files.write(draft, entry.getValue(), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            }
            for (Map.Entry<Path, Path> entry : written.entrySet()) {
                move(entry.getValue(), entry.getKey());
            }
        } finally {
            for (Path draft : written.values()) {
                Files.deleteIfExists(draft);
            }
        }
    }

    private static void move(Path draft, Path file) throws IOException {
        try {
            Files.move(draft, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /**
     * A text and the characters in which it was read, so that it can be written back byte for byte.
     *
     * @param text the text
     * @param charset UTF-8 if the bytes are valid in it, else ISO 8859-1, which takes any bytes
     */
    public record Source(String text, Charset charset) {

        /**
         * Reads a file.
         *
         * @param file the file
         * @return its text
         * @throws IOException if it cannot be read
         */
        public static Source read(Path file) throws IOException {
            byte[] bytes = Files.readAllBytes(file);
            String text = new String(bytes, StandardCharsets.UTF_8);
            return Arrays.equals(text.getBytes(StandardCharsets.UTF_8), bytes)
                    ? new Source(text, StandardCharsets.UTF_8)
                    : new Source(new String(bytes, StandardCharsets.ISO_8859_1), StandardCharsets.ISO_8859_1);
        }
    }
}
