package dev.waterjet.docs;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringWriter;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/** Compiles the Java blocks of one page into one program, runs it, and returns the output of each block. */
final class JavaBlocks {

    private static final char MARK = '\u0001';

    /** Imports and methods that the guides suppose, and with which JShell starts. */
    private static final Path START = Page.ROOT.resolve("docs").resolve("start.jsh");

    private JavaBlocks() {}

    static List<String> run(List<Page.Block> blocks, Path folder, String page) throws Exception {
        String source = source(blocks);
        Path file = folder.resolve("Guide.java");
        Files.writeString(file, source);
        compile(file, folder, page, source);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PrintStream before = System.out;
        try (URLClassLoader loader =
                        new URLClassLoader(new URL[] {folder.toUri().toURL()});
                PrintStream captured = new PrintStream(bytes, true, StandardCharsets.UTF_8)) {
            System.setOut(captured);
            loader.loadClass("Guide").getMethod("main", String[].class).invoke(null, (Object) new String[0]);
        } finally {
            System.setOut(before);
        }
        String[] parts = bytes.toString(StandardCharsets.UTF_8).split(String.valueOf(MARK), -1);
        List<String> printed = new ArrayList<>(List.of(parts));
        printed.remove(0);
        return printed;
    }

    private static String source(List<Page.Block> blocks) throws IOException {
        Set<String> imports = new TreeSet<>();
        StringBuilder body = new StringBuilder();
        for (Page.Block block : blocks) {
            body.append("System.out.print('\\u0001');\n// block at line ")
                    .append(block.line())
                    .append('\n');
            for (String line : block.text().lines().toList()) {
                if (line.startsWith("import ")) {
                    imports.add(line);
                } else {
                    body.append(line).append('\n');
                }
            }
        }
        StringBuilder members = new StringBuilder();
        for (String line : Files.readAllLines(START)) {
            if (line.startsWith("import ")) {
                imports.add(line);
            } else {
                members.append(line).append('\n');
            }
        }
        return String.join("\n", imports) + "\npublic final class Guide {\n" + members
                + "public static void main(String... args) throws Exception {\nnew Guide().run();\n}\n"
                + "void run() throws Exception {\n" + body + "}\n}\n";
    }

    private static void compile(Path file, Path folder, String page, String source) throws Exception {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        StringWriter faults = new StringWriter();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, StandardCharsets.UTF_8)) {
            List<String> options = List.of(
                    "-d", folder.toString(), "-cp", System.getProperty("java.class.path"), "-nowarn", "-proc:none");
            boolean isRight = compiler.getTask(faults, files, null, options, null, files.getJavaFileObjects(file))
                    .call();
            if (!isRight) {
                throw new AssertionError("the Java of " + page + " does not compile:\n" + faults + "\n"
                        + source.lines().limit(400).collect(Collectors.joining("\n")));
            }
        }
    }
}
