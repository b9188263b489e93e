package withy.web;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.function.Function;
import java.util.stream.Stream;
import withy.app.Chooser;
import withy.app.LocalPage;
import withy.app.SearchChooser;
import withy.app.Workshop;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** A copy of a sample shop with the page open on it. */
final class ShopFolder implements AutoCloseable {
    /** A day between the samples' own dates, so that stock and lead times never change. */
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);

    final Path folder;
    private final LocalPage.Opened opened;
    private final Workshop workshop;

    ShopFolder(Path scratch, String sample) throws IOException {
        this(copied(scratch, sample));
    }

    /** Opens the page again on a folder that is there. */
    ShopFolder(Path folder) throws IOException {
        this(folder, SearchChooser::new);
    }

    /** A copy of a sample, searched otherwise. */
    ShopFolder(Path scratch, String sample, Function<Catalog, Chooser> choosers) throws IOException {
        this(copied(scratch, sample), choosers);
    }

    private ShopFolder(Path folder, Function<Catalog, Chooser> choosers) throws IOException {
        this.folder = folder;
        var catalog = CatalogReader.read(folder, DAY).catalog();
        if (catalog == null) {
            throw new IllegalStateException("the sample " + folder + " is at fault");
        }
        this.workshop = new Workshop(folder, catalog, DAY);
        this.opened = new BenchPage()
                .open(new LocalPage.Setting(() -> workshop, choosers, new QuantityText(UnitSystem.METRIC), 0));
    }

    private static Path copied(Path scratch, String sample) throws IOException {
        Path from = Path.of(System.getProperty("withy.home"), "catalog-samples", sample);
        Path to = Files.createDirectories(scratch.resolve(sample));
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
        return to;
    }

    /** The shop itself, as the page has it. */
    Workshop workshop() {
        return workshop;
    }

    /** The address that lets a browser in. */
    URI address() {
        return opened.address();
    }

    /** Address of a path. */
    String at(String path) {
        return "http://127.0.0.1:" + opened.address().getPort() + path;
    }

    @Override
    public void close() {
        opened.close();
    }
}
