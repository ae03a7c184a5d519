package dev.waterjet.embedding;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Method;
import java.net.URI;
import java.net.URL;
import java.net.URLClassLoader;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The library behind a class loader of its own, as in a container or a plug-in, with whatever context loader the thread has. */
class ClassLoaderTest {

    private enum Context {
        NONE,
        PLATFORM,
        HOST,
        OWN
    }

    @ParameterizedTest
    @EnumSource(Context.class)
    void worksWithAnyContextLoader(Context context) throws Exception {
        Thread thread = Thread.currentThread();
        ClassLoader before = thread.getContextClassLoader();
        try (URLClassLoader own = loader()) {
            thread.setContextClassLoader(
                    switch (context) {
                        case NONE -> null;
                        case PLATFORM -> ClassLoader.getPlatformClassLoader();
                        case HOST -> ClassLoaderTest.class.getClassLoader();
                        case OWN -> own;
                    });
            ClassLoader during = thread.getContextClassLoader();
            Method run = own.loadClass(Guest.class.getName()).getDeclaredMethod("run");
            run.setAccessible(true);

            assertThat(run.invoke(null))
                    .isEqualTo("0.25 mm; 0.25 mm; 250 µm; 1 ksi; 7.6 cm; 0.076; 293.15; wrong-kind");
            assertThat(thread.getContextClassLoader()).isSameAs(during);
        } finally {
            thread.setContextClassLoader(before);
        }
    }

    @Test
    void theGuestIsLoadedApart() throws Exception {
        try (URLClassLoader own = loader()) {
            assertThat(own.loadClass(Guest.class.getName())).isNotEqualTo(Guest.class);
            assertThat(own.loadClass("dev.waterjet.measure.Kind").getClassLoader())
                    .isSameAs(own);
        }
    }

    private static URLClassLoader loader() throws Exception {
        List<URL> places = new ArrayList<>();
        for (String name : EmbeddingTest.NEEDED) {
            places.add(place(Class.forName(name)).toURL());
        }
        places.add(place(Guest.class).toURL());
        return new URLClassLoader(places.toArray(new URL[0]), ClassLoader.getPlatformClassLoader());
    }

    private static URI place(Class<?> type) throws Exception {
        return type.getProtectionDomain().getCodeSource().getLocation().toURI();
    }
}
