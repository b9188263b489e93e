package withy.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import withy.catalog.TextFile;

/** Texts given by name, {@code -} for standard input. */
final class Texts {
    private static final String STANDARD_INPUT = "-";

    /** Far above any brief or build; what is longer is another file. */
    private static final int MOST_BYTES = 1 << 20;

    private Texts() {}

    static String read(String name, String what, Surroundings surroundings) {
        try {
            byte[] bytes = name.equals(STANDARD_INPUT) ? typed(surroundings, what) : bytes(Path.of(name), what);
            return TextFile.decode(bytes);
        } catch (InvalidPathException e) {
            throw new Stop(Exit.USAGE, what + " " + name + ": no name of a file.", "Maybe a quote is missing.");
        } catch (IOException e) {
            throw unreadable(what + " " + name, e);
        }
    }

    private static byte[] typed(Surroundings surroundings, String what) throws IOException {
        byte[] bytes = surroundings.in().readNBytes(MOST_BYTES + 1);
        if (bytes.length > MOST_BYTES) {
            throw new Stop(
                    Exit.BAD_DATA,
                    what + ": more than " + MOST_BYTES + " bytes on standard input, the most that is allowed.",
                    "Maybe another file was given.");
        }
        return bytes;
    }

    private static byte[] bytes(Path file, String what) throws IOException {
        if (Files.isDirectory(file)) {
            throw new Stop(
                    Exit.DISK, "Can't read " + what + " " + file + ": it is a folder.", "Maybe name the file in it.");
        }
        long size = Files.size(file);
        if (size > MOST_BYTES) {
            throw new Stop(
                    Exit.BAD_DATA,
                    what + " " + file + ": " + size + " bytes; allowed are at most " + MOST_BYTES + ".",
                    "Maybe another file was given.");
        }
        return Files.readAllBytes(file);
    }

    /** Why a file can't be written, in words. */
    static String unwritten(IOException e) {
        if (e instanceof NoSuchFileException) {
            return "its folder is not there";
        }
        if (e instanceof FileAlreadyExistsException) {
            return "a file lies where a folder should be";
        }
        if (e instanceof AccessDeniedException) {
            return "no right to write there";
        }
        String told = e instanceof FileSystemException at ? at.getReason() : e.getMessage();
        return told == null ? e.getClass().getSimpleName() : told;
    }

    static Stop unreadable(String what, IOException e) {
        if (e instanceof NoSuchFileException) {
            return new Stop(
                    Exit.DISK, "Can't read " + what + ": there is no such file.", "Maybe the name is mistyped.");
        }
        if (e instanceof AccessDeniedException) {
            return new Stop(
                    Exit.DISK, "Can't read " + what + ": no right to.", "Maybe another user owns it; see ls -l.");
        }
        String said = String.valueOf(e.getMessage()).toLowerCase(Locale.ROOT);
        if (said.equals("is a directory")) {
            return new Stop(Exit.DISK, "Can't read " + what + ": it is a folder.", "Maybe name the file in it.");
        }
        String why = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
        return new Stop(Exit.DISK, "Can't read " + what + ": " + why + ".", "Maybe the disk or its mount is at fault.");
    }
}
