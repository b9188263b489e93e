package withy.benchmarks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.catalog.Part;
import withy.catalog.sample.SampleCatalogs;

/**
 * A catalogue to measure on.
 *
 * @param parts how many parts, as the tables name it
 * @param origin where it comes from
 * @param catalog the catalogue
 */
record Shop(int parts, String origin, Catalog catalog) {
    /** Parts of the large catalogue. */
    static final int LARGE_SIZE = 20_000;

    /** Its seed. */
    static final long LARGE_SEED = 20_261_002L;

    /** Parts of the repository's generated catalogue. */
    static final int WIDE_SIZE = SampleCatalogs.WIDE_SIZE;

    /** Seed of the order of a shuffled catalogue. */
    static final long ORDER_SEED = 7;

    /** The curated catalogue. */
    static Shop bench() {
        Catalog catalog = SampleCatalogs.bench();
        return new Shop(catalog.size(), "catalog-samples/bench", catalog);
    }

    /** The repository's catalogue of 1,500 parts, read from its files. */
    static Shop wide(Path home) throws IOException {
        Path folder = home.resolve("catalog-samples").resolve("wide");
        Catalog catalog = CatalogReader.read(folder, SampleCatalogs.AS_OF).catalog();
        if (catalog == null) {
            throw new IOException(folder + " has faults.\nMaybe run: optimizer/bin/withy check " + folder);
        }
        String origin = "catalog-samples/wide (generator seed " + SampleCatalogs.WIDE_SEED + ")";
        return new Shop(catalog.size(), origin, catalog);
    }

    /** A generated one of 20,000. */
    static Shop large() {
        return generated(LARGE_SIZE);
    }

    /** A generated one of any size from 1,000, with the same seed. */
    static Shop generated(int size) {
        Catalog catalog = SampleCatalogs.generated(size, LARGE_SEED);
        return new Shop(catalog.size(), "generated (seed " + LARGE_SEED + ")", catalog);
    }

    /** The same shop with its files in another order. */
    Shop shuffled() {
        List<Part> parts = new ArrayList<>(catalog.byId().values());
        Collections.shuffle(parts, new Random(ORDER_SEED));
        return new Shop(
                this.parts,
                origin + ", shuffled (seed " + ORDER_SEED + ")",
                new Catalog(catalog.rates(), catalog.asOf(), catalog.hash(), parts));
    }
}
