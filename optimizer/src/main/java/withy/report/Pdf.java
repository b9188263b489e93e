package withy.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.font.FontMappers;

/** Prints a document of ours as PDF. Nothing is loaded but the two fonts inside the jar, whatever the document names. */
public final class Pdf {
    private static final int REGULAR = 400;
    private static final int BOLD = 700;

    static {
        FontMappers.set(new JarFonts());
    }

    private Pdf() {}

    /** The document as PDF, its fonts embedded. */
    public static byte[] of(String html) {
        XRLog.setLoggingEnabled(false);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useUnicodeLineBreaker(new AtSpaces());
        builder.useUriResolver((base, uri) -> null);
        builder.useFont(() -> font("DejaVuSans.ttf"), Markup.FONT, REGULAR, FontStyle.NORMAL, true);
        builder.useFont(() -> font("DejaVuSans-Bold.ttf"), Markup.FONT, BOLD, FontStyle.NORMAL, true);
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

    private static InputStream font(String file) {
        try (InputStream in = Pdf.class.getResourceAsStream("/withy/fonts/" + file)) {
            if (in == null) {
                throw new IllegalStateException("no font " + file + " in the jar");
            }
            return new ByteArrayInputStream(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
