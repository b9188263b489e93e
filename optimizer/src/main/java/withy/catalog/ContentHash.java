package withy.catalog;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collection;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;

/**
 * SHA-256 (FIPS 180-4) of what was read, not of the files: rates, then every part by id, each cell in canonical text and column order. Encoding,
 * separators, decimal marks, order of columns and rows, and columns that are not ours leave it alone.
 */
final class ContentHash {
    private static final byte FIELD_END = 0x1f;
    private static final byte RECORD_END = 0x1e;

    private final MessageDigest digest;

    private ContentHash() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** Lower-case hexadecimal hash. */
    static String of(Rates rates, Collection<? extends Part> parts) {
        ContentHash hash = new ContentHash();
        hash.field(RatesFile.text(rates));
        List<? extends Part> ordered =
                parts.stream().sorted(Comparator.comparing(Part::id)).toList();
        for (Part part : ordered) {
            hash.part(Sheet.of(part.kind()), part);
        }
        return HexFormat.of().formatHex(hash.digest.digest());
    }

    private <P extends Part> void part(Sheet<P> sheet, Part part) {
        field(sheet.kind().fileName());
        P typed = sheet.type().cast(part);
        for (Column<P> column : sheet.columns()) {
            field(CatalogWriter.cell(column.value().apply(typed), column.sort(), 0));
        }
        digest.update(RECORD_END);
    }

    private void field(String text) {
        digest.update(text.getBytes(StandardCharsets.UTF_8));
        digest.update(FIELD_END);
    }
}
