package withy.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Lists as workbooks that are bombs, reach for other files or are no workbooks. */
final class HostileWorkbooks {
    private static final String WORKBOOK = "xl/workbook.xml";
    private static final String SHEET = "xl/worksheets/sheet1.xml";

    private final HostileFiles files;
    private final Map<String, List<String>> cases;

    /**
     * @param cases gets each command line by its name
     */
    HostileWorkbooks(HostileFiles files, Map<String, List<String>> cases) {
        this.files = files;
        this.cases = cases;
    }

    void all() throws IOException {
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
        Path bomb = files.at("bomb.xlsx");
        bomb(bomb, sheet("<row r=\"1\"><c r=\"A1\"><v>1</v></c></row>"), 1_500_000_000L);
        run(
                "xlsx zip bomb",
                "stock",
                "--import",
                bomb.toString(),
                "--catalog",
                files.copied("bomb").toString());
        Path many = files.at("parts.xlsx");
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
                files.copied("parts").toString());
        run(
                "xlsx that is none",
                "stock",
                "--import",
                files.written("none.xlsx", "no workbook").toString(),
                "--catalog",
                files.copied("none").toString());
        run(
                "list of one long line",
                "stock",
                "--import",
                files.written("long.csv", "id,counted\n" + "x".repeat(5_000_000))
                        .toString(),
                "--catalog",
                files.copied("longline").toString());
    }

    private void run(String name, String... args) {
        cases.put(name, List.of(args));
    }

    private static String sheet(String rows) {
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?><worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>"
                + rows + "</sheetData></worksheet>";
    }

    private void workbook(String name, String replaced, String text) throws IOException {
        Path file = files.at(name.replace(' ', '-') + ".xlsx");
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
                files.copied("xlsx").toString());
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
