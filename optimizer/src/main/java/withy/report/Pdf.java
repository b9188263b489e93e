package withy.report;

import com.openhtmltopdf.extend.FSStream;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.apache.pdfbox.pdmodel.font.FontMappers;

/** Prints a document of ours as PDF. Nothing is loaded but the fonts inside the jar, whatever the document names. */
public final class Pdf {
    private static final String PROTOCOL = "font";
    private static final Map<String, String> FONTS =
            Map.of("font:regular", "DejaVuSans.ttf", "font:bold", "DejaVuSans-Bold.ttf");

    static {
        FontMappers.set(new JarFonts());
    }

    private Pdf() {}

    /** The document as PDF, its fonts embedded. */
    public static byte[] of(String html) {
        XRLog.setLoggingEnabled(false);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useUriResolver((base, uri) -> FONTS.containsKey(uri) ? uri : null);
        builder.useProtocolsStreamImplementation(Font::new, PROTOCOL);
        try (BatikSVGDrawer drawer = new BatikSVGDrawer()) {
            builder.useSVGDrawer(drawer);
            builder.withHtmlContent(html, null);
            builder.withProducer("Withy");
            builder.toStream(out);
            builder.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /**
     * A font of the jar.
     *
     * @param uri its name in a style sheet
     */
    private record Font(String uri) implements FSStream {
        @Override
        public InputStream getStream() {
            String file = FONTS.get(uri);
            try (InputStream in = file == null ? null : Pdf.class.getResourceAsStream("/withy/fonts/" + file)) {
                if (in == null) {
                    throw new IllegalStateException("no font " + uri + " in the jar");
                }
                return new ByteArrayInputStream(in.readAllBytes());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        @Override
        public Reader getReader() {
            return new InputStreamReader(getStream(), StandardCharsets.UTF_8);
        }
    }
}
