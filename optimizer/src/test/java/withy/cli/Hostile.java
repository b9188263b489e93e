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
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** A child process with little memory that is given every bomb and every hostile text there is for each input, and tells what came of it. */
final class Hostile {
    private static final String WORKBOOK = "xl/workbook.xml";
    private static final String SHEET = "xl/worksheets/sheet1.xml";
    private static final String DEEP = "[".repeat(100_000);
    private static final String ESCAPE = "\u001b[2J\u202e\u0000\u009b31m\r";

    private final Path folder;
    private final Map<String, List<String>> cases = new TreeMap<>();
    private final Map<String, String> typed = new TreeMap<>();

    private Hostile(Path folder) {
        this.folder = folder;
    }

    /** Prints a line a case: name, exit code, whether it tells a way out, whether it stays free of what steers a terminal, first words. */
    public static void main(String[] args) throws IOException {
        Hostile hostile = new Hostile(Path.of(args[0]));
        hostile.briefs();
        hostile.numbers();
        hostile.catalogs();
        hostile.workbooks();
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
            Path file = written("brief-" + text.getKey() + ".json", text.getValue());
            run("brief " + text.getKey(), "propose", file.toString(), "--catalog", Terminal.BENCH);
        }
        Path large = folder.resolve("large.json");
        repeated(large, "{\"name\": \"", "x", 100_000_000);
        run("brief of 100 MB", "propose", large.toString(), "--catalog", Terminal.BENCH);
        run("brief that is a folder", "propose", folder.toString(), "--catalog", Terminal.BENCH);
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
            changed("cell " + cell.getKey(), "blanks.csv", text -> withCell(text, "length_mm", cell.getValue()));
        }
        changed("text steering", "blanks.csv", text -> withCell(text, "maker", "A\u202eB\u009b1m"));
        changed("id is a path", "blanks.csv", text -> withCell(text, "id", "../../x"));
        changed("id steers", "blanks.csv", text -> withCell(text, "id", "a\u001b[1mb"));
        changed("nul bytes", "blanks.csv", text -> text.replace(',', '\u0000'));
        changed("one line of 19 MB", "blanks.csv", text -> text + "x".repeat(19_000_000));
        changed("19 MB in one quote", "blanks.csv", text -> text + "\"" + "x".repeat(19_000_000));
        changed("2,000 columns", "blanks.csv", text -> "c,".repeat(2000) + text);
        changed(
                "10,000 sections",
                "blanks.csv",
                text -> withCell(text, "section_lengths_mm", "5|".repeat(10_000) + "5"));
        changed("deep rates", "rates.json", text -> DEEP);
        changed("rates without end", "rates.json", text -> text.substring(0, text.length() / 2));
        changed("rates of huge numbers", "rates.json", text -> text.replaceFirst(": *[0-9]+", ": 1e999999999"));
        Path many = copied("rows");
        repeated(many.resolve("keepers.csv"), Files.readString(many.resolve("keepers.csv")), "a,b\n", 10_000_000);
        run("2,500,000 rows", "check", "--catalog", many.toString());
        Path large = copied("large");
        repeated(large.resolve("checks.csv"), "", "x", 100_000_000);
        run("file of 100 MB", "check", "--catalog", large.toString());
    }

    private void workbooks() throws IOException {
        workbook(
                "words without end",
                SHEET,
                "<?xml version=\"1.0\"?><!DOCTYPE a [<!ENTITY b \"" + "lol".repeat(10) + "\"><!ENTITY c \""
                        + "&b;".repeat(30) + "\"><!ENTITY d \"" + "&c;".repeat(30)
                        + "\">]><worksheet><sheetData><row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>&d;</t></is></c></row></sheetData></worksheet>");
        workbook(
                "words from elsewhere",
                SHEET,
                "<?xml version=\"1.0\"?><!DOCTYPE a [<!ENTITY b SYSTEM \"file:///etc/passwd\">]><worksheet><sheetData><row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>&b;</t></is></c></row></sheetData></worksheet>");
        workbook("cell far right", SHEET, sheet("<row r=\"1\"><c r=\"ZZZZZZ1\"><v>1</v></c></row>"));
        workbook(
                "number bomb",
                SHEET,
                sheet(
                        "<row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>id</t></is></c><c r=\"B1\" t=\"inlineStr\"><is><t>counted</t></is></c></row>"
                                + "<row r=\"2\"><c r=\"A2\" t=\"inlineStr\"><is><t>keeper</t></is></c><c r=\"B2\"><v>1e999999999</v></c></row>"));
        workbook(
                "formula",
                SHEET,
                sheet(
                        "<row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>id</t></is></c><c r=\"B1\" t=\"inlineStr\"><is><t>counted</t></is></c></row>"
                                + "<row r=\"2\"><c r=\"A2\" t=\"inlineStr\"><is><t>=cmd|' /C calc'!A0</t></is></c><c r=\"B2\"><f>1+1</f></c></row>"));
        workbook("not a sheet", SHEET, "<worksheet><sheetData><row><c></row>");
        workbook("no rows", SHEET, sheet(""));
        workbook("row of no number", SHEET, sheet("<row r=\"x\"><c r=\"A1\"><v>1</v></c></row>"));
        Path bomb = folder.resolve("bomb.xlsx");
        bomb(bomb, sheet("<row r=\"1\"><c r=\"A1\"><v>1</v></c></row>"), 1_500_000_000L);
        run(
                "xlsx zip bomb",
                "stock",
                "--import",
                bomb.toString(),
                "--catalog",
                copied("bomb").toString());
        Path many = folder.resolve("parts.xlsx");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(many))) {
            for (int i = 0; i < 5000; i++) {
                zip.putNextEntry(new ZipEntry("../../" + i));
            }
        }
        run(
                "xlsx of 5,000 parts",
                "stock",
                "--import",
                many.toString(),
                "--catalog",
                copied("parts").toString());
        run(
                "xlsx that is none",
                "stock",
                "--import",
                written("none.xlsx", "no workbook").toString(),
                "--catalog",
                copied("none").toString());
        run(
                "list of one long line",
                "stock",
                "--import",
                written("long.csv", "id,counted\n" + "x".repeat(5_000_000)).toString(),
                "--catalog",
                copied("longline").toString());
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
            Path file = written("build-" + build.getKey() + ".json", build.getValue());
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
                written("trace.txt", "1 ".repeat(400_000)).toString());
        for (String grams : List.of("NaN", "1e308", "-3 g", "0", "\u202e3 g", "1e999999999 g")) {
            run(
                    "scale " + grams.replace('\u202e', '?'),
                    "weigh",
                    blank,
                    grams,
                    "--catalog",
                    copied("weigh").toString());
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
        Path catalog = copied(name.replaceAll("[^a-z0-9]", "-"));
        Path target = catalog.resolve(file);
        Files.writeString(target, edit.of(Files.readString(target)));
        run("catalogue " + name, "check", "--catalog", catalog.toString());
    }

    /** The named column of the first part set to a value; no cell before it holds a comma. */
    private static String withCell(String text, String column, String value) {
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

    private Path copied(String name) throws IOException {
        Path to = Files.createDirectories(folder.resolve("shop-" + name));
        try (Stream<Path> files = Files.list(Path.of(Terminal.BENCH))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, to.resolve(file.getFileName()), StandardCopyOption.REPLACE_EXISTING);
            }
        }
        return to;
    }

    private Path written(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private static void repeated(Path file, String head, String piece, long bytes) throws IOException {
        byte[] chunk = piece.repeat(10_000).getBytes(StandardCharsets.UTF_8);
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            out.write(head.getBytes(StandardCharsets.UTF_8));
            for (long written = 0; written < bytes; written += chunk.length) {
                out.write(chunk);
            }
        }
    }

    private static String sheet(String rows) {
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?><worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>"
                + rows + "</sheetData></worksheet>";
    }

    private void workbook(String name, String replaced, String text) throws IOException {
        Path file = folder.resolve(name.replace(' ', '-') + ".xlsx");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            for (Map.Entry<String, String> part : parts().entrySet()) {
                entry(zip, part.getKey(), part.getKey().equals(replaced) ? text : part.getValue());
            }
        }
        run(
                "xlsx " + name,
                "stock",
                "--import",
                file.toString(),
                "--catalog",
                copied("xlsx").toString());
    }

    private static void bomb(Path file, String sheet, long zeros) throws IOException {
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            for (Map.Entry<String, String> part : parts().entrySet()) {
                entry(zip, part.getKey(), part.getKey().equals(SHEET) ? sheet : part.getValue());
            }
            zip.putNextEntry(new ZipEntry("xl/sharedStrings.xml"));
            byte[] chunk = "<si><t>aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa</t></si>"
                    .repeat(20_000)
                    .getBytes(StandardCharsets.UTF_8);
            zip.write("<sst>".getBytes(StandardCharsets.UTF_8));
            for (long written = 0; written < zeros / 20; written += chunk.length) {
                zip.write(chunk);
            }
        }
    }

    private static void entry(ZipOutputStream zip, String name, String text) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(text.getBytes(StandardCharsets.UTF_8));
    }

    private static Map<String, String> parts() {
        String rels = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
        Map<String, String> parts = new TreeMap<>();
        parts.put(
                "[Content_Types].xml",
                "<?xml version=\"1.0\"?><Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/><Override PartName=\"/xl/worksheets/sheet1.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/></Types>");
        parts.put(
                "_rels/.rels",
                "<?xml version=\"1.0\"?><Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"a\" Type=\""
                        + rels + "/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
        parts.put(
                WORKBOOK,
                "<?xml version=\"1.0\"?><workbook xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" xmlns:r=\""
                        + rels + "\"><sheets><sheet name=\"one\" sheetId=\"1\" r:id=\"b\"/></sheets></workbook>");
        parts.put(
                "xl/_rels/workbook.xml.rels",
                "<?xml version=\"1.0\"?><Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"b\" Type=\""
                        + rels + "/worksheet\" Target=\"worksheets/sheet1.xml\"/></Relationships>");
        parts.put(SHEET, sheet(""));
        return parts;
    }
}
