package withy.shop;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Copies of the memory, each read through after it is written. */
public final class Backups {
    private static final String FOLDER = "backups";

    /** What copies are called that were asked for; those made before something else have its name in theirs. */
    private static final Pattern ASKED = Pattern.compile("shop-\\d{4}-\\d\\d-\\d\\d(-\\d{3,9})?\\.db");

    private Backups() {}

    /**
     * A checked copy.
     *
     * @param file where it is
     * @param bytes how large
     * @param movements lines of the ledger in it
     * @param jobs jobs in it
     * @param before where what was there before a restore is kept, or null
     */
    public record Copy(
            String file,
            long bytes,
            long movements,
            long jobs,
            @Nullable String before) {}

    /**
     * A copy that was asked for and lies beside the memory.
     *
     * @param file where it is
     * @param written when it was written
     */
    public record Kept(Path file, Instant written) {
        /** Its name in the folder of copies. */
        public String name() {
            return file.getFileName().toString();
        }

        /** What is in it, read through now. */
        public Copy readThrough() {
            return checked(file);
        }
    }

    /** The copies of a folder that were asked for, newest first. */
    public static List<Kept> kept(Path folder) {
        Path copies = folder.resolve(FOLDER);
        if (!Files.isDirectory(copies)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(copies)) {
            return files.filter(
                            file -> ASKED.matcher(file.getFileName().toString()).matches())
                    .filter(Files::isRegularFile)
                    .map(file ->
                            new Kept(file, Instant.ofEpochMilli(file.toFile().lastModified())))
                    .sorted(Comparator.comparing(Kept::written)
                            .thenComparing(Kept::name)
                            .reversed())
                    .toList();
        } catch (IOException e) {
            throw ShopFault.disk(
                    "Can't read the folder " + copies + ": " + e.getMessage() + ".",
                    "the disk is gone, or the folder is not yours to read.");
        }
    }

    /** Where the next copy of a day goes: beside the memory, numbered from the second on. */
    public static Path next(Path folder, LocalDate day) {
        Path first = folder.resolve(FOLDER).resolve("shop-" + day + ".db");
        return Files.exists(first) ? free(Shop.file(folder), day.toString(), 2) : first;
    }

    /** Writes a copy to a file that is not there yet. */
    public static Copy backup(Path folder, Path to) {
        try (Database database = Database.open(Shop.file(folder))) {
            return copy(database, to);
        }
    }

    /** A copy beside the memory, under a name that tells what it was made before. */
    static Path automatic(Database database, String why) {
        Path file = free(database.file(), why, 1);
        copy(database, file);
        return file;
    }

    /** A name for a copy beside the memory that is not taken. */
    private static Path free(Path memory, String why, int from) {
        Path folder = parent(memory).resolve(FOLDER);
        int n = from;
        Path file = folder.resolve(name(why, n));
        while (Files.exists(file)) {
            n++;
            file = folder.resolve(name(why, n));
        }
        return file;
    }

    private static String name(String why, int n) {
        return String.format(Locale.ROOT, "shop-%s-%03d.db", why, n);
    }

    private static Copy copy(Database database, Path to) {
        if (Files.exists(to)) {
            throw ShopFault.refused(
                    to + " is there already and is not written over.", "name another file, or move that one away.");
        }
        Path part = to.resolveSibling(to.getFileName() + ".part");
        try {
            Files.createDirectories(parent(to));
            Files.deleteIfExists(part);
            database.outside(sql -> sql.run("VACUUM INTO ?", part.toString()));
            try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
                channel.force(true);
            }
            Copy copy = checked(part);
            Files.move(part, to, StandardCopyOption.ATOMIC_MOVE);
            return new Copy(to.toString(), copy.bytes(), copy.movements(), copy.jobs(), null);
        } catch (IOException e) {
            throw ShopFault.disk(
                    "Can't write the back-up " + to + ": " + e.getMessage() + ".",
                    "the folder is missing, full, or not yours to write in.");
        }
    }

    /**
     * Puts a copy in the memory's place, in one transaction, after a back-up of what is there now. Where that is damaged, so that it can't be backed up,
     * its files are put aside as they are.
     */
    public static Copy restore(Path folder, Path from) {
        if (Files.isDirectory(from)) {
            throw ShopFault.disk("Can't read the back-up " + from + ": it is a folder.", "name the file in it.");
        }
        if (!Files.isRegularFile(from)) {
            throw ShopFault.disk(
                    "Can't read the back-up " + from + ": there is no such file.", "the name is mistyped.");
        }
        if (!Files.isDirectory(folder)) {
            throw ShopFault.disk(
                    "Can't put the back-up into " + folder + ": there is no such folder. Nothing was changed.",
                    "the name is mistyped; on a new disk put the folder with your lists there first.");
        }
        Copy copy = sound(folder, from);
        Path file = Shop.file(folder);
        Path before = Files.exists(file) && !sound(file) ? putAside(file) : null;
        try (Database database = Database.open(file)) {
            if (Migrations.version(database) > 0) {
                before = automatic(database, "before-restore");
            }
            String quoted = from.toString().replace("\"", "\\\"");
            database.outside(sql -> {
                sql.script("restore from \"" + quoted + "\"");
                return sql;
            });
            Migrations.upTo(database, Migrations.NEWEST);
        }
        Copy now = checked(file);
        if (now.movements() != copy.movements() || now.jobs() != copy.jobs()) {
            throw ShopFault.disk(
                    "The restored memory holds " + now.movements() + " movements, the back-up " + copy.movements()
                            + ".",
                    "another program wrote meanwhile: withy doctor tells more.");
        }
        return new Copy(
                now.file(), now.bytes(), now.movements(), now.jobs(), before == null ? null : before.toString());
    }

    /** What is in a back-up; where it can't be read, the memory is not what is at fault. */
    private static Copy sound(Path folder, Path from) {
        try {
            return checked(from);
        } catch (ShopFault fault) {
            if (fault.kind() != ShopFault.Kind.DAMAGED) {
                throw fault;
            }
            throw ShopFault.disk(
                    from + " is no back-up of a shop, or is damaged; nothing was changed.",
                    "another file was meant: back-ups lie in " + folder.resolve(FOLDER) + ".");
        }
    }

    /** False where the memory can't be copied as it is. */
    private static boolean sound(Path file) {
        try (Database database = Database.reading(file)) {
            Migrations.refuseNewer(database);
            return Doctor.faults(database).isEmpty();
        } catch (ShopFault fault) {
            if (fault.kind() != ShopFault.Kind.DAMAGED) {
                throw fault;
            }
            return false;
        }
    }

    /** Moves the memory's files away, unread. */
    private static Path putAside(Path file) {
        Path aside = free(file, "damaged", 1);
        try {
            Files.createDirectories(parent(aside));
            for (String beside : List.of("-wal", "-shm", "-journal", "")) {
                Path one = Path.of(file + beside);
                if (Files.exists(one)) {
                    Files.move(one, Path.of(aside + beside));
                }
            }
            return aside;
        } catch (IOException e) {
            throw ShopFault.disk(
                    "Can't put the damaged " + file + " aside: " + e.getMessage() + ".",
                    "the disk is full, or the folder is not yours to write in.");
        }
    }

    private static Copy checked(Path file) {
        try (Database copy = Database.reading(file)) {
            Migrations.refuseNewer(copy);
            List<String> faults = Doctor.faults(copy);
            if (!faults.isEmpty()) {
                throw ShopFault.refused(
                        file + " is not sound: " + faults.get(0), "an older back-up is; try the one before.");
            }
            boolean jobs = Migrations.version(copy) >= 2;
            return copy.read(sql -> new Copy(
                    file.toString(),
                    Files.exists(file) ? file.toFile().length() : 0,
                    sql.number("SELECT count(*) FROM movement"),
                    jobs ? sql.number("SELECT count(*) FROM job") : 0,
                    null));
        }
    }

    private static Path parent(Path file) {
        Path parent = file.toAbsolutePath().getParent();
        return parent == null ? file : parent;
    }
}
