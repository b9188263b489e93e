package withy.cli;

import java.io.InputStream;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import withy.app.Chooser;
import withy.app.SearchChooser;
import withy.catalog.Catalog;

/**
 * What the command line takes from outside itself.
 *
 * @param in standard input, for a brief given as {@code -}
 * @param environment variables by name
 * @param home folder that holds {@code catalog-samples} and {@code scenarios}
 * @param today the day stock is counted from where no date is given
 * @param interrupted true once the user wants it to stop
 * @param nanos a clock that only goes forward, ns
 * @param choosers what searches a catalogue
 */
record Surroundings(
        InputStream in,
        Map<String, String> environment,
        Path home,
        Supplier<LocalDate> today,
        BooleanSupplier interrupted,
        LongSupplier nanos,
        Function<Catalog, Chooser> choosers) {

    /** The machine's own. */
    static Surroundings ofMachine(BooleanSupplier interrupted) {
        return new Surroundings(
                System.in,
                System.getenv(),
                homeOfProgram(),
                LocalDate::now,
                interrupted,
                System::nanoTime,
                SearchChooser::new);
    }

    /** Where the start script says it is, else three folders above the jar ({@code optimizer/target}). */
    private static Path homeOfProgram() {
        String told = System.getProperty("withy.home");
        if (told != null && !told.isEmpty()) {
            return Path.of(told);
        }
        try {
            Path jar = Path.of(Main.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
            Path folder = jar;
            for (int up = 0; up < 3 && folder.getParent() != null; up++) {
                folder = folder.getParent();
            }
            return folder;
        } catch (URISyntaxException e) {
            throw new IllegalStateException("the program's own place can't be told", e);
        }
    }
}
