package withy.benchmarks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run writes its page over the old one, but not over what a person wrote there. */
class ByHandTest {
    @TempDir
    Path folder;

    @Test
    void whatAPersonWroteIsKept() throws IOException {
        Path page = folder.resolve("README.md");
        assertTrue(ByHand.of(page).endsWith("Not written yet.\n"));
        Files.writeString(page, "# Benchmarks\n\nfigures\n");
        assertTrue(ByHand.of(page).endsWith("Not written yet.\n"));
        String written = ByHand.HEAD + "\n\nRank 1: 60 % of the time is bounds.\n\n## A part of it\n";
        Files.writeString(page, "# Benchmarks\n\nfigures\n\n" + written);
        assertEquals(written, ByHand.of(page));
    }
}
