package withy.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import withy.brief.Brief;
import withy.brief.BriefDraft;
import withy.units.QuantityText;

/** How long a rod may be, in how many pieces, and how long it is packed. */
final class SizeDemands {
    private static final double SHORTEST_ROD_MM = 900;
    private static final double LONGEST_ROD_MM = 6000;
    private static final double ROD_GRID_MM = 10;
    private static final int MOST_PIECES = 9;

    private final Brief brief;
    private final QuantityText units;
    private final List<Demand> list = new ArrayList<>();

    private SizeDemands(Brief brief, QuantityText units) {
        this.brief = brief;
        this.units = units;
    }

    static List<Demand> of(Brief brief, QuantityText units) {
        SizeDemands demands = new SizeDemands(brief, units);
        demands.length();
        demands.pieces();
        demands.packed();
        return demands.list;
    }

    private void length() {
        add(
                "lengthMm",
                Phrases.of(
                        "demand.lengthMm", units.rodLength(brief.lengthMinMm()), units.rodLength(brief.lengthMaxMm())),
                draft -> draft.length(SHORTEST_ROD_MM, LONGEST_ROD_MM),
                dial(
                        "lengthMm.min",
                        brief.lengthMinMm(),
                        SHORTEST_ROD_MM,
                        (draft, mm) -> draft.length(mm, draft.brief().lengthMaxMm())),
                dial(
                        "lengthMm.max",
                        brief.lengthMaxMm(),
                        LONGEST_ROD_MM,
                        (draft, mm) -> draft.length(draft.brief().lengthMinMm(), mm)));
    }

    private void pieces() {
        String pieces = brief.piecesMin() < brief.piecesMax()
                ? Phrases.of("demand.pieces", brief.piecesMin(), brief.piecesMax())
                : Phrases.of(brief.piecesMax() == 1 ? "demand.pieces.1" : "demand.pieces.one", brief.piecesMax());
        add(
                "pieces",
                pieces,
                draft -> draft.pieces(1, MOST_PIECES),
                count(
                        "pieces.max",
                        brief.piecesMax(),
                        MOST_PIECES,
                        (draft, n) -> draft.pieces(draft.brief().piecesMin(), (int) Math.round(n))),
                count(
                        "pieces.min",
                        brief.piecesMin(),
                        1,
                        (draft, n) ->
                                draft.pieces((int) Math.round(n), draft.brief().piecesMax())));
    }

    private void packed() {
        Double packed = brief.packedMaxMm();
        if (packed != null) {
            add(
                    "packedMaxMm",
                    Phrases.of("demand.packedMaxMm", units.partLength(packed)),
                    draft -> draft.packed(null),
                    dial("packedMaxMm", packed, LONGEST_ROD_MM, BriefDraft::packed));
        }
    }

    private Dial dial(String key, double now, double far, BiConsumer<BriefDraft, Double> set) {
        boolean rod = key.startsWith("lengthMm");
        return new Dial(key, now, far, ROD_GRID_MM, set, rod ? units::rodLength : units::partLength, "mm");
    }

    private static Dial count(String key, double now, double far, BiConsumer<BriefDraft, Double> set) {
        return new Dial(key, now, far, 1, set, n -> Long.toString(Math.round(n)), "");
    }

    private void add(String key, String words, Consumer<BriefDraft> drop, Dial... dials) {
        list.add(new Demand(key, "", words, List.of(drop), List.of(dials), List.of()));
    }
}
