package withy.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The sample catalogues as they lie in the repository. */
class SamplesTest {
    private static final Path SAMPLES = Path.of(System.getProperty("withy.home", ".."), "catalog-samples");

    @Test
    void benchReadsWithoutAnyFault() throws IOException {
        CatalogReading reading = CatalogReader.read(SAMPLES.resolve("bench"), LocalDate.of(2026, 10, 1));
        assertEquals(List.of(), reading.faults());
        assertNotNull(reading.catalog());
    }
}
