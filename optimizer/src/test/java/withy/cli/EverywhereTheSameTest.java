package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.app.SearchChooser;

/** The same answer byte for byte wherever, whenever and however often it is asked. */
class EverywhereTheSameTest {
    private static final String SCENARIO = FewParts.SCENARIO;

    /** Dotless i, other digits, another calendar, comma for the decimal, right to left. */
    private static final List<String> LOCALES =
            List.of("tr-TR", "hi-IN-u-nu-deva", "th-TH-u-ca-buddhist", "de-CH", "ar-EG");

    private static final List<String> ZONES =
            List.of("Pacific/Kiritimati", "America/Adak", "Asia/Kathmandu", "UTC", "Africa/Cairo");

    private final Locale locale = Locale.getDefault();
    private final TimeZone zone = TimeZone.getDefault();

    @TempDir
    private Path folder;

    @AfterEach
    void home() {
        Locale.setDefault(locale);
        TimeZone.setDefault(zone);
    }

    private static List<List<String>> questions() {
        return List.of(
                List.of("propose", Terminal.brief(SCENARIO), "--catalog", Terminal.BENCH, "--json"),
                List.of("check", "--catalog", Terminal.BROKEN, "--json"),
                List.of("check", "--catalog", Terminal.BROKEN),
                List.of("parts", "--catalog", Terminal.BENCH, "--json"));
    }

    private static List<Terminal.Shown> answers(List<List<String>> questions) {
        List<Terminal.Shown> answers = new ArrayList<>();
        questions.forEach(question -> answers.add(new Terminal().run(question.toArray(String[]::new))));
        return answers;
    }

    @Test
    void inEveryLocaleAndTimeZone() throws IOException {
        List<List<String>> questions = new ArrayList<>(questions());
        questions.addAll(FewParts.questions(folder));
        List<Terminal.Shown> here = answers(questions);
        for (int i = 0; i < questions.size(); i++) {
            boolean broken = questions.get(i).contains(Terminal.BROKEN);
            assertEquals(
                    broken,
                    here.get(i).code() != Exit.FINE,
                    questions.get(i) + here.get(i).err());
        }
        assertEquals(here, answers(questions), "a second time");
        for (int i = 0; i < LOCALES.size(); i++) {
            Locale.setDefault(Locale.forLanguageTag(LOCALES.get(i)));
            TimeZone.setDefault(TimeZone.getTimeZone(ZONES.get(i)));
            assertEquals(here, answers(questions), LOCALES.get(i) + ", " + ZONES.get(i));
        }
    }

    /** Every command that chooses: on one processor (on four where there is one here), started anew, with another locale and character set. */
    @Test
    void onAnotherNumberOfProcessors() throws IOException, InterruptedException {
        List<List<String>> questions = FewParts.questions(folder);
        StringBuilder here = new StringBuilder();
        answers(questions).forEach(shown -> here.append(shown.out()));
        int processors = Runtime.getRuntime().availableProcessors() == 1 ? 4 : 1;
        List<String> arguments = new ArrayList<>();
        questions.forEach(question -> arguments.add(String.join("|", question)));
        assertEquals(here.toString(), elsewhere(processors, FewParts.class.getName(), arguments));
    }

    /** On one processor, with another character set and locale of the machine, and started anew. */
    @Test
    void inAnotherProcess() throws IOException, InterruptedException {
        List<String> question = questions().get(0);
        assertEquals(
                new Terminal().run(question.toArray(String[]::new)).out(),
                elsewhere(1, Main.class.getName(), question));
    }

    private String elsewhere(int processors, String main, List<String> arguments)
            throws IOException, InterruptedException {
        Path out = folder.resolve("out");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-XX:ActiveProcessorCount=" + processors,
                "-Dfile.encoding=ISO-8859-1",
                "-Duser.language=tr",
                "-Duser.timezone=Pacific/Kiritimati",
                "-Dwithy.home=" + Terminal.HOME,
                "-cp",
                HostileInputTest.places(),
                main));
        command.addAll(arguments);
        Process child = new ProcessBuilder(command)
                .redirectOutput(out.toFile())
                .redirectError(folder.resolve("err").toFile())
                .start();
        assertTrue(child.waitFor(5, TimeUnit.MINUTES));
        assertEquals(0, child.exitValue(), Files.readString(folder.resolve("err")));
        return Files.readString(out, StandardCharsets.UTF_8);
    }

    @Test
    void withAClockThatGoesBack() {
        AtomicLong back = new AtomicLong();
        String[] question = questions().get(0).toArray(String[]::new);
        Terminal.Shown shown =
                new Terminal().clock(() -> back.addAndGet(-3_000_000_000L)).run(question);
        assertEquals(new Terminal().run(question).out(), shown.out());
    }

    /** Lists are read once: what is saved while it searches is of the next answer. */
    @Test
    void whileTheListsAreEdited() throws IOException {
        ShopCommandsTest.copySample(folder);
        String[] question = {"propose", Terminal.brief(SCENARIO), "--catalog", folder.toString(), "--json"};
        Terminal.Shown before = new Terminal().run(question);
        Terminal.Shown during = new Terminal()
                .choosing(catalog -> {
                    emptied(folder.resolve("guides.csv"));
                    emptied(folder.resolve("blanks.csv"));
                    return new SearchChooser(catalog);
                })
                .run(question);
        assertEquals(before, during);
        assertNotEquals(before.code(), new Terminal().run(question).code(), "the edited lists hold nothing");
    }

    private static void emptied(Path file) {
        try {
            Files.writeString(file, "");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
