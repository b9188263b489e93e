package withy.app;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/**
 * Writes a file whole or not at all: beside its place first, then into it. Where the disk is full or the program is stopped, what was there stays
 * as it was.
 */
public final class WholeFile {
    private WholeFile() {}

    /** Opens what is written to. */
    @FunctionalInterface
    interface Opening {
        OutputStream at(Path part) throws IOException;
    }

    /** Writes bytes to a file, over one that is there; a pipe or a device is written to as it is. */
    public static void write(Path file, byte[] bytes) throws IOException {
        write(file, bytes, Files::newOutputStream);
    }

    static void write(Path file, byte[] bytes, Opening opening) throws IOException {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            Files.write(file, bytes);
            return;
        }
        Path place = Files.exists(file) ? file.toRealPath() : file;
        Path part = place.resolveSibling(place.getFileName() + "-"
                + ProcessHandle.current().pid() + "-" + Thread.currentThread().getId() + ".part");
        try {
            try (OutputStream out = opening.at(part)) {
                out.write(bytes);
            }
            Files.move(part, place, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException | RuntimeException e) {
            cleared(part, e);
            throw e;
        }
    }

    private static void cleared(Path part, Exception why) {
        try {
            Files.deleteIfExists(part);
        } catch (IOException e) {
            why.addSuppressed(e);
        }
    }
}
