package withy.catalog;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.Locale;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/**
 * Looks through an XLSX workbook before it is read, in little memory: a small file may unpack to gigabytes, name a cell a million columns to the
 * right, or define words that grow without end.
 */
final class WorkbookCheck {
    /** Bytes all parts may unpack to: a price list of 100,000 rows. */
    static final long UNPACKED_BYTES = 40_000_000;

    /** Parts of a workbook; ours and usual ones have a dozen. */
    static final int ENTRIES = 500;

    /** The last cell of the format is XFD1048576. */
    private static final String CELL_NAME = "[A-Z]{1,3}[1-9][0-9]{0,6}";

    private static final XMLInputFactory XML = factory();

    private long unpacked;

    private WorkbookCheck() {}

    /** What is wrong with it, or null. */
    static @Nullable String problem(Path file) throws IOException {
        WorkbookCheck check = new WorkbookCheck();
        try (ZipFile zip = new ZipFile(file.toFile())) {
            if (zip.size() > ENTRIES) {
                return "holds " + zip.size() + " parts, more than " + ENTRIES;
            }
            Enumeration<? extends ZipEntry> entries = zip.entries();
            while (entries.hasMoreElements()) {
                String problem = check.entry(zip, entries.nextElement());
                if (problem != null) {
                    return problem;
                }
            }
            return null;
        } catch (TooLarge e) {
            return "unpacks to more than " + UNPACKED_BYTES + " bytes";
        } catch (IOException | RuntimeException e) {
            // The unpacker and the parser throw whatever they stumble over; only a file that is gone or not ours is the
            // disk's fault.
            if (Files.isReadable(file)) {
                return "can't be read as a workbook";
            }
            throw e;
        }
    }

    private @Nullable String entry(ZipFile zip, ZipEntry entry) throws IOException {
        String name = entry.getName().toLowerCase(Locale.ROOT);
        try (InputStream in = counted(zip.getInputStream(entry))) {
            if (name.endsWith(".xml") || name.endsWith(".rels")) {
                return xml(in);
            }
            in.transferTo(java.io.OutputStream.nullOutputStream());
            return null;
        }
    }

    private static @Nullable String xml(InputStream in) throws IOException {
        try {
            XMLStreamReader reader = XML.createXMLStreamReader(in);
            while (reader.hasNext()) {
                int event = reader.next();
                if (event == XMLStreamConstants.DTD) {
                    return "defines words of its own";
                }
                if (event == XMLStreamConstants.START_ELEMENT
                        && reader.getLocalName().equals("c")) {
                    String cell = reader.getAttributeValue(null, "r");
                    if (cell != null && !cell.matches(CELL_NAME)) {
                        return "names a cell that no workbook has";
                    }
                }
            }
            return null;
        } catch (XMLStreamException e) {
            if (e.getNestedException() instanceof TooLarge cause) {
                throw cause;
            }
            return "can't be read as a workbook";
        }
    }

    private InputStream counted(InputStream in) {
        return new FilterInputStream(in) {
            @Override
            public int read() throws IOException {
                int read = super.read();
                count(read < 0 ? 0 : 1);
                return read;
            }

            @Override
            public int read(byte[] bytes, int from, int most) throws IOException {
                int read = super.read(bytes, from, most);
                count(Math.max(0, read));
                return read;
            }
        };
    }

    private void count(int bytes) throws TooLarge {
        unpacked += bytes;
        if (unpacked > UNPACKED_BYTES) {
            throw new TooLarge();
        }
    }

    private static XMLInputFactory factory() {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        return factory;
    }

    private static final class TooLarge extends IOException {
        private static final long serialVersionUID = 1L;
    }
}
