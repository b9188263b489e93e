package withy.oracle;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.objectives.NiceWishes;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Style;
import withy.oracle.CpThread.Term;
import withy.rod.Build.Choice;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rod.Station;
import withy.rod.Tariff;
import withy.rules.Refusal;
import withy.rules.Rulebook;

/** What the parts of one layout share in a constraint model: a literal for each part at each place it may have, and what it adds. */
final class CpRod {
    final CpModel model = new CpModel();
    final Catalog catalog;
    final Query query;
    final Brief brief;
    final Rulebook rules;
    final Setting setting;
    final Consumables with;
    final Menu menu;
    final Style style;
    final NiceWishes wishes;
    final Scoring scoring;
    final Tariff tariff;
    final Fitter fitter;
    final CpThread thread;
    final Refusal refusal = new Refusal();
    final List<Piece> pieces = new ArrayList<>();
    private final BooleanSupplier over;

    /**
     * @param with thread, finish and adhesive to choose from; finish and adhesive the same in all
     * @param over asked while the model is stated, which takes minutes on a large catalogue; true ends it with a {@link CancellationException}
     */
    CpRod(Catalog catalog, Query query, Setting setting, List<Consumables> with, BooleanSupplier over) {
        this.over = over;
        this.catalog = catalog;
        this.query = query;
        this.brief = query.brief();
        this.rules = query.rulebook();
        this.setting = setting;
        this.with = with.get(0);
        this.menu = new Menu(catalog, query);
        this.style = new Style(catalog, brief);
        this.wishes = new NiceWishes(brief);
        this.scoring = Scoring.of(brief, catalog.rates(), query.priorities());
        this.tariff = new Tariff(catalog.rates(), brief);
        this.thread = new CpThread(this, with);
        this.fitter = thread.fitter();
    }

    /**
     * One part at one place, or a station left empty.
     *
     * @param literal true where it is chosen
     * @param choice what the build says; null = empty
     * @param part the part; null = empty
     * @param placed where it lies; null = empty
     * @param share what it adds
     * @param count pieces it takes
     */
    record Piece(
            BoolVar literal,
            Station station,
            @Nullable Choice choice,
            @Nullable Part part,
            @Nullable Placed placed,
            Share share,
            int count) {
        boolean empty() {
            return part == null;
        }

        String partId() {
            return part == null ? "" : part.id();
        }
    }

    /** A station left empty, as one way to fill it. */
    Piece empty(Station station) {
        return add(station, null, null, null, Share.NONE, 0);
    }

    Piece add(
            Station station,
            @Nullable Choice choice,
            @Nullable Part part,
            @Nullable Placed placed,
            Share share,
            int count) {
        Piece piece =
                new Piece(model.newBoolVar(station.key() + pieces.size()), station, choice, part, placed, share, count);
        pieces.add(piece);
        return piece;
    }

    /** The same where the share depends on the thread. */
    Piece wrapped(Station station, Choice choice, Part part, Placed placed, Function<Fitter, Share> share) {
        Piece piece = add(station, choice, part, placed, share.apply(fitter), 1);
        thread.wraps(piece, share);
        return piece;
    }

    /** True where the part at its place breaks no rule of its own. */
    boolean fits(Placed placed) {
        rules.onPart(setting, placed, refusal.reset());
        return !refusal.refused();
    }

    /** Sum of the literals of pieces. */
    static LinearExpr sum(List<Piece> some) {
        return LinearExpr.sum(some.stream().map(Piece::literal).toArray(BoolVar[]::new));
    }

    static Map<String, List<Piece>> byPart(List<Piece> some) {
        Map<String, List<Piece>> groups = new TreeMap<>();
        some.forEach(piece ->
                groups.computeIfAbsent(piece.partId(), id -> new ArrayList<>()).add(piece));
        return groups;
    }

    static List<Piece> where(List<Piece> some, Predicate<Piece> wanted) {
        return some.stream().filter(wanted).toList();
    }

    /** These cannot all be chosen: each list is one station's alternatives, of which at most one is true. */
    @SafeVarargs
    final void notTogether(List<Piece>... groups) {
        if (over.getAsBoolean()) {
            throw new CancellationException("ended while the model was stated");
        }
        LinearExprBuilder all = LinearExpr.newBuilder();
        for (List<Piece> group : groups) {
            all.add(sum(group));
        }
        model.addLessOrEqual(all, groups.length - 1);
    }

    /** The seat's literals with what belongs to it. */
    record SeatPiece(
            Piece seat, @Nullable Piece hood, @Nullable Piece arbor, SeatSet set) {}

    /** Whole-rod rules, the budget, the objective; the parts must all be there. */
    void finish(List<SeatPiece> seats) {
        stock();
        must(thread.more());
        LinearExprBuilder cost = LinearExpr.newBuilder();
        LinearExprBuilder ahead = LinearExpr.newBuilder();
        LinearExprBuilder behind = LinearExpr.newBuilder();
        LinearExprBuilder price = LinearExpr.newBuilder();
        LinearExprBuilder coat = LinearExpr.newBuilder();
        Share blank = fitter.blank();
        long near = Math.round(brief.zoneNearMm());
        long far = Math.round(brief.zoneFarMm());
        List<Term> terms = new ArrayList<>(thread.more());
        for (Piece piece : pieces) {
            terms.add(Term.of(piece));
            cost.addTerm(piece.literal, taste(piece));
        }
        for (Term t : terms) {
            cost.addTerm(
                    t.literal(),
                    t.massMg() * scoring.perMg()
                            + t.inertiaMgMm2() * scoring.perMgMm2()
                            + t.costMilli() * scoring.perCostMilli());
            ahead.addTerm(t.literal(), t.momentMgMm() - far * t.massMg());
            behind.addTerm(t.literal(), near * t.massMg() - t.momentMgMm());
            price.addTerm(t.literal(), t.costMilli());
            coat.addTerm(t.literal(), t.finishUl());
        }
        long reelMg = Math.round(brief.reel().massG() * 1000);
        long reelMoment = Math.round(brief.reel().massG() * 1000 * brief.reel().centreOffsetMm());
        ahead.add(blank.momentMgMm() + reelMoment - far * (blank.massMg() + reelMg));
        behind.add(near * (blank.massMg() + reelMg) - blank.momentMgMm() - reelMoment);
        IntVar outside = model.newIntVar(0, 1L << 40, "outside");
        model.addGreaterOrEqual(outside, ahead);
        model.addGreaterOrEqual(outside, behind);
        cost.addTerm(outside, scoring.perOutsideMgMm());
        cost.addTerm(weakest(), -scoring.perClass());
        credits(cost);
        harmony(seats, cost);
        // so little coat stays on the rod that the smallest mix does, and the price of finish is fixed
        long leastMixUl = Math.round(catalog.rates().finishMixMinMl() * 1000);
        model.addLessOrEqual(coat, leastMixUl - blank.finishUl());
        if (brief.budgetMinor() != null) {
            long fixed = blank.costMilli() + tariff.fixedMilli(with, 0);
            model.addLessOrEqual(price, tariff.costWithin(brief.budgetMinor()) - fixed);
        }
        cost.add(fixedScore());
        model.minimize(cost);
    }

    /** What the layout with its finish and adhesive scores before any part: with it the objective is the score itself. */
    private long fixedScore() {
        Share blank = fitter.blank();
        int n = setting.guideCount();
        HandleForm form = setting.layout().form();
        long looks = style.part(setting.blank(), form, Station.BLANK, setting.blank(), n);
        long missed = wishes.layout(setting)
                + wishes.part(Station.BLANK, setting.blank(), n)
                + wishes.part(Station.FINISH, with.finish(), n)
                + wishes.part(Station.ADHESIVE, with.adhesive(), n);
        return blank.massMg() * scoring.perMg()
                + blank.inertiaMgMm2() * scoring.perMgMm2()
                + (blank.costMilli() + tariff.fixedMilli(with, 0)) * scoring.perCostMilli()
                - looks * scoring.perStyleCenti()
                + brief.durabilityClass() * scoring.perClass()
                + missed * scoring.perMilliStep();
    }

    /** What a piece adds to the score by its looks and by wishes. */
    private long taste(Piece piece) {
        if (piece.part == null) {
            return missed(piece.station, false);
        }
        int n = setting.guideCount();
        long looks = style.part(setting.blank(), setting.layout().form(), piece.station, piece.part, n);
        long refused = brief.refused().stream()
                .filter(wish -> !wish.hard() && wish.partId().equals(piece.partId()))
                .mapToLong(wish -> Math.round(wish.steps() * 1000))
                .sum();
        return -looks * scoring.perStyleCenti()
                + refused * scoring.perMilliStep()
                + missed(piece.station, true)
                + (piece.part instanceof withy.catalog.ReelSeat seat ? wishes.seat(seat) * scoring.perMilliStep() : 0);
    }

    private long missed(Station station, boolean present) {
        if (station.equals(Station.KEEPER)) {
            return wishes.keeper(present) * scoring.perMilliStep();
        }
        return station.equals(Station.FORE_GRIP) ? wishes.foreGrip(present) * scoring.perMilliStep() : 0;
    }

    /** The least class of what carries the load. */
    private IntVar weakest() {
        IntVar weakest = model.newIntVar(0, setting.blank().facts().durabilityClass(), "weakest");
        for (Piece piece : pieces) {
            if (piece.part != null && withy.rod.LoadBearing.is(piece.part)) {
                model.addLessOrEqual(weakest, piece.part.facts().durabilityClass())
                        .onlyEnforceIf(piece.literal);
            }
        }
        return weakest;
    }

    /** Wished parts are credited where they are used, never more than once in all. */
    private void credits(LinearExprBuilder cost) {
        for (Brief.PartWish wish : brief.insisted()) {
            if (!wish.hard()) {
                long due = Math.round(wish.steps() * 1000);
                LinearExprBuilder used = LinearExpr.newBuilder();
                for (Piece piece : pieces) {
                    if (piece.partId().equals(wish.partId())) {
                        boolean guide = piece.station.place() == Station.Place.GUIDE;
                        used.addTerm(piece.literal, guide ? due / setting.guideCount() : due);
                    }
                }
                IntVar credit = model.newIntVar(0, due, "credit " + wish.partId());
                model.addLessOrEqual(credit, used);
                cost.addTerm(credit, -scoring.perMilliStep());
            }
        }
    }

    /** Colours of rear grip and seat side by side: one more literal for each pair, which only pays. */
    private void harmony(List<SeatPiece> seats, LinearExprBuilder cost) {
        Map<String, List<Piece>> rears = byPart(where(pieces, p -> p.station.equals(Station.REAR_GRIP) && !p.empty()));
        Map<String, List<Piece>> bySeat =
                byPart(seats.stream().map(SeatPiece::seat).toList());
        bySeat.forEach((seatId, ofSeat) -> rears.forEach((rearId, ofRear) -> {
            Part seat = ofSeat.get(0).part();
            Part rear = ofRear.get(0).part();
            if (seat != null && rear != null) {
                BoolVar both = model.newBoolVar(seatId + "+" + rearId);
                model.addLessOrEqual(both, sum(ofSeat));
                model.addLessOrEqual(both, sum(ofRear));
                cost.addTerm(both, -style.gripAndSeat(rear, seat) * scoring.perStyleCenti());
            }
        }));
    }

    /** Pieces over all stations are no more than can be had. */
    private void stock() {
        if (rules.rules().stream().noneMatch(rule -> rule.code().equals("stock"))) {
            return;
        }
        Map<String, List<Piece>> all = new HashMap<>(byPart(where(pieces, p -> !p.empty())));
        all.forEach((id, some) -> {
            Part part = some.get(0).part();
            if (part != null) {
                withy.rules.Supply supply = withy.rules.Supply.of(part, brief, catalog.asOf());
                if (!supply.orderable()) {
                    LinearExprBuilder used = LinearExpr.newBuilder();
                    some.forEach(piece -> used.addTerm(piece.literal, piece.count));
                    model.addLessOrEqual(used, supply.free());
                }
            }
        });
    }

    /** Insisted parts are in; the cap is at most 8 % of the rod. */
    private void must(List<Term> more) {
        for (Brief.PartWish wish : brief.insisted()) {
            boolean elsewhere = wish.partId().equals(setting.blank().id())
                    || wish.partId().equals(with.finish().id())
                    || wish.partId().equals(with.adhesive().id());
            if (wish.hard() && !elsewhere) {
                model.addGreaterOrEqual(sum(where(pieces, p -> p.partId().equals(wish.partId()))), 1);
            }
        }
        if (!brief.counterweightAsked()) {
            // compared in mg, rounded half up: 100·cap ≤ 8·rod + 50
            LinearExprBuilder share = LinearExpr.newBuilder();
            for (Piece piece : pieces) {
                boolean cap = piece.station.equals(Station.BUTT_CAP) && piece.part != null;
                long mg = piece.part != null && cap ? 100 * piece.part.massMg() : 0;
                share.addTerm(piece.literal, mg - 8 * piece.share.massMg());
            }
            more.forEach(term -> share.addTerm(term.literal(), -8 * term.massMg()));
            model.addLessOrEqual(share, 8 * fitter.blank().massMg() + 50);
        }
    }
}
