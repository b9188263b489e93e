package withy.catalog;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import withy.fixture.Fixtures;

/** What a catalogue's readers make of any bytes: parts or located faults, nothing else. For the fuzzing tests. */
public final class FuzzLists {
    private static final Catalog CATALOG = Fixtures.legal().catalog();

    private FuzzLists() {}

    /** One list, its kind told by the first byte. */
    public static List<Fault> sheet(byte[] bytes) {
        int first = bytes.length == 0 ? 0 : bytes[0] & 0xFF;
        PartKind kind = PartKind.values()[first % PartKind.values().length];
        byte[] rest = bytes.length == 0 ? bytes : java.util.Arrays.copyOfRange(bytes, 1, bytes.length);
        FaultList faults = new FaultList(kind.fileName());
        FaultList warnings = new FaultList(kind.fileName());
        new SheetReader(RatesFile.STAND_IN, faults, warnings).read(Sheet.of(kind), TextFile.decode(rest));
        List<Fault> all = new ArrayList<>(faults.list());
        all.addAll(warnings.list());
        return all;
    }

    public static List<Fault> rates(byte[] bytes) {
        FaultList faults = new FaultList(RatesFile.NAME);
        Rates rates = RatesFile.read(TextFile.decode(bytes), faults);
        if ((rates == null) != (faults.size() > 0)) {
            throw new IllegalStateException("rates without a fault, or a fault and rates: " + faults.list());
        }
        return faults.list();
    }

    /** A count or price list from outside. */
    public static List<Fault> list(byte[] bytes, String ending) {
        try {
            Path file = Files.createTempFile("list", ending);
            try {
                Files.write(file, bytes);
                return ShopList.read(file, CATALOG).faults();
            } finally {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
