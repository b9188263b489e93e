package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;
import withy.app.MachineSheet;
import withy.app.Machines;
import withy.fixture.Fixtures;
import withy.report.Picture;
import withy.report.Pictures;
import withy.rod.Rod;
import withy.rod.Station;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Drawings are sound XML, stay inside their frame, and carry the rod's figures. */
class PicturesTest {
    private static final QuantityText UNITS = new QuantityText(UnitSystem.METRIC);

    @TempDir
    private Path folder;

    private static Document xml(String text) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            return factory.newDocumentBuilder().parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new AssertionError(e.getMessage() + "\n" + text, e);
        }
    }

    private static List<Rod> rods() {
        return List.of(
                Fixtures.legal().rod(),
                Fixtures.legal().casting().rod(),
                Fixtures.legal().fullHandle().rod(),
                Fixtures.legal().empty(Station.TIP_TOP).empty(Station.SEAT).rod(),
                Fixtures.legal()
                        .part("guide-5", "facts.model", "<script>&\"x\"</script>\u0007")
                        .rod());
    }

    @Test
    void everyDrawingIsSoundAndStaysInsideItsFrame() {
        for (Rod rod : rods()) {
            for (Picture picture : Pictures.of(Machines.of(rod), UNITS)) {
                assertFalse(picture.svg().contains("NaN") || picture.svg().contains("Infinity"), picture.key());
                Document drawing = xml(picture.svg());
                String[] box =
                        drawing.getDocumentElement().getAttribute("viewBox").split(" ");
                double width = Double.parseDouble(box[2]);
                double height = Double.parseDouble(box[3]);
                NodeList all = drawing.getElementsByTagName("*");
                for (int i = 0; i < all.getLength(); i++) {
                    Element element = (Element) all.item(i);
                    for (String name : List.of("x", "x1", "x2", "cx")) {
                        inside(element, name, width, picture.key());
                    }
                    for (String name : List.of("y", "y1", "y2", "cy")) {
                        inside(element, name, height, picture.key());
                    }
                    if (element.getTagName().equals("text")) {
                        wordsInside(element, width, picture.key());
                    }
                }
            }
        }
    }

    private static void inside(Element element, String name, double most, String key) {
        String value = element.getAttribute(name);
        if (!value.isEmpty()) {
            double at = Double.parseDouble(value);
            assertTrue(at >= -0.01 && at <= most + 0.01, key + ": " + name + " = " + value + " of " + most);
        }
    }

    /** By a letter of 12 units: wider than the usual one. */
    private static void wordsInside(Element text, double width, String key) {
        double long12 = 12.0 * text.getTextContent().length();
        double x = Double.parseDouble(text.getAttribute("x"));
        double from = switch (text.getAttribute("text-anchor")) {
            case "middle" -> x - long12 / 2;
            case "end" -> x - long12;
            default -> x;
        };
        assertTrue(from >= -8 && from + long12 <= width + 8, key + ": " + text.getTextContent() + " at " + x);
    }

    @Test
    void theFiguresBesideAreThoseOfTheRod() {
        Rod rod = Fixtures.legal().rod();
        MachineSheet machine = Machines.of(rod);
        Picture.Table table = Pictures.rod(machine, UNITS).table();
        int parts =
                machine.outline().pieces().size() + machine.outline().rings().size();
        assertEquals(parts + 3, table.rows().size());
        String balance = UNITS.partLength(Math.rint(machine.outline().balanceMm()));
        assertTrue(table.rows().stream().anyMatch(row -> row.contains(balance)), table.toString());
        assertEquals(
                rod.setting().footMm() + rod.balance().pointMm(),
                machine.outline().balanceMm(),
                0.01);
        for (Picture picture : Pictures.of(machine, UNITS)) {
            picture.table()
                    .rows()
                    .forEach(row -> assertEquals(picture.table().heads().size(), row.size(), picture.key()));
        }
        assertEquals(
                machine.massAlong().size(),
                Pictures.mass(machine, UNITS).table().rows().size());
    }

    @Test
    void theSameRodGivesTheSameDrawing() {
        Rod rod = Fixtures.legal().rod();
        assertEquals(Pictures.of(Machines.of(rod), UNITS), Pictures.of(Machines.of(rod), UNITS));
    }

    @Test
    void theCommandWritesThemAndSaysWhere() throws IOException {
        Path drawings = folder.resolve("a").resolve("b");
        Terminal.Shown shown = bend(drawings.toString());
        assertEquals(0, shown.code(), shown.err());
        assertTrue(shown.err().contains("pictures.html"), shown.err());
        for (String name : List.of("rod", "working", "static", "loads", "mass")) {
            xml(Files.readString(drawings.resolve(name + ".svg")));
        }
        String page = Files.readString(drawings.resolve("pictures.html"));
        assertEquals(5, page.split("<svg", -1).length - 1);
        assertEquals(5, page.split("<table>", -1).length - 1);
        assertFalse(page.contains("http://") && !page.contains("http://www.w3.org/2000/svg"), "loads from elsewhere");
        Path file = Files.writeString(folder.resolve("file"), "x");
        Terminal.Shown wrong = bend(file.resolve("under").toString());
        assertEquals(5, wrong.code(), wrong.err());
        assertTrue(wrong.err().contains("Maybe "), wrong.err());
    }

    private static Terminal.Shown bend(String into) {
        return new Terminal()
                .typing(Demo.build(0).toString())
                .run(
                        "bend",
                        "-",
                        "--brief",
                        Terminal.brief("kayak-estuary"),
                        "--catalog",
                        Terminal.BENCH,
                        "--pictures",
                        into);
    }
}
