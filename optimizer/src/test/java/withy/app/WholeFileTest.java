package withy.app;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
    private static final byte[] OLD = "what was there".getBytes(StandardCharsets.UTF_8);
    private static final byte[] NEW = "what is to be there, longer than before".getBytes(StandardCharsets.UTF_8);

    @TempDir
    private Path folder;

    /** A disk that takes so many bytes, and no more. */
    private static WholeFile.Opening disk(int bytes) {
        return part -> {
            OutputStream real = Files.newOutputStream(part);
            return new OutputStream() {
                private int left = bytes;

                @Override
                public void write(int b) throws IOException {
                    if (left == 0) {
                        throw new IOException("No space left on device");
                    }
                    left--;
                    real.write(b);
                }

                @Override
                public void close() throws IOException {
                    real.close();
                }
            };
        };
    }

    private List<Path> all() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }

    @Test
    void whereverTheDiskIsFullTheOldFileStaysAndNothingElse() throws IOException {
        Path file = folder.resolve("bench.pdf");
        Files.write(file, OLD);
        for (int bytes = 0; bytes < NEW.length; bytes++) {
            int room = bytes;
            assertThrows(IOException.class, () -> WholeFile.write(file, NEW, disk(room)), () -> "room for " + room);
            assertArrayEquals(OLD, Files.readAllBytes(file), () -> "room for " + room);
            assertEquals(List.of(file), all(), () -> "room for " + room);
        }
        WholeFile.write(file, NEW, disk(NEW.length));
        assertArrayEquals(NEW, Files.readAllBytes(file));
        assertEquals(List.of(file), all());
    }

    @Test
    void aNewFileIsThereWholeOrNotAtAll() throws IOException {
        Path file = folder.resolve("bench.pdf");
        assertThrows(IOException.class, () -> WholeFile.write(file, NEW, disk(7)));
        assertEquals(List.of(), all());
        WholeFile.write(file, NEW);
        assertArrayEquals(NEW, Files.readAllBytes(file));
    }

    @Test
    void aFolderIsNotWrittenOver() throws IOException {
        Path inside = Files.createDirectories(folder.resolve("bench.pdf")).resolve("kept.txt");
        Files.write(inside, OLD);
        assertThrows(IOException.class, () -> WholeFile.write(folder.resolve("bench.pdf"), NEW));
        assertArrayEquals(OLD, Files.readAllBytes(inside));
    }

    /** Linux's own full disk, {@code /dev/full}. */
    @Test
    @EnabledOnOs(OS.LINUX)
    void aFullDeviceIsTold() throws IOException {
        Path link = Files.createSymbolicLink(folder.resolve("bench.pdf"), Path.of("/dev/full"));
        IOException told = assertThrows(IOException.class, () -> WholeFile.write(link, NEW));
        assertFalse(String.valueOf(told.getMessage()).isBlank());
    }

    /** A link is followed: its file is written, the link stays. */
    @Test
    @EnabledOnOs(OS.LINUX)
    void aLinkStaysALink() throws IOException {
        Path file = folder.resolve("real.pdf");
        Files.write(file, OLD);
        Path link = Files.createSymbolicLink(folder.resolve("bench.pdf"), file);
        WholeFile.write(link, NEW);
        assertArrayEquals(NEW, Files.readAllBytes(file));
        assertEquals(file, Files.readSymbolicLink(link));
    }
}
