package withy.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.ReelSeat;
import withy.objectives.Solver.Query;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Rod;
import withy.rod.Share;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Protocol;
import withy.rules.Refusal;
import withy.rules.Rulebook;
import withy.rules.Verdict;

/**
 * One station of a build filled otherwise, everything else as it is: but a seat brings the hood and arbors that go with it, and a blank the best
 * rod that can be built on it, since no other part stays in its place.
 */
final class Swaps {
    private final Inquiry inquiry;
    private final Build build;
    private final Station station;
    private volatile @Nullable Rod measured;

    Swaps(Inquiry inquiry, Build build, Station station) {
        this.inquiry = inquiry;
        this.build = build;
        this.station = station;
    }

    /**
     * What came of a swap.
     *
     * @param part the part, or null where the station is emptied
     * @param found the build with it, legal unless there is a breach; null where the brief alone refuses the part, or no rod can be built on a blank
     * @param breach what is broken, or null
     */
    record Swap(
            @Nullable Part part,
            @Nullable Found found,
            @Nullable Breach breach) {
        boolean legal() {
            return breach == null && found != null;
        }
    }

    /** Every part made for the station but the one that is there, and nothing at all where it may be left empty. */
    List<Swap> all() {
        String now = build.partAt(station);
        List<Swap> swaps = new ArrayList<>(
                of(parts().stream().filter(part -> !part.id().equals(now)).toList()));
        if (now != null && !station.equals(Station.BLANK)) {
            Found found = inquiry.measured(build.without(station));
            Breach breach = Breach.first(found.rod(), inquiry.units());
            if (breach == null) {
                swaps.add(new Swap(null, found, null));
            }
        }
        return swaps;
    }

    /**
     * The builds with every other part made for the station that the brief alone does not refuse, and the one where it is empty: every legal one, and others. Not
     * for blanks.
     */
    List<Build> others() {
        return others(Wanted.ANY);
    }

    /** What is asked of a swap before its rod is measured. */
    interface Wanted {
        Wanted ANY = new Wanted() {};

        /** Of a part at the station, and of a hood at its own that comes with a seat. */
        default boolean part(Station at, Part part) {
            return true;
        }

        /** Of the sum of the rod's shares, where it is known before the rod is. */
        default boolean sums(Share total) {
            return true;
        }
    }

    /** The same, but for those that are not wanted as far as that is soon known. */
    List<Build> others(Wanted wanted) {
        List<Build> others = new ArrayList<>();
        Function<Part, List<Build>> filled = station.equals(Station.SEAT) ? joined(wanted) : this::builds;
        Refusal refusal = new Refusal();
        for (Part part : parts()) {
            if (part.id().equals(build.partAt(station)) || !wanted.part(station, part)) {
                continue;
            }
            Rulebook.standard().onCandidate(inquiry.brief(), inquiry.catalog(), part, refusal.reset());
            if (!refusal.refused()) {
                others.addAll(filled.apply(part));
            }
        }
        others.add(build.without(station));
        return others;
    }

    /** What comes of each of these parts, in their order; they have nothing to do with each other, so every processor takes some. */
    List<Swap> of(List<Part> parts) {
        return parts.parallelStream().map(this::swap).toList();
    }

    /** Every part made for the station. */
    List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        for (PartKind kind : PartKind.values()) {
            inquiry.catalog().all(kind).stream().filter(this::madeFor).forEach(parts::add);
        }
        return parts;
    }

    Swap swap(Part part) {
        Breach own = own(part);
        if (own != null) {
            return new Swap(part, null, own);
        }
        return station.equals(Station.BLANK) ? onBlank(part) : best(part, builds(part));
    }

    /** The rod with a part here that breaks the fewest rules, whatever the brief says of the part; null where the part is not made for the station. */
    @Nullable
    Found nearest(Part part) {
        if (!madeFor(part)) {
            return null;
        }
        Swap swap = best(part, station.equals(Station.BLANK) ? List.of(onSameLayout(part)) : builds(part));
        return swap.found();
    }

    /** What the brief alone refuses a part for, or null. */
    @Nullable
    Breach own(Part part) {
        Protocol protocol = new Protocol();
        Rulebook.standard().onCandidate(inquiry.brief(), inquiry.catalog(), part, protocol);
        for (Verdict verdict : protocol.verdicts(Rulebook.standard())) {
            if (!verdict.outcome().legal()) {
                return Breach.of(verdict, inquiry);
            }
        }
        return null;
    }

    private Swap onBlank(Part blank) {
        Query forced = inquiry.query().forcing(java.util.Set.of(blank.id()));
        Found found = inquiry.best(forced);
        if (found != null) {
            return new Swap(blank, found, null);
        }
        return best(blank, List.of(onSameLayout(blank)));
    }

    private Build onSameLayout(Part blank) {
        Layout l = build.layout();
        return new Build(new Layout(blank.id(), l.reelFootMm(), l.form(), l.guideCount()), build.choices());
    }

    /** The legal one with the best score, else the one that breaks least. */
    private Swap best(Part part, List<Build> builds) {
        Found best = null;
        Found nearest = null;
        int fewest = Integer.MAX_VALUE;
        for (Build one : builds) {
            Found found = inquiry.measured(one);
            int broken = best == null
                    ? Judge.broken(found.rod(), Rulebook.standard()).size()
                    : Judge.legal(found.rod(), Rulebook.standard()) ? 0 : fewest;
            if (broken == 0) {
                boolean better = best == null || inquiry.score(found.vector()) < inquiry.score(best.vector());
                best = better ? found : best;
            } else if (broken < fewest) {
                fewest = broken;
                nearest = found;
            }
        }
        if (best != null) {
            return new Swap(part, best, null);
        }
        Found miss = Objects.requireNonNull(nearest);
        return new Swap(part, miss, Breach.first(miss.rod(), inquiry.units()));
    }

    private List<Build> builds(Part part) {
        if (part instanceof ReelSeat seat) {
            return seats().of(seat);
        }
        if (part instanceof Grip grip) {
            List<Build> cuts = new ArrayList<>();
            for (double cut : cuts(grip)) {
                cuts.add(build.with(station, new Choice(part.id(), cut)));
            }
            return cuts;
        }
        return List.of(build.with(station, Choice.of(part.id())));
    }

    /** As long as the grip that is there, and as sold. */
    private List<Double> cuts(Grip grip) {
        if (build.layout().form() == HandleForm.FULL && station.equals(Station.REAR_GRIP)) {
            return List.of(0.0);
        }
        Choice now = build.choices().get(station);
        Part there = now == null ? null : inquiry.catalog().find(now.partId());
        double length = now == null ? 0 : now.cutMm() > 0 ? now.cutMm() : there instanceof Grip g ? g.lengthMm() : 0;
        boolean cuttable = length >= grip.shortestMm() && length < grip.lengthMm() && length % Layout.GRID_MM == 0;
        double shortest = Math.ceil(grip.shortestMm() / Layout.GRID_MM) * Layout.GRID_MM;
        List<Double> cuts = new ArrayList<>(List.of(0.0));
        if (cuttable) {
            cuts.add(length);
        }
        if (shortest < grip.lengthMm()) {
            cuts.add(shortest);
        }
        return cuts;
    }

    private Function<Part, List<Build>> joined(Wanted wanted) {
        SeatSwaps seats = seats();
        return part -> seats.joined((ReelSeat) part, wanted);
    }

    private SeatSwaps seats() {
        Rod known = measured;
        if (known == null) {
            known = inquiry.measured(build).rod();
            measured = known;
        }
        return new SeatSwaps(inquiry, known);
    }

    private boolean madeFor(Part part) {
        return switch (station.place()) {
            case BUTT_CAP -> part.kind() == PartKind.BUTT_CAP;
            case BUTT_GRIP -> part instanceof Grip grip && grip.place() == Grip.Place.BUTT;
            case FORE_GRIP -> part instanceof Grip grip && grip.place() == Grip.Place.FORE;
            case REAR_GRIP -> part instanceof Grip grip && grip.place() == rear();
            case REAR_CHECK, FORE_CHECK, WINDING_CHECK -> part.kind() == PartKind.CHECK;
            case SEAT -> part.kind() == PartKind.REEL_SEAT;
            case HOOD -> part.kind() == PartKind.HOOD;
            case SEAT_ARBORS -> part.kind() == PartKind.ARBOR;
            case KEEPER -> part.kind() == PartKind.KEEPER;
            case GUIDE -> part.kind() == PartKind.GUIDE;
            case TIP_TOP -> part.kind() == PartKind.TIP_TOP;
            case THREAD -> part.kind() == PartKind.THREAD;
            case FINISH -> part.kind() == PartKind.FINISH;
            case ADHESIVE -> part.kind() == PartKind.ADHESIVE;
            case DECAL -> part.kind() == PartKind.DECAL;
            case BLANK -> part.kind() == PartKind.BLANK;
        };
    }

    private Grip.Place rear() {
        return build.layout().form() == HandleForm.FULL ? Grip.Place.FULL : Grip.Place.REAR;
    }

    /** Legal ones by the brief's score, best first; then the others by the rule that refuses them. */
    Comparator<Swap> order() {
        return Comparator.comparing((Swap swap) -> !swap.legal())
                .thenComparingLong(this::score)
                .thenComparing(swap ->
                        swap.breach() == null ? "" : swap.breach().verdict().rule())
                .thenComparing(swap -> swap.part() == null ? "" : swap.part().id());
    }

    private long score(Swap swap) {
        Found found = swap.found();
        return swap.breach() == null && found != null ? inquiry.score(found.vector()) : 0;
    }
}
