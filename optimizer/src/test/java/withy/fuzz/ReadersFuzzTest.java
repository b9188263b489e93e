package withy.fuzz;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import withy.app.BuildReader;
import withy.app.TraceReader;
import withy.brief.BriefContext;
import withy.brief.BriefFault;
import withy.brief.BriefReader;
import withy.brief.BriefReading;
import withy.brief.BriefWriter;
import withy.catalog.Catalog;
import withy.catalog.Fault;
import withy.catalog.FuzzLists;
import withy.fixture.Fixtures;

/** Files and texts from outside. */
class ReadersFuzzTest {
    private static final Catalog CATALOG = Fixtures.legal().catalog();
    private static final BriefContext CONTEXT = new BriefContext(CATALOG.rates(), CATALOG.asOf());
    private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static final String RELS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    /** Twenty minutes where it looks for new inputs. */
    private static final String LONG = "20m";

    @FuzzTest(maxDuration = LONG)
    void catalogueList(byte[] bytes) {
        located(FuzzLists.sheet(bytes));
    }

    @FuzzTest(maxDuration = LONG)
    void rates(byte[] bytes) {
        located(FuzzLists.rates(bytes));
    }

    @FuzzTest(maxDuration = LONG)
    void countList(byte[] bytes) {
        located(FuzzLists.list(bytes, ".csv"));
    }

    @FuzzTest(maxDuration = LONG)
    void workbook(byte[] bytes) {
        located(FuzzLists.list(bytes, ".xlsx"));
    }

    /** The sheet inside a sound workbook: most damage to the zip is found at once and hides what lies behind it. */
    @FuzzTest(maxDuration = LONG)
    void sheetOfAWorkbook(byte[] bytes) {
        located(FuzzLists.list(zipped(bytes), ".xlsx"));
    }

    /** A brief that is accepted is written and read again as the same. */
    @FuzzTest(maxDuration = LONG)
    void brief(byte[] bytes) {
        BriefReading reading = BriefReader.read(new String(bytes, StandardCharsets.UTF_8), CONTEXT);
        told(reading.faults());
        if (reading.faults().isEmpty()) {
            var brief = reading.orThrow();
            if (!BriefReader.read(BriefWriter.write(brief), CONTEXT).orThrow().equals(brief)) {
                throw new IllegalStateException("written and read again it is another brief");
            }
        }
    }

    @FuzzTest(maxDuration = LONG)
    void build(byte[] bytes) {
        told(BuildReader.read(new String(bytes, StandardCharsets.UTF_8), CATALOG)
                .faults());
    }

    @FuzzTest(maxDuration = LONG)
    void trace(FuzzedDataProvider data) {
        TraceReader.read(data.consumeRemainingAsString()).faults().forEach(ReadersFuzzTest::hasWayOut);
    }

    private static void located(List<Fault> faults) {
        for (Fault fault : faults) {
            hasWayOut(fault.message());
        }
    }

    private static void told(List<BriefFault> faults) {
        faults.forEach(fault -> hasWayOut(fault.message()));
    }

    private static void hasWayOut(String message) {
        if (message.lines().noneMatch(line -> line.startsWith("Maybe "))) {
            throw new IllegalStateException("no way out is told: " + message);
        }
    }

    private static byte[] zipped(byte[] sheet) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            entry(
                    zip,
                    "_rels/.rels",
                    "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
                            + "<Relationship Id=\"a\" Type=\"" + RELS
                            + "/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
            entry(
                    zip,
                    "xl/workbook.xml",
                    "<workbook xmlns=\"" + MAIN + "\" xmlns:r=\"" + RELS
                            + "\"><sheets><sheet name=\"one\" sheetId=\"1\" r:id=\"b\"/></sheets></workbook>");
            entry(
                    zip,
                    "xl/_rels/workbook.xml.rels",
                    "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
                            + "<Relationship Id=\"b\" Type=\"" + RELS
                            + "/worksheet\" Target=\"worksheets/sheet1.xml\"/></Relationships>");
            zip.putNextEntry(new ZipEntry("xl/worksheets/sheet1.xml"));
            zip.write(sheet);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static void entry(ZipOutputStream zip, String name, String text) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(text.getBytes(StandardCharsets.UTF_8));
    }
}
