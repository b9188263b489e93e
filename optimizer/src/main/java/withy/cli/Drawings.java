package withy.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import withy.app.BendAnswer;
import withy.app.WholeFile;
import withy.report.Picture;
import withy.report.Pictures;
import withy.units.QuantityText;

/** Writes pictures as files, and one page with all of them. */
final class Drawings {
    private static final String XML = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

    private Drawings() {}

    static void write(String name, BendAnswer answer, QuantityText units, PrintWriter err) {
        List<Picture> all = Pictures.of(answer.machine(), units);
        try {
            Path folder = Path.of(name);
            Files.createDirectories(folder);
            for (Picture picture : all) {
                write(folder.resolve(picture.key() + ".svg"), XML + picture.svg());
            }
            Path page = folder.resolve("pictures.html");
            write(page, Pictures.page(answer.name(), all));
            err.println("Pictures: " + page);
        } catch (InvalidPathException e) {
            throw new Stop(Exit.USAGE, "--pictures " + name + ": no name of a folder.", "Maybe a quote is missing.");
        } catch (IOException e) {
            throw new Stop(
                    Exit.DISK,
                    "Can't write pictures to " + name + ": " + Texts.unwritten(e) + ".",
                    "Maybe a file of that name stands there, the disk is full, or there is no right to write.");
        }
    }

    private static void write(Path file, String text) throws IOException {
        WholeFile.write(file, text.getBytes(StandardCharsets.UTF_8));
    }
}
