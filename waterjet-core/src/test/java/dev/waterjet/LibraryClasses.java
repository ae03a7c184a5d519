package dev.waterjet;

import dev.waterjet.measure.Kind;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Modifier;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The public classes of the library, without those of its tests. */
public final class LibraryClasses {

    private LibraryClasses() {}

    /** Every class that a caller can name, in the order of their names. */
    public static List<Class<?>> all() {
        Path root = root();
        try (Stream<Path> files = Files.walk(root.resolve("dev"))) {
            return files.map(file -> root.relativize(file).toString())
                    .filter(name -> name.endsWith(".class") && !name.endsWith("package-info.class"))
                    .map(name -> name.substring(0, name.length() - 6)
                            .replace('/', '.')
                            .replace('\\', '.'))
                    .sorted()
                    .<Class<?>>map(LibraryClasses::load)
                    .filter(LibraryClasses::isOpen)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path root() {
        try {
            URI place = Kind.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI();
            return Path.of(place);
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Class<?> load(String name) {
        try {
            return Class.forName(name, false, LibraryClasses.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    private static boolean isOpen(Class<?> type) {
        return Modifier.isPublic(type.getModifiers())
                && !type.isSynthetic()
                && (type.getEnclosingClass() == null || isOpen(type.getEnclosingClass()));
    }
}
