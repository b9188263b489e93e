package withy.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A child process with little memory that is given every bomb and every hostile text there is for each input, and tells what came of it. */
final class Hostile {
    private static final String DEEP = "[".repeat(100_000);
    private static final String ESCAPE = "\u001b[2J\u202e\u0000\u009b31m\r";

    private final HostileFiles files;
    private final Map<String, List<String>> cases = new TreeMap<>();
    private final Map<String, String> typed = new TreeMap<>();

    private Hostile(Path folder) {
        this.files = new HostileFiles(folder);
    }

    /** Prints a line a case: name, exit code, whether it tells a way out, whether it stays free of what steers a terminal, first words. */
    public static void main(String[] args) throws IOException {
        Hostile hostile = new Hostile(Path.of(args[0]));
        hostile.briefs();
        hostile.numbers();
        hostile.catalogs();
        new HostileWorkbooks(hostile.files, hostile.cases).all();
        hostile.buildsAndReadings();
        hostile.commandLines();
        for (Map.Entry<String, List<String>> each : hostile.cases.entrySet()) {
            Terminal terminal = new Terminal();
            terminal.typing(hostile.typed.getOrDefault(each.getKey(), ""));
            Terminal.Shown shown = terminal.run(each.getValue().toArray(String[]::new));
            String all = shown.out() + shown.err();
            boolean plain = all.chars().allMatch(c -> PlainWriter.harmless((char) c));
            String first =
                    all.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
            System.out.println(String.join(
                    "\t",
                    each.getKey(),
                    "" + shown.code(),
                    "" + all.contains("Maybe "),
                    "" + plain,
                    first.substring(0, Math.min(150, first.length()))));
        }
    }

    private void briefs() throws IOException {
        Map<String, String> texts = new TreeMap<>();
        texts.put("deep", "{\"handle\": " + DEEP);
        texts.put("deep-objects", "{\"a\":".repeat(50_000));
        texts.put("long-word", "{\"name\": \"" + "x".repeat(900_000) + "\"}");
        texts.put("long-number", "{\"dragKg\": " + "9".repeat(900_000) + "}");
        texts.put("huge", "{\"dragKg\": 1e308}");
        texts.put("beyond-huge", "{\"dragKg\": 1e999999999}");
        texts.put("tiny", "{\"dragKg\": 1e-999999999}");
        texts.put("nan", "{\"dragKg\": NaN}");
        texts.put("negative", "{\"dragKg\": -2, \"lengthMm\": {\"min\": -5, \"max\": 0}}");
        texts.put("many-keys", "{" + "\"k\": 1, ".repeat(80_000) + "\"z\": 1}");
        texts.put("many-wishes", "{\"insisted\": [" + "\"a\", ".repeat(100_000) + "\"b\"]}");
        texts.put("steering", "{\"name\": \"\\u001b[2J\\u202e\", \"customer\": \"\\u0000\"}");
        texts.put("steering-key", "{\"" + "\\u001b[31m\\u202e" + "\": 1}");
        texts.put("path-in-id", "{\"insisted\": [\"../../etc/passwd\"]}");
        texts.put("typed-bomb", "{\"drag\": \"1e999999999 kg\"}");
        texts.put("typed-long", "{\"drag\": \"" + "1".repeat(3000) + " kg\"}");
        texts.put("fraction-by-nothing", "{\"length\": \"7/0 in\"}");
        texts.put("nul", "{\"name\": \"a\u0000b\"}");
        texts.put("half-a-sign", "{\"name\": \"\\ud800\"");
        texts.put("empty", "");
        for (Map.Entry<String, String> text : texts.entrySet()) {
            Path file = files.written("brief-" + text.getKey() + ".json", text.getValue());
            run("brief " + text.getKey(), "propose", file.toString(), "--catalog", Terminal.BENCH);
        }
        Path large = files.at("large.json");
        HostileFiles.repeated(large, "{\"name\": \"", "x", 100_000_000);
        run("brief of 100 MB", "propose", large.toString(), "--catalog", Terminal.BENCH);
        run("brief that is a folder", "propose", files.at("").toString(), "--catalog", Terminal.BENCH);
        run("brief typed without end", "propose", "-", "--catalog", Terminal.BENCH);
        typed.put("brief typed without end", "{\"name\": \"" + "x".repeat(3_000_000) + "\"}");
    }

    private void numbers() {
        for (String price :
                List.of("1e999999999", "NaN", "Infinity", "-1", "1".repeat(5000), "\u0661\u0662", "0x10", "1e-400")) {
            run(
                    "budget " + price.substring(0, Math.min(12, price.length())),
                    "propose",
                    Terminal.brief("kayak-estuary"),
                    "--catalog",
                    Terminal.BENCH,
                    "--budget",
                    price);
        }
    }

    private void catalogs() throws IOException {
        Map<String, String> cells = new TreeMap<>();
        cells.put("nan", "NaN");
        cells.put("infinite", "Infinity");
        cells.put("huge", "1e308");
        cells.put("beyond", "1e99");
        cells.put("negative", "-5");
        cells.put("zero", "0");
        cells.put("formula", "=1+1");
        cells.put("steering", ESCAPE);
        cells.put("long", "7".repeat(3000));
        for (Map.Entry<String, String> cell : cells.entrySet()) {
            changed(
                    "cell " + cell.getKey(),
                    "blanks.csv",
                    text -> HostileFiles.withCell(text, "length_mm", cell.getValue()));
        }
        changed("text steering", "blanks.csv", text -> HostileFiles.withCell(text, "maker", "A\u202eB\u009b1m"));
        changed("id is a path", "blanks.csv", text -> HostileFiles.withCell(text, "id", "../../x"));
        changed("id steers", "blanks.csv", text -> HostileFiles.withCell(text, "id", "a\u001b[1mb"));
        changed("nul bytes", "blanks.csv", text -> text.replace(',', '\u0000'));
        changed("one line of 19 MB", "blanks.csv", text -> text + "x".repeat(19_000_000));
        changed("19 MB in one quote", "blanks.csv", text -> text + "\"" + "x".repeat(19_000_000));
        changed("2,000 columns", "blanks.csv", text -> "c,".repeat(2000) + text);
        changed(
                "10,000 sections",
                "blanks.csv",
                text -> HostileFiles.withCell(text, "section_lengths_mm", "5|".repeat(10_000) + "5"));
        changed("deep rates", "rates.json", text -> DEEP);
        changed("rates without end", "rates.json", text -> text.substring(0, text.length() / 2));
        changed("rates of huge numbers", "rates.json", text -> text.replaceFirst(": *[0-9]+", ": 1e999999999"));
        Path many = files.copied("rows");
        HostileFiles.repeated(
                many.resolve("keepers.csv"), Files.readString(many.resolve("keepers.csv")), "a,b\n", 10_000_000);
        run("2,500,000 rows", "check", "--catalog", many.toString());
        Path large = files.copied("large");
        HostileFiles.repeated(large.resolve("checks.csv"), "", "x", 100_000_000);
        run("file of 100 MB", "check", "--catalog", large.toString());
    }

    private void buildsAndReadings() throws IOException {
        String brief = Terminal.brief("kayak-estuary");
        for (Map.Entry<String, String> build : Map.of(
                        "deep",
                        DEEP,
                        "huge",
                        "{\"layout\": {\"blank\": \"x\", \"reelFootMm\": 1e99, \"handle\": \"split\", \"guideCount\": 2000000000}, \"parts\": []}",
                        "many",
                        "{\"parts\": [" + "{}, ".repeat(100_000) + "{}]}",
                        "steering",
                        "{\"parts\": \"\u202e\\u001b[2J\"}")
                .entrySet()) {
            Path file = files.written("build-" + build.getKey() + ".json", build.getValue());
            run("build " + build.getKey(), "measure", file.toString(), "--brief", brief, "--catalog", Terminal.BENCH);
        }
        String blank = "tarnrigg-ghyll-165-2";
        for (String reading : List.of(
                "1e999999999 g=5 mm",
                "NaN=NaN",
                "-5 g=5 mm",
                "\u001b[2J",
                "1 g=1e308 mm",
                "0 g=0 mm",
                "9".repeat(4000))) {
            run(
                    "reading "
                            + reading.substring(0, Math.min(9, reading.length()))
                                    .replace('\u001b', 'E'),
                    "bendtest",
                    blank,
                    "--catalog",
                    Terminal.BENCH,
                    "--reading",
                    reading);
        }
        run(
                "trace of one long line",
                "bendtest",
                blank,
                "--catalog",
                Terminal.BENCH,
                "--load",
                "100 g",
                "--trace",
                files.written("trace.txt", "1 ".repeat(400_000)).toString());
        for (String grams : List.of("NaN", "1e308", "-3 g", "0", "\u202e3 g", "1e999999999 g")) {
            run(
                    "scale " + grams.replace('\u202e', '?'),
                    "weigh",
                    blank,
                    grams,
                    "--catalog",
                    files.copied("weigh").toString());
        }
    }

    private void commandLines() {
        run("no such command", "\u001b[2J\u202e");
        run("no such option", "propose", "--" + "x".repeat(50_000));
        run("file name of nul", "propose", "a\u0000b", "--catalog", Terminal.BENCH);
        run("file name without end", "propose", "x".repeat(10_000), "--catalog", Terminal.BENCH);
        run("catalog of nul", "parts", "--catalog", "a\u0000b");
        run("catalog that is a file", "parts", "--catalog", Terminal.brief("kayak-estuary"));
        run(
                "priority of nothing",
                "propose",
                Terminal.brief("kayak-estuary"),
                "--catalog",
                Terminal.BENCH,
                "--priority",
                "=");
        run(
                "priority huge",
                "propose",
                Terminal.brief("kayak-estuary"),
                "--catalog",
                Terminal.BENCH,
                "--priority",
                "weight=1e999999999");
        run(
                "priority negative",
                "propose",
                Terminal.brief("kayak-estuary"),
                "--catalog",
                Terminal.BENCH,
                "--priority",
                "weight=-1");
        run(
                "part that is a path",
                "propose",
                Terminal.brief("kayak-estuary"),
                "--catalog",
                Terminal.BENCH,
                "--with",
                "../../etc");
        run("argument file", "propose", "@/etc/passwd");
        run("schema that is a path", "schema", "../../../withy/messages_en.properties");
        run("date of no calendar", "stock", "x", "--order", "2", "--due", "2026-02-31", "--catalog", Terminal.BENCH);
    }

    private void run(String name, String... args) {
        cases.put(name, List.of(args));
    }

    private interface Edit {
        String of(String text);
    }

    private void changed(String name, String file, Edit edit) throws IOException {
        Path catalog = files.copied(name.replaceAll("[^a-z0-9]", "-"));
        Path target = catalog.resolve(file);
        Files.writeString(target, edit.of(Files.readString(target)));
        run("catalogue " + name, "check", "--catalog", catalog.toString());
    }
}
