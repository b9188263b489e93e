package withy.app;

import java.io.IOException;
import java.net.URI;
import java.util.function.Function;
import java.util.function.Supplier;
import withy.catalog.Catalog;
import withy.units.QuantityText;

/** The shop's work in a browser on this machine. The one that is there is found as a service, so that the command need not know it. */
public interface LocalPage {

    /**
     * Begins to answer; throws where the port can't be had.
     *
     * @param setting what it works with
     */
    Opened open(Setting setting) throws IOException;

    /**
     * What a page works with.
     *
     * @param workshop the shop as it is now, asked at every request
     * @param choosers what searches a catalogue
     * @param units the reader's units
     * @param port port on the loopback interface, or 0 for any that is free
     */
    record Setting(Supplier<Workshop> workshop, Function<Catalog, Chooser> choosers, QuantityText units, int port) {}

    /** A page that answers until it is closed. */
    interface Opened extends AutoCloseable {
        /** Where to begin, with the key that lets this browser in. */
        URI address();

        /** Works out in the background what is usually asked first, so that it comes at once. */
        void prepare();

        @Override
        void close();
    }
}
