package dev.waterjet.docs;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Example in the Javadoc of a public type or a package: Java in a code tag between {@code pre} tags. What is no Java stands
 * between {@code pre} tags alone.
 *
 * @param type type with its package below {@code dev.waterjet}, as in {@code jet.CuttingHead}
 * @param line line of the opening tag, from 1
 * @param code the Java, without the asterisks of the comment
 */
record JavadocExample(String type, int line, String code) {

    private static final Path SOURCES = Page.ROOT.resolve("waterjet-core/src/main/java/dev/waterjet");
    private static final Pattern BLOCK = Pattern.compile("<pre>\\{@code(.*?)}</pre>", Pattern.DOTALL);
    private static final Pattern PUBLIC = Pattern.compile("(?m)^(public |package )");

    /** Result of a line, and the comment that states it: {@code Quantity<Speed> speed = jet.speed(); // 843.5 m/s}. */
    private static final Pattern STATED =
            Pattern.compile("^(?:[\\w.]+(?:<\\w+>)? \\w+ = )?([\\w.]+\\(.*\\)); +// (-?\\d\\S*(?: [^:]+)?)(?::.*)?$");

    static List<JavadocExample> all() throws IOException {
        List<JavadocExample> found = new ArrayList<>();
        try (Stream<Path> files = Files.walk(SOURCES)) {
            for (Path file : files.filter(file -> file.toString().endsWith(".java"))
                    .sorted()
                    .toList()) {
                found.addAll(in(file));
            }
        }
        return found;
    }

    private static List<JavadocExample> in(Path file) throws IOException {
        String text = Files.readString(file);
        String name = SOURCES.relativize(file).toString().replace(".java", "").replaceAll("[/\\\\]", ".");
        boolean isPublic = name.endsWith("package-info")
                || PUBLIC.matcher(text).results().anyMatch(at -> at.group().equals("public "));
        List<JavadocExample> found = new ArrayList<>();
        Matcher block = BLOCK.matcher(text);
        while (isPublic && block.find()) {
            int line = (int) text.substring(0, block.start()).lines().count();
            found.add(new JavadocExample(
                    name, line, block.group(1).replaceAll("(?m)^ *\\* ?", "").strip()));
        }
        return found;
    }

    /** The example as a class below {@link JavadocNames}, whose method {@code run} computes it and checks the stated results. */
    String source(String className) {
        return "public final class " + className + " extends dev.waterjet.docs.JavadocNames {\n@Override\n"
                + "public void run() throws Exception {\n"
                + code.lines().map(JavadocExample::checked).collect(Collectors.joining("\n")) + "\n}\n}\n";
    }

    private static String checked(String line) {
        Matcher stated = STATED.matcher(line);
        return stated.find()
                ? line.substring(0, line.indexOf("//")) + " states(" + stated.group(1) + ", \""
                        + stated.group(2).strip() + "\");"
                : line;
    }

    @Override
    public String toString() {
        return type + ", line " + line;
    }
}
