package withy.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;
import org.jspecify.annotations.Nullable;

/** Stands in for any font that is asked of the machine, so that its fonts are not searched and no list of them is left in the user's home. */
final class JarFonts implements FontMapper {
    private final TrueTypeFont font;

    JarFonts() {
        try (InputStream in = JarFonts.class.getResourceAsStream("/withy/fonts/DejaVuSans.ttf")) {
            if (in == null) {
                throw new IllegalStateException("no font in the jar");
            }
            font = new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public FontMapping<TrueTypeFont> getTrueTypeFont(String name, @Nullable PDFontDescriptor descriptor) {
        return new FontMapping<>(font, true);
    }

    @Override
    public FontMapping<FontBoxFont> getFontBoxFont(String name, @Nullable PDFontDescriptor descriptor) {
        return new FontMapping<>(font, true);
    }

    @Override
    @SuppressWarnings("NullAway") // the library takes null for "no OpenType font"
    public CIDFontMapping getCIDFont(
            String name, @Nullable PDFontDescriptor descriptor, @Nullable PDCIDSystemInfo system) {
        return new CIDFontMapping(null, font, true);
    }
}
