package withy.app;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet.MaterialLine;
import withy.app.JobRods.JobRod;
import withy.app.PickSheet.Bin;
import withy.app.PickSheet.Due;
import withy.app.PickSheet.JobLine;
import withy.app.PickSheet.Missing;
import withy.app.PickSheet.Pick;
import withy.app.PickSheet.Supplier;
import withy.app.PickSheet.Take;
import withy.catalog.Part;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.shop.Level;
import withy.shop.Piece;
import withy.shop.Shop;

/** Writes the pick list of a shop: every piece promised to an accepted job and not built in yet. */
public final class PickDesk {
    private static final String PIECES = "pieces";

    private final Workshop workshop;
    private final SortedMap<String, List<Take>> here = new TreeMap<>();
    private final SortedMap<String, String> units = new TreeMap<>();
    private final SortedMap<String, List<Piece>> coming = new TreeMap<>();
    private final List<Missing> missing = new ArrayList<>();
    private final List<Missing> brought = new ArrayList<>();

    private PickDesk(Workshop workshop) {
        this.workshop = workshop;
    }

    /** The list as of now. */
    public static PickSheet of(Workshop workshop) {
        JobRods.Accepted accepted = JobRods.accepted(workshop);
        PickDesk desk = new PickDesk(workshop);
        List<JobLine> jobs = new ArrayList<>();
        for (JobRod one : accepted.rods()) {
            jobs.add(new JobLine(
                    one.file().job().id(),
                    one.file().job().name(),
                    one.file().job().wanted()));
            desk.take(one);
        }
        return new PickSheet(
                Answer.SCHEMA,
                workshop.day().toString(),
                jobs,
                desk.bins(),
                desk.suppliers(),
                desk.missing,
                desk.brought,
                accepted.warnings());
    }

    private void take(JobRod one) {
        long job = one.file().job().id();
        SortedMap<String, List<Integer>> shelf = new TreeMap<>();
        for (Piece piece : one.file().pieces()) {
            if (piece.state().equals("shelf")) {
                shelf.computeIfAbsent(piece.part(), p -> new ArrayList<>()).add(piece.number());
            } else if (piece.ordered()) {
                coming.computeIfAbsent(piece.part(), p -> new ArrayList<>()).add(piece);
            }
        }
        shelf.forEach((part, numbers) -> put(part, PIECES, new Take(job, numbers.size(), numbers)));
        one.file()
                .missing()
                .forEach(hit -> missing.add(new Missing(job, hit.part(), workshop.name(hit.part()), hit.pieces())));
        Rod rod = one.rod();
        for (MaterialLine line :
                Materials.of(rod, new Costing(rod.setting().catalog().rates()))) {
            String part = line.part();
            if (part != null && !line.unit().equals(PIECES)) {
                put(part, line.unit(), new Take(job, Sheets.rounded(line.amount(), 1), List.of()));
            }
        }
        SortedMap<String, Integer> own = new TreeMap<>();
        for (Placed placed : rod.placed().values()) {
            if (one.brief().owned().contains(placed.part().id())) {
                own.merge(placed.part().id(), rod.pieces(placed.station()), Integer::sum);
            }
        }
        own.forEach((part, pieces) -> brought.add(new Missing(job, part, workshop.name(part), pieces)));
    }

    private void put(String part, String unit, Take take) {
        here.computeIfAbsent(part, p -> new ArrayList<>()).add(take);
        units.put(part, unit);
    }

    private List<Bin> bins() {
        SortedMap<String, List<Pick>> byBin = new TreeMap<>(BY_NUMBER);
        here.forEach((part, takes) -> {
            Part known = workshop.lists().find(part);
            byBin.computeIfAbsent(known == null ? "" : known.facts().bin(), bin -> new ArrayList<>())
                    .add(new Pick(
                            part,
                            workshop.name(part),
                            Sheets.rounded(
                                    takes.stream().mapToDouble(Take::amount).sum(), 1),
                            units.getOrDefault(part, PIECES),
                            takes));
        });
        List<Bin> bins = new ArrayList<>();
        byBin.forEach((bin, picks) -> bins.add(new Bin(bin, picks)));
        return bins;
    }

    private List<Supplier> suppliers() {
        if (coming.isEmpty()) {
            return List.of();
        }
        SortedMap<String, List<Due>> bySupplier = new TreeMap<>();
        try (Shop shop = Shop.reading(workshop.folder(), workshop.day())) {
            coming.forEach((part, pieces) -> {
                Part known = workshop.lists().find(part);
                Level level = shop.stock().level(part);
                bySupplier
                        .computeIfAbsent(known == null ? "" : known.facts().supplier(), supplier -> new ArrayList<>())
                        .add(due(part, pieces, level.toOrder()));
            });
        }
        List<Supplier> suppliers = new ArrayList<>();
        bySupplier.forEach((supplier, lines) -> suppliers.add(new Supplier(supplier, lines)));
        return suppliers;
    }

    private Due due(String part, List<Piece> pieces, int toOrder) {
        String last = null;
        List<Long> jobs = new ArrayList<>();
        for (Piece piece : pieces) {
            last = later(last, piece.due());
            Long job = piece.job();
            if (job != null && !jobs.contains(job)) {
                jobs.add(job);
            }
        }
        return new Due(part, workshop.name(part), pieces.size(), toOrder, last, jobs);
    }

    private static @Nullable String later(@Nullable String one, @Nullable String other) {
        return one == null || other != null && other.compareTo(one) > 0 ? other : one;
    }

    /** "drawer 2" before "drawer 10". */
    private static final Comparator<String> BY_NUMBER =
            Comparator.comparing(PickDesk::padded).thenComparing(Comparator.naturalOrder());

    private static String padded(String words) {
        StringBuilder key = new StringBuilder();
        for (String run : words.split("(?<=\\D)(?=\\d)|(?<=\\d)(?=\\D)", -1)) {
            boolean number = !run.isEmpty() && Character.isDigit(run.charAt(0)) && run.length() < 9;
            key.append(number ? "0".repeat(9 - run.length()) + run : run);
        }
        return key.toString();
    }
}
