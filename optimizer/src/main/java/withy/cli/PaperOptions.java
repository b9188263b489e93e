package withy.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import withy.app.Answer;
import withy.app.AnswerJson;
import withy.app.PaperAnswer;
import withy.app.WholeFile;
import withy.report.Pdf;
import withy.report.Reader;
import withy.report.Sheet;

/** Where a paper is written, and in whose forms of numbers. */
final class PaperOptions {
    @Option(
            names = "--out",
            paramLabel = "FILE",
            required = true,
            description = "Where to write; its ending tells how.")
    private String out;

    @Option(
            names = "--country",
            paramLabel = "LOCALE",
            defaultValue = "en-GB",
            description = "Forms of money, dates and decimals, such as de-DE (${DEFAULT-VALUE} unless told).")
    private String country = "en-GB";

    @Mixin
    private OutputOptions output;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    PaperOptions() {}

    OutputOptions output() {
        return output;
    }

    /** Whoever reads the paper. */
    Reader reader() {
        Locale told = Locale.forLanguageTag(country);
        if (!List.of(Locale.getAvailableLocales()).contains(told)
                || told.getCountry().isEmpty()) {
            throw new Stop(
                    Exit.USAGE,
                    "--country " + country + ": allowed is a language and a country, such as en-GB or de-DE.",
                    "Maybe the country is missing, or the two are swapped.");
        }
        return new Reader(output.units(), told);
    }

    /** Refuses a name of a file that does not tell how to write it; asked before the work is done. */
    void sound(String... endings) {
        if (Arrays.stream(endings).noneMatch(this::ends)) {
            throw new Stop(
                    Exit.USAGE,
                    "--out " + out + ": allowed is a name that ends in " + String.join(" or ", endings) + ".",
                    "Maybe add " + endings[0] + ".");
        }
    }

    boolean ends(String with) {
        return out.toLowerCase(Locale.ROOT).endsWith(with);
    }

    /** Writes a document as its name says. */
    void document(String html) {
        write(ends(".pdf") ? Pdf.of(html) : html.getBytes(StandardCharsets.UTF_8));
    }

    /** Tells what was written, and of nothing to mind. */
    void told(
            String paper,
            @Nullable Sheet sheet,
            List<String> builds,
            List<Long> jobs,
            List<String> assumed,
            PrintWriter to) {
        told(paper, sheet, builds, jobs, assumed, List.of(), to);
    }

    /**
     * Tells what was written.
     *
     * @param warnings what to mind before it is handed out
     */
    void told(
            String paper,
            @Nullable Sheet sheet,
            List<String> builds,
            List<Long> jobs,
            List<String> assumed,
            List<String> warnings,
            PrintWriter to) {
        if (output.json()) {
            String size = sheet == null ? null : sheet.name().toLowerCase(Locale.ROOT);
            Answering.print(
                    AnswerJson.write(new PaperAnswer(Answer.SCHEMA, paper, size, out, builds, jobs, assumed, warnings)),
                    to);
            return;
        }
        StringBuilder text = new StringBuilder();
        builds.forEach(build -> text.append(build).append('\n'));
        assumed.forEach(line -> text.append(line).append('\n'));
        warnings.forEach(line -> text.append(line).append('\n'));
        Answering.print(text + out, to);
    }

    /** Writes a file, or ends with what is in the way. */
    void write(byte[] bytes) {
        try {
            WholeFile.write(Path.of(out), bytes);
        } catch (InvalidPathException e) {
            throw new Stop(Exit.USAGE, "--out " + out + ": no name of a file.", "Maybe a quote is missing.");
        } catch (IOException e) {
            throw new Stop(
                    Exit.DISK,
                    "Can't write " + out + ": " + Texts.unwritten(e) + ".",
                    "Maybe its folder does not exist, the disk is full, or there is no right to write.");
        }
    }
}
