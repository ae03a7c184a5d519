package dev.waterjet.docs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNoException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.waterjet.measure.Measures;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.Diagnostic;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Compiles and runs the examples of the Javadoc. An example sees the packages of the library and the names of {@link
 * JavadocNames}; a comment that begins with a number states the result of its line.
 */
class JavadocExamplesTest {

    /** Where a reader of the Javadoc begins: each opens with an example. */
    private static final List<String> ENTRIES = List.of(
            "calibrate.Calibration",
            "calibrate.ShopFit",
            "circuit.Circuit",
            "cost.Batch",
            "cost.CuttingCost",
            "evidence.Estimate",
            "evidence.Evidence",
            "feed.CutConditions",
            "feed.FeedModel",
            "feed.MachinabilityFeed",
            "fit.LeastSquares",
            "head.HeadSelector",
            "hydraulics.PumpSetting",
            "hydraulics.WaterJet",
            "jet.AbrasiveJet",
            "jet.CuttingHead",
            "kerf.KerfModel",
            "kerf.LagModel",
            "material.Materials",
            "material.Workpiece",
            "measure.Kind",
            "measure.QuantityText",
            "motion.FeedPlanner",
            "motion.MachineLimits",
            "part.Contour",
            "part.Part",
            "pierce.PierceSelector",
            "placement.PartLocator",
            "plan.PartPlan",
            "plan.PartPlanner",
            "plan.Setup",
            "program.PartProgram",
            "program.ProgramChecks",
            "program.ProgramWriter",
            "quality.CutQuality",
            "quality.EdgeRequirement",
            "sheet.SheetFill",
            "simulate.CutSimulator",
            "surface.SurfaceModel",
            "toolpath.KerfOffset",
            "toolpath.LeadPlacer",
            "uncertainty.MonteCarlo",
            "uncertainty.UncertainInputs",
            "vessel.ThickTube",
            "water.Water");

    @TestFactory
    Stream<DynamicTest> examplesRunAndStateTheirResults(@TempDir Path folder) throws Exception {
        List<JavadocExample> examples = JavadocExample.all();
        compile(examples, folder);
        // the loader must outlive the tests, which run after this method
        URLClassLoader loader = new URLClassLoader(
                new URL[] {folder.toUri().toURL()}, getClass().getClassLoader());
        return examples.stream()
                .map(example -> DynamicTest.dynamicTest(example.toString(), () -> {
                    Class<?> type = loader.loadClass(name(examples.indexOf(example)));
                    JavadocNames program =
                            (JavadocNames) type.getDeclaredConstructor().newInstance();
                    PrintStream before = System.out;
                    System.setOut(new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8));
                    try {
                        program.run();
                    } finally {
                        System.setOut(before);
                    }
                }))
                .onClose(() -> close(loader));
    }

    @Test
    void everyPackageAndEntryOpensWithAnExample() throws IOException {
        Set<String> having =
                JavadocExample.all().stream().map(JavadocExample::type).collect(Collectors.toSet());
        Set<String> required = new TreeSet<>(ENTRIES);
        try (Stream<Path> packages = Files.list(Page.ROOT.resolve("waterjet-core/src/main/java/dev/waterjet"))) {
            packages.filter(Files::isDirectory).forEach(at -> required.add(at.getFileName() + ".package-info"));
        }
        assertThat(having).hasSizeGreaterThan(90).containsAll(required);
    }

    @Test
    void aWrongResultIsFound() throws IOException {
        String stating = "double x = Kind.PRESSURE.si(p);  // 3.8e8";
        assertThat(new JavadocExample("measure.Kind", 1, stating).source("One"))
                .contains("states(Kind.PRESSURE.si(p), \"3.8e8\");");
        assertThatNoException().isThrownBy(() -> JavadocNames.states(3.84e8, "3.8e8"));
        assertThatThrownBy(() -> JavadocNames.states(3.86e8, "3.8e8")).isInstanceOf(AssertionError.class);
        assertThatNoException().isThrownBy(() -> JavadocNames.states(Measures.celsius(10.54), "10.5 °C"));
        assertThatThrownBy(() -> JavadocNames.states(Measures.celsius(10.56), "10.5 °C"))
                .isInstanceOf(AssertionError.class);
        long stated = JavadocExample.all().stream()
                .filter(example -> example.source("One").contains(" states("))
                .count();
        assertThat(stated).isGreaterThan(6);
    }

    private static String name(int i) {
        return "Example" + i;
    }

    private static void compile(List<JavadocExample> examples, Path folder) throws IOException {
        List<Path> sources = new ArrayList<>();
        String imports = imports();
        for (int i = 0; i < examples.size(); i++) {
            Path file = folder.resolve(name(i) + ".java");
            Files.writeString(file, imports + examples.get(i).source(name(i)));
            sources.add(file);
        }
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        DiagnosticCollector<JavaFileObject> faults = new DiagnosticCollector<>();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, StandardCharsets.UTF_8)) {
            List<String> options = List.of(
                    "-d",
                    folder.toString(),
                    "-cp",
                    System.getProperty("java.class.path"),
                    "-nowarn",
                    "-proc:none",
                    "-Xmaxerrs",
                    "1000");
            compiler.getTask(
                            new StringWriter(),
                            files,
                            faults,
                            options,
                            null,
                            files.getJavaFileObjectsFromPaths(sources))
                    .call();
        }
        List<String> errors = faults.getDiagnostics().stream()
                .filter(fault -> fault.getSource() != null)
                .filter(fault -> fault.getKind() == Diagnostic.Kind.ERROR)
                .map(fault -> {
                    int i = sources.indexOf(Path.of(fault.getSource().toUri()));
                    return examples.get(i) + ": " + fault.getMessage(Locale.ROOT);
                })
                .toList();
        assertThat(errors).as("examples that do not compile").isEmpty();
    }

    private static String imports() throws IOException {
        return Files.readAllLines(Page.ROOT.resolve("docs/start.jsh")).stream()
                        .filter(line -> line.startsWith("import "))
                        .collect(Collectors.joining("\n"))
                + "\n";
    }

    private static void close(URLClassLoader loader) {
        try {
            loader.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
