package withy.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Stream;
import withy.app.Workshop;

/** The shop's lists, read again once a file of theirs was written; lists at fault leave the ones before in place until they are mended. */
final class FreshLists implements Supplier<Workshop> {
    private final Supplier<Workshop> reader;
    private final Supplier<LocalDate> today;
    private Workshop last;
    private TreeMap<String, Long> seen;

    FreshLists(Workshop first, Supplier<Workshop> reader, Supplier<LocalDate> today) {
        this.reader = reader;
        this.today = today;
        this.last = first;
        this.seen = written(first.folder());
    }

    @Override
    public synchronized Workshop get() {
        TreeMap<String, Long> now = written(last.folder());
        if (!now.equals(seen) || !last.day().equals(today.get())) {
            seen = now;
            try {
                last = reader.get();
            } catch (Stop atFault) {
                last = new Workshop(last.folder(), last.lists(), today.get());
            }
        }
        return last;
    }

    /** Lists by name, with the moment each was written, ms. */
    private static TreeMap<String, Long> written(Path folder) {
        TreeMap<String, Long> written = new TreeMap<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                String name = file.getFileName().toString();
                if (name.endsWith(".csv") || name.equals("rates.json")) {
                    written.put(name, Files.getLastModifiedTime(file).toMillis());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return written;
    }
}
