package dev.waterjet.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import jdk.jshell.JShell;
import jdk.jshell.Snippet.Status;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;
import jdk.jshell.execution.LocalExecutionControlProvider;
import org.junit.jupiter.api.Test;

/** The lessons typed into JShell, line by line, as a student would. */
class ShellTest {

    @Test
    void takesEveryLesson() throws Exception {
        List<Page.Block> lessons = Page.lessons().stream()
                .flatMap(page -> page.blocks("java").stream())
                .toList();
        assertThat(lessons).hasSizeGreaterThan(20);
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        try (PrintStream out = new PrintStream(printed, true, StandardCharsets.UTF_8);
                JShell shell = JShell.builder()
                        .executionEngine(new LocalExecutionControlProvider(), null)
                        .out(out)
                        .build()) {
            PrintStream before = System.out;
            System.setOut(out);
            try {
                List<String> faults =
                        type(shell, Files.readString(Page.ROOT.resolve("docs").resolve("start.jsh")));
                for (Page.Block lesson : lessons) {
                    faults.addAll(type(shell, lesson.text()));
                }
                assertThat(faults).isEmpty();
            } finally {
                System.setOut(before);
            }
        }
        String expected = lessons.stream().map(Page.Block::printed).collect(Collectors.joining("\n"));
        assertThat(printed.toString(StandardCharsets.UTF_8)).isEqualToIgnoringWhitespace(expected);
    }

    private static List<String> type(JShell shell, String text) {
        List<String> faults = new ArrayList<>();
        String left = text;
        while (!left.isBlank()) {
            CompletionInfo typed = shell.sourceCodeAnalysis().analyzeCompletion(left);
            for (SnippetEvent event : shell.eval(typed.source() == null ? left : typed.source())) {
                if (event.status() == Status.REJECTED || event.exception() != null) {
                    faults.add(event.snippet().source());
                }
            }
            left = typed.remaining() == null ? "" : typed.remaining();
        }
        return faults;
    }
}
