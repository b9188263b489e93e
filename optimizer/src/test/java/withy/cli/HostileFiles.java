package withy.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Files of hostile text in one folder, and copies of the sample lists to be spoiled. */
final class HostileFiles {
    private final Path folder;

    HostileFiles(Path folder) {
        this.folder = folder;
    }

    Path at(String name) {
        return folder.resolve(name);
    }

    Path copied(String name) throws IOException {
        Path to = Files.createDirectories(folder.resolve("shop-" + name));
        try (Stream<Path> files = Files.list(Path.of(Terminal.BENCH))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, to.resolve(file.getFileName()), StandardCopyOption.REPLACE_EXISTING);
            }
        }
        return to;
    }

    Path written(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    static void repeated(Path file, String head, String piece, long bytes) throws IOException {
        byte[] chunk = piece.repeat(10_000).getBytes(StandardCharsets.UTF_8);
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            out.write(head.getBytes(StandardCharsets.UTF_8));
            for (long written = 0; written < bytes; written += chunk.length) {
                out.write(chunk);
            }
        }
    }

    /** The named column of the first part set to a value; no cell before it holds a comma. */
    static String withCell(String text, String column, String value) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        int index = List.of(lines.get(0).split(",", -1)).indexOf(column);
        String[] cells = lines.get(1).split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1);
        if (index < 0) {
            throw new IllegalStateException("no column " + column);
        }
        cells[index] = value;
        lines.set(1, String.join(",", cells));
        return String.join("\n", lines) + "\n";
    }
}
