package dev.waterjet.docs;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A page of the documentation, with the fenced blocks it holds. */
record Page(Path file, String text, List<Block> blocks) {

    static final Path ROOT = Path.of("..").toAbsolutePath().normalize();

    /**
     * A fenced block.
     *
     * @param language word behind the fence
     * @param text what stands between the fences
     * @param line line of the opening fence, from 1
     * @param printed the block of language {@code text} that follows with nothing but blank lines between, or null
     */
    record Block(
            String language,
            String text,
            int line,
            @Nullable String printed) {}

    static Page read(Path file) {
        try {
            String text = Files.readString(file);
            return new Page(file, text, blocks(text.lines().toList()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The pages of the guides, and those at the root of the project. */
    static List<Page> all() {
        return Stream.of(ROOT, ROOT.resolve("docs"), ROOT.resolve("docs").resolve("learn"))
                .flatMap(Page::in)
                .map(Page::read)
                .toList();
    }

    /** The lessons of the course, in their order. */
    static List<Page> lessons() {
        return in(ROOT.resolve("docs").resolve("learn")).map(Page::read).toList();
    }

    private static Stream<Path> in(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".md")).sorted().toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Block> blocks(List<String> lines) {
        List<Block> blocks = new ArrayList<>();
        int previousEnd = -1;
        int start = fence(lines, 0);
        while (start < lines.size()) {
            int end = fence(lines, start + 1);
            String language = lines.get(start).substring(3).strip();
            String text = String.join("\n", lines.subList(start + 1, end));
            boolean follows = previousEnd >= 0
                    && lines.subList(previousEnd + 1, start).stream().allMatch(String::isBlank);
            if (language.equals("text") && follows) {
                Block before = blocks.remove(blocks.size() - 1);
                blocks.add(new Block(before.language(), before.text(), before.line(), text));
            } else {
                blocks.add(new Block(language, text, start + 1, null));
            }
            previousEnd = end;
            start = fence(lines, end + 1);
        }
        return blocks;
    }

    private static int fence(List<String> lines, int from) {
        int line = from;
        while (line < lines.size() && !lines.get(line).startsWith("```")) {
            line++;
        }
        return line;
    }

    List<Block> blocks(String language) {
        return blocks.stream()
                .filter(block -> block.language().equals(language))
                .toList();
    }

    @Override
    public String toString() {
        return ROOT.relativize(file).toString();
    }
}
