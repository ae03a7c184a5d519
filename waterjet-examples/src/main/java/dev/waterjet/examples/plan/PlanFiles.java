package dev.waterjet.examples.plan;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
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
     * Writes all files. Targets are checked and drafts written before the first file is moved into place; files that stood
     * there are kept until the last move has succeeded, and are put back if one fails.
     *
     * @param input a file that must stay as it is
     * @return the files that stood there before
     * @throws IOException if one cannot be written, or would replace the input
     */
    public List<Path> write(Path input) throws IOException {
        for (Path file : contents.keySet()) {
            if (Files.exists(file) && Files.exists(input) && Files.isSameFile(file, input)) {
                throw new FileAlreadyExistsException(file + ": it is the input, which stays as it is");
            }
            if (Files.isDirectory(file)) {
                throw new IOException(file + ": it is a directory");
            }
        }
        Map<Path, Path> drafts = new LinkedHashMap<>();
        Map<Path, Path> kept = new LinkedHashMap<>();
        List<Path> moved = new ArrayList<>();
        try {
            for (Map.Entry<Path, byte[]> entry : contents.entrySet()) {
                drafts.put(entry.getKey(), draft(entry.getKey(), entry.getValue()));
            }
            for (Map.Entry<Path, Path> entry : drafts.entrySet()) {
                if (Files.exists(entry.getKey())) {
                    Path old = beside(entry.getKey(), ".old");
                    move(entry.getKey(), old);
                    kept.put(entry.getKey(), old);
                }
                move(entry.getValue(), entry.getKey());
                moved.add(entry.getKey());
            }
        } catch (IOException e) {
            for (Path file : moved) {
                Files.deleteIfExists(file);
            }
            for (Map.Entry<Path, Path> entry : kept.entrySet()) {
                move(entry.getValue(), entry.getKey());
            }
            kept.clear();
            throw e;
        } finally {
            for (Path draft : drafts.values()) {
                Files.deleteIfExists(draft);
            }
            for (Path old : kept.values()) {
                Files.deleteIfExists(old);
            }
        }
        return List.copyOf(kept.keySet());
    }

    private static Path beside(Path file, String ending) {
        Path folder = Optional.ofNullable(file.toAbsolutePath().getParent()).orElse(Path.of("."));
        return folder.resolve("." + UUID.randomUUID() + ending);
    }

    /** Errors name the file that is wanted, not the draft. */
    private static Path draft(Path file, byte[] bytes) throws IOException {
        Path draft = beside(file, ".draft");
        try {
            Files.createDirectories(
                    Optional.ofNullable(file.toAbsolutePath().getParent()).orElse(Path.of(".")));
            return Files.write(draft, bytes, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        } catch (IOException e) {
            // a full disk fails after the draft was created, and without its name
            Files.deleteIfExists(draft);
            String reason = Optional.ofNullable(
                            e instanceof FileSystemException named ? named.getReason() : e.getMessage())
                    .orElse("cannot be written");
            throw new IOException(file + ": " + reason.toLowerCase(Locale.ROOT), e);
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
     * @param charset UTF-16 where its byte-order mark stands first, else UTF-8 if the bytes are valid in it, else ISO 8859-1, which
     *     takes any bytes
     */
    public record Source(String text, Charset charset) {

        /**
         * Returns a text that comes from no file.
         *
         * @param text the text
         * @return the text, in UTF-8
         */
        public static Source of(String text) {
            return new Source(text, StandardCharsets.UTF_8);
        }

        /**
         * Reads a file.
         *
         * @param file the file
         * @return its text
         * @throws IOException if it cannot be read, with the file and the reason
         */
        public static Source read(Path file) throws IOException {
            if (Files.isDirectory(file)) {
                throw new IOException(file + ": it is a directory, not a file");
            }
            byte[] bytes;
            try {
                bytes = Files.readAllBytes(file);
            } catch (NoSuchFileException e) {
                throw new IOException(file + ": file not found", e);
            }
            for (Charset charset : List.of(marked(bytes), StandardCharsets.UTF_8)) {
                String text = new String(bytes, charset);
                if (Arrays.equals(text.getBytes(charset), bytes)) {
                    return new Source(text, charset);
                }
            }
            return new Source(new String(bytes, StandardCharsets.ISO_8859_1), StandardCharsets.ISO_8859_1);
        }

        /** Character set by the byte-order mark, which stays the first character of the text; UTF-8 where there is none. */
        private static Charset marked(byte[] bytes) {
            int mark = bytes.length < 2 ? 0 : (bytes[0] & 0xff) << 8 | (bytes[1] & 0xff);
            return switch (mark) {
                case 0xfffe -> StandardCharsets.UTF_16LE;
                case 0xfeff -> StandardCharsets.UTF_16BE;
                default -> StandardCharsets.UTF_8;
            };
        }

        /** {@return the bytes of the file} */
        public byte[] bytes() {
            return text.getBytes(charset);
        }
    }
}
