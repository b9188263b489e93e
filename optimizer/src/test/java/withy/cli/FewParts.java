package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** A shop that has only what the proposals for one brief are made of, with two jobs: every question on it takes a moment. */
public final class FewParts {
    static final String SCENARIO = "brook-trout-cork";

    private FewParts() {}

    /** In a process of its own: each argument is a command line, its words apart by |; their answers one after another as UTF-8. */
    public static void main(String[] args) {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        for (String line : args) {
            out.print(new Terminal().run(line.split("\\|", -1)).out());
        }
    }

    /** Fills a folder with the shop and gives questions to it: proposals, why not a blank of the second, lighter, the plan; each once as JSON. */
    static List<List<String>> questions(Path folder) throws IOException {
        String brief = Terminal.brief(SCENARIO);
        Terminal.Shown shown = new Terminal().run("propose", brief, "--catalog", Terminal.BENCH, "--json");
        assertEquals(Exit.FINE, shown.code(), shown.err());
        lists(folder, shown.out());
        String shop = folder.toString();
        for (int i = 0; i < 2; i++) {
            Terminal.Shown job = new Terminal().run("job", "--new", brief, "--catalog", shop);
            assertEquals(Exit.FINE, job.code(), job.err());
        }
        String other = other(shown.json());
        return List.of(
                List.of("propose", brief, "--catalog", shop, "--json"),
                List.of("propose", brief, "--catalog", shop),
                List.of("whynot", brief, other, "--catalog", shop, "--json"),
                List.of("whynot", brief, other, "--catalog", shop),
                List.of("lighter", brief, "--catalog", shop, "--json"),
                List.of("lighter", brief, "--catalog", shop),
                List.of("plan", "--catalog", shop, "--json"),
                List.of("plan", "--catalog", shop));
    }

    /** A part of the last proposal that the first does without. */
    private static String other(JsonNode answer) {
        JsonNode proposals = answer.path("builds");
        String first = proposals.get(0).toString();
        return proposals.get(proposals.size() - 1).findValuesAsText("part").stream()
                .filter(id -> !first.contains('"' + id + '"'))
                .findFirst()
                .orElseThrow();
    }

    private static void lists(Path folder, String answer) throws IOException {
        ShopCommandsTest.copySample(folder);
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".csv")).toList()) {
                List<String> rows = Files.readAllLines(file);
                Files.write(
                        file,
                        Stream.concat(
                                        rows.stream().limit(1),
                                        rows.stream()
                                                .skip(1)
                                                .filter(row -> answer.contains('"' + row.split(",", 2)[0] + '"')))
                                .toList());
            }
        }
    }
}
