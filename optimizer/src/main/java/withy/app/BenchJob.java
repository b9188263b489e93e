package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.explain.Phrases;
import withy.shop.Job;
import withy.shop.Piece;

/** What the bench needs to know of the job a rod is built for: its pieces, what the scale said of them, and what is not here yet. */
final class BenchJob {
    private BenchJob() {}

    static BenchSheet.Made of(Job.File file, Catalog catalog) {
        Map<String, List<BenchSheet.Bag>> bags = new TreeMap<>();
        boolean weighed = false;
        for (Piece piece : file.pieces()) {
            bags.computeIfAbsent(piece.part(), part -> new ArrayList<>())
                    .add(new BenchSheet.Bag(piece.number(), piece.weightG()));
            weighed |= piece.weightG() != null;
        }
        String predicted = file.job().predicted();
        Job.AsBuilt finished = file.asBuilt();
        return new BenchSheet.Made(
                file.job().id(),
                file.job().name(),
                file.job().wanted(),
                bags,
                waiting(file, catalog),
                weighed && predicted != null
                        ? JobAnswer.foretold(Prediction.read(predicted), file.pieces())
                                .weightOfPiecesG()
                        : null,
                finished == null ? null : finished.weightG(),
                finished == null ? null : finished.balanceMm());
    }

    /** A sentence for each part of the job that is still on order; the blank, which all others are fitted to, first. */
    static List<String> waiting(Job.File file, Catalog catalog) {
        Map<String, @Nullable String> dues = new TreeMap<>();
        for (Piece piece : file.pieces()) {
            if (piece.ordered()) {
                dues.put(piece.part(), piece.due());
            }
        }
        List<String> blank = new ArrayList<>();
        List<String> others = new ArrayList<>();
        dues.forEach((id, due) -> {
            Part part = catalog.find(id);
            boolean fitted = part instanceof Blank;
            String name = part == null ? id : part.facts().name();
            String key = fitted ? "bench.waiting.blank" : "bench.waiting";
            (fitted ? blank : others)
                    .add(due == null ? Phrases.of(key + ".undated", name) : Phrases.of(key, name, due));
        });
        blank.addAll(others);
        return blank;
    }

    /** What to mind before anything is glued to a blank that is not here; empty where it is. */
    static List<String> gluedTooSoon(Job.File file, Catalog catalog) {
        boolean waits = file.pieces().stream()
                .anyMatch(piece -> piece.ordered() && catalog.find(piece.part()) instanceof Blank);
        return waits ? waiting(file, catalog).subList(0, 1) : List.of();
    }
}
