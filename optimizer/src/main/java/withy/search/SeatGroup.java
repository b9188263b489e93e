package withy.search;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.catalog.Arbor;
import withy.catalog.Hood;
import withy.catalog.ReelSeat;
import withy.rod.SeatSet;

/**
 * One seat on one stand with every hood that leaves its faces as they are, and every arbor: what stands behind and ahead of it is the same for all, and any of
 * the arbors goes with any of the hoods.
 */
final class SeatGroup {
    private final SeatSet set;
    private final Behind.Rearward rearward;
    private final List<Hooded> hoods;
    private final List<Filling> fillings;
    private @Nullable SeatOption @Nullable [] options;
    private @Nullable AtClass before;
    private long cheapest;

    /**
     * @param set any of them
     * @param rearward what decides of what stands behind it
     * @param hoods the seat with each hood
     * @param fillings what may fill the gap
     */
    SeatGroup(SeatSet set, Behind.Rearward rearward, List<Hooded> hoods, List<Filling> fillings) {
        this.set = set;
        this.rearward = rearward;
        this.hoods = List.copyOf(hoods);
        this.fillings = List.copyOf(fillings);
    }

    /**
     * The seat with one hood.
     *
     * @param hood the hood, or null where it keeps its own
     * @param bare what both add with what holds them where no arbor does
     * @param filled the same with the glue of arbors
     * @param style style points, hundredths
     * @param missed missed wishes, thousandths of a step
     * @param durabilityClass of the weaker of both
     */
    record Hooded(@Nullable Hood hood, Sums bare, Sums filled, long style, long missed, int durabilityClass) {
        private Sums sums(Filling filling) {
            return filling.arbor == null ? bare : filled;
        }

        private long cost(Linear k, Filling filling) {
            return k.of(sums(filling), style, missed) + filling.cost(k);
        }
    }

    /**
     * What fills the gap between seat and blank.
     *
     * @param arbor the arbor, or null for none
     * @param sums what it adds with its glue
     * @param style style points, hundredths
     * @param missed missed wishes, thousandths of a step
     */
    record Filling(@Nullable Arbor arbor, Sums sums, long style, long missed) {
        long cost(Linear k) {
            return k.of(sums, style, missed);
        }
    }

    /**
     * The seat with hood and arbors.
     *
     * @param group of which it is one
     * @param set the parts
     * @param option what they add together
     */
    record SeatOption(SeatGroup group, SeatSet set, Option<ReelSeat> option) {}

    /** What decides of what stands behind it. */
    Behind.Rearward rearward() {
        return rearward;
    }

    /** Any of them. */
    SeatSet set() {
        return set;
    }

    /** Cost of the cheapest of at least one class; {@link TrainGraph#NONE} where there is none. */
    long cheapest(Linear k, int leastClass) {
        AtClass asked = new AtClass(k, leastClass);
        if (!asked.equals(before)) {
            before = asked;
            cheapest = cheapestNow(k, leastClass);
        }
        return cheapest;
    }

    private long cheapestNow(Linear k, int leastClass) {
        List<Filling> worthIt = cheapestFillings(k);
        long least = TrainGraph.NONE;
        for (Hooded hood : hoods) {
            for (int f = 0; hood.durabilityClass >= leastClass && f < worthIt.size(); f++) {
                least = Math.min(least, hood.cost(k, worthIt.get(f)));
            }
        }
        return least;
    }

    /** None, where that may be, and the cheapest arbor. */
    private List<Filling> cheapestFillings(Linear k) {
        List<Filling> worthIt = new ArrayList<>();
        Filling arbor = null;
        for (Filling one : fillings) {
            if (one.arbor == null) {
                worthIt.add(one);
            } else if (arbor == null || one.cost(k) < arbor.cost(k)) {
                arbor = one;
            }
        }
        if (arbor != null) {
            worthIt.add(arbor);
        }
        return worthIt;
    }

    /** Takes the seat with hood and arbors, priced; gives the cost from which on it is of no interest. */
    interface Visitor {
        long option(SeatOption option);
    }

    /** Every one of at least one class that costs less than a limit, which may fall as they come. */
    void below(Linear k, int leastClass, long limit, Visitor visitor) {
        long under = limit;
        List<Filling> worthIt = cheapestFillings(k);
        for (int h = 0; h < hoods.size(); h++) {
            Hooded hood = hoods.get(h);
            long least = TrainGraph.NONE;
            for (int f = 0; hood.durabilityClass >= leastClass && f < worthIt.size(); f++) {
                least = Math.min(least, hood.cost(k, worthIt.get(f)));
            }
            for (int f = 0; least < under && f < fillings.size(); f++) {
                if (hood.cost(k, fillings.get(f)) < under) {
                    SeatOption option = option(h, f);
                    option.option.price(k);
                    under = visitor.option(option);
                }
            }
        }
    }

    private SeatOption option(int h, int f) {
        int place = h * fillings.size() + f;
        @Nullable SeatOption[] all = options;
        if (all == null) {
            all = new SeatOption[hoods.size() * fillings.size()];
            options = all;
        }
        SeatOption known = all[place];
        if (known == null) {
            Hooded hood = hoods.get(h);
            Filling filling = fillings.get(f);
            SeatSet both = new SeatSet(set.seat(), hood.hood, filling.arbor, set.fromMm());
            Option<ReelSeat> option = new Option<>(
                    set.seat(),
                    set.fromMm(),
                    set.seat().lengthMm(),
                    hood.sums(filling).plus(filling.sums),
                    hood.style + filling.style,
                    hood.missed + filling.missed);
            known = new SeatOption(this, both, option);
            all[place] = known;
        }
        return known;
    }
}
