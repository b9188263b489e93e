package withy.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import withy.app.Workshop;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.catalog.CatalogReading;
import withy.catalog.Fault;
import withy.units.Dates;
import withy.units.UnitsFault;

/** Which catalogue, on which day. */
final class CatalogOptions {
    static final String VARIABLE = "WITHY_CATALOG";

    @Option(
            names = "--catalog",
            paramLabel = "DIR",
            description = "Folder of the shop's price and stock lists; else the one named by " + VARIABLE + ".")
    private @Nullable String catalog;

    @Option(
            names = "--date",
            paramLabel = "DATE",
            description = "Day stock and lead times are counted from, such as 2026-05-31; else today.")
    private @Nullable String date;

    /** The folder told in this order: an argument, the option, the environment. */
    Path folder(@Nullable String argument, Surroundings surroundings) {
        String told = argument != null ? argument : catalog;
        String name = told != null ? told : surroundings.environment().get(VARIABLE);
        if (name == null || name.isEmpty()) {
            throw new Stop(
                    Exit.USAGE,
                    "No catalogue is named.",
                    "Maybe add --catalog DIR, or set " + VARIABLE + "; withy demo brings its own.");
        }
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new Stop(Exit.USAGE, "--catalog " + name + ": no name of a folder.", "Maybe a quote is missing.");
        }
    }

    LocalDate day(Surroundings surroundings) {
        if (date == null) {
            return surroundings.today().get();
        }
        try {
            return Dates.date(date);
        } catch (UnitsFault e) {
            throw new Stop(Exit.USAGE, "--date " + date + ": allowed is " + e.allowed() + ".", e.maybe());
        }
    }

    /** The catalogue, or the end with every fault. */
    Catalog read(Path folder, Surroundings surroundings, PrintWriter err) {
        CatalogReading reading = reading(folder, surroundings);
        Catalog catalog = reading.catalog();
        if (catalog == null || !reading.faults().isEmpty()) {
            throw new Stop(
                    Exit.BAD_DATA, reading.faults().stream().map(Fault::message).toList());
        }
        if (!reading.warnings().isEmpty()) {
            err.println("The catalogue holds " + reading.warnings().size()
                    + " things hard to believe; withy check lists them.");
        }
        return catalog;
    }

    /** The folder with its lists and its memory, or the end with every fault. */
    Workshop workshop(Surroundings surroundings, PrintWriter err) {
        return workshop(null, surroundings, err);
    }

    Workshop workshop(@Nullable String argument, Surroundings surroundings, PrintWriter err) {
        Path folder = folder(argument, surroundings);
        return new Workshop(folder, read(folder, surroundings, err), day(surroundings));
    }

    CatalogReading reading(Path folder, Surroundings surroundings) {
        try {
            return CatalogReader.read(folder, day(surroundings));
        } catch (IOException e) {
            throw Texts.unreadable("the catalogue " + folder, e);
        }
    }
}
