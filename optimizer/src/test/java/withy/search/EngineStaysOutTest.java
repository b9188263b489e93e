package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.File;
import java.lang.reflect.InvocationTargetException;
import java.net.URL;
import java.net.URLClassLoader;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import withy.objectives.Solver.Watch;
import withy.rules.Rulebook;

/** A proven answer needs nothing of the engine: it comes where the engine is not there at all. */
class EngineStaysOutTest {

    /** Asks a question; the other class loader finds this class by its name. */
    public static final class Asked {
        private Asked() {}

        public static boolean proven(long seed) {
            SmallShop shop = SmallShop.of(seed);
            return new Search(shop.catalog())
                    .solve(shop.query(Rulebook.standard()), Watch.NONE)
                    .proven();
        }

        public static String engine() throws ClassNotFoundException {
            return Class.forName("ai.timefold.solver.core.api.solver.SolverFactory")
                    .getName();
        }
    }

    @Test
    void aProvenAnswerComesWithoutTheEngine() throws Exception {
        try (URLClassLoader without = new URLClassLoader(withoutEngine(), ClassLoader.getPlatformClassLoader())) {
            Class<?> asked = without.loadClass(Asked.class.getName());
            assertEquals(true, asked.getMethod("proven", long.class).invoke(null, 4L));
            var engine = asked.getMethod("engine");
            assertThrows(InvocationTargetException.class, () -> engine.invoke(null));
        }
    }

    private static URL[] withoutEngine() throws Exception {
        List<URL> urls = new ArrayList<>();
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator, -1)) {
            if (!entry.contains("timefold")) {
                urls.add(new File(entry).toURI().toURL());
            }
        }
        return urls.toArray(URL[]::new);
    }
}
