package withy.catalog;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Reads a catalogue folder: {@code rates.json} and one CSV file a part kind, with every fault in one list. */
public final class CatalogReader {
    /** Kinds no rod can be built without. */
    private static final Set<PartKind> NEEDED = EnumSet.of(
            PartKind.BLANK,
            PartKind.REEL_SEAT,
            PartKind.GRIP,
            PartKind.GUIDE,
            PartKind.TIP_TOP,
            PartKind.THREAD,
            PartKind.FINISH,
            PartKind.ADHESIVE);

    private final Path folder;
    private final LocalDate asOf;
    private final List<Fault> faults = new ArrayList<>();
    private final List<Fault> warnings = new ArrayList<>();
    private final List<Part> parts = new ArrayList<>();
    private final Map<String, Fault> firstUse = new HashMap<>();
    private final Map<String, Integer> lines = new HashMap<>();
    private final Map<PartKind, Header> headers = new EnumMap<>(PartKind.class);

    private CatalogReader(Path folder, LocalDate asOf) {
        this.folder = folder;
        this.asOf = asOf;
    }

    /**
     * Reads and checks a folder.
     *
     * @param folder the catalogue folder
     * @param asOf the day stock and lead times are counted from
     * @throws IOException where a file is there but can't be read
     */
    public static CatalogReading read(Path folder, LocalDate asOf) throws IOException {
        return new CatalogReader(folder, asOf).reading();
    }

    private CatalogReading reading() throws IOException {
        if (!Files.isDirectory(folder)) {
            faults.add(new Fault(
                    folder.toString(),
                    0,
                    "",
                    "",
                    "is not a folder",
                    "a catalogue folder with rates.json and blanks.csv",
                    "the name is mistyped"));
            return new CatalogReading(null, faults, warnings);
        }
        FaultList ratesFaults = new FaultList(RatesFile.NAME);
        String ratesText = text(RatesFile.NAME, true, ratesFaults, ratesFaults);
        Rates rates = ratesText == null ? null : RatesFile.read(ratesText, ratesFaults);
        faults.addAll(ratesFaults.list());
        // Without rates the files are still read, so that their faults show too.
        Rates used = rates == null ? RatesFile.STAND_IN : rates;
        for (OneKind read : allKinds(used)) {
            take(read);
        }
        if (rates != null) {
            checkHouse("houseFinish", rates.houseFinish(), PartKind.FINISH);
            checkHouse("houseAdhesive", rates.houseAdhesive(), PartKind.ADHESIVE);
        }
        if (rates == null || !faults.isEmpty()) {
            return new CatalogReading(null, faults, warnings);
        }
        Catalog catalog = new Catalog(rates, asOf, ContentHash.of(rates, parts), parts);
        warnings.addAll(CatalogPlausibility.warnings(catalog, lines, headers));
        return new CatalogReading(catalog, faults, warnings);
    }

    /**
     * What a file holds, before its ids are compared with those of others.
     *
     * @param read parts and columns; null where the file is missing
     */
    private record OneKind(PartKind kind, FaultList faults, FaultList warnings, SheetReader.@Nullable Read read) {}

    /** Every file by itself, some at a time, in the order of the kinds. */
    private List<OneKind> allKinds(Rates rates) throws IOException {
        try {
            return Arrays.stream(PartKind.values())
                    .parallel()
                    .map(kind -> oneKind(kind, rates))
                    .toList();
        } catch (UncheckedIOException unreadable) {
            throw unreadable.getCause();
        }
    }

    private OneKind oneKind(PartKind kind, Rates rates) {
        FaultList kindFaults = new FaultList(kind.fileName());
        FaultList kindWarnings = new FaultList(kind.fileName());
        boolean needed = NEEDED.contains(kind);
        try {
            String text = text(kind.fileName(), needed, kindFaults, needed ? kindFaults : kindWarnings);
            SheetReader.Read read =
                    text == null ? null : new SheetReader(rates, kindFaults, kindWarnings).read(Sheet.of(kind), text);
            return new OneKind(kind, kindFaults, kindWarnings, read);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void take(OneKind one) {
        SheetReader.Read read = one.read();
        if (read != null) {
            headers.put(one.kind(), read.header());
            for (SheetReader.Placed placed : read.parts()) {
                keep(placed, one.faults());
            }
            if (NEEDED.contains(one.kind())
                    && read.parts().isEmpty()
                    && one.faults().size() == 0) {
                one.faults()
                        .add(
                                0,
                                "",
                                "",
                                "holds no part",
                                "at least one " + one.kind().word(),
                                "the rows were lost on saving");
            }
        }
        faults.addAll(one.faults().list());
        warnings.addAll(one.warnings().list());
    }

    private void keep(SheetReader.Placed placed, FaultList kindFaults) {
        String id = placed.part().id();
        String file = placed.part().kind().fileName();
        Fault here = new Fault(file, placed.line(), "id", id, "", "", "");
        Fault first = firstUse.putIfAbsent(id, here);
        if (first == null) {
            parts.add(placed.part());
            lines.put(id, placed.line());
        } else {
            kindFaults.add(
                    placed.line(),
                    "id",
                    id,
                    "is already the id of " + first.file() + " line " + first.line(),
                    "ids unique across all files",
                    "the row was copied; write " + id + "-2");
        }
    }

    private void checkHouse(String path, String id, PartKind kind) {
        List<String> ids =
                parts.stream().filter(part -> part.kind() == kind).map(Part::id).toList();
        if (!ids.contains(id) && !ids.isEmpty()) {
            String near = NearWord.to(id, ids);
            faults.add(new Fault(
                    RatesFile.NAME,
                    0,
                    path,
                    id,
                    "is no part of " + kind.fileName(),
                    "the id of a " + kind.word(),
                    near.isEmpty() ? "use " + ids.get(0) : "\"" + near + "\" was meant"));
        }
    }

    private @Nullable String text(String name, boolean needed, FaultList list, FaultList missing) throws IOException {
        Path file = folder.resolve(name);
        if (!Files.isRegularFile(file)) {
            missing.add(
                    0,
                    "",
                    "",
                    needed ? "is missing" : "is missing, so none are offered",
                    "a file of this name in the catalogue folder",
                    near(name));
            return null;
        }
        long size = Files.size(file);
        if (size > Limits.FILE_BYTES) {
            list.add(
                    0,
                    "",
                    size + " bytes",
                    "is too large",
                    "at most " + Limits.FILE_BYTES + " bytes",
                    "it is not a CSV file");
            return null;
        }
        return TextFile.decode(Files.readAllBytes(file));
    }

    private String near(String name) throws IOException {
        List<String> names;
        try (var files = Files.list(folder)) {
            names = files.map(path -> path.getFileName().toString()).sorted().toList();
        }
        String near = NearWord.to(name, names);
        Set<String> ours = new TreeSet<>(List.of(RatesFile.NAME));
        for (PartKind kind : PartKind.values()) {
            ours.add(kind.fileName());
        }
        return near.isEmpty() || ours.contains(near)
                ? name.equals(RatesFile.NAME) ? RatesFields.COPY_FILE : "it was saved under another name or elsewhere"
                : "\"" + near + "\" was meant";
    }
}
