package withy.search;

import java.util.Arrays;
import java.util.BitSet;
import withy.rod.SeatSet;

/** Rear grips that may matter behind one seat, the likeliest first, each with a number it and its way on do not cost less than there. */
final class LikelyRears {
    final Behind.Rearward rearward;
    final long under;
    final Joins joins;
    private final Shelf shelf;
    private final Linear k;
    private final Neighbours.Pairs pairs;
    private final int[] cuts;
    private final Ranked ranks;

    LikelyRears(Behind behind, SeatSet set, Behind.Rearward rearward, long under) {
        this.shelf = behind.stand.shelf;
        this.k = behind.k;
        this.rearward = rearward;
        this.under = under;
        this.joins = rearward.joins();
        this.pairs = rearward.pairs();
        long most = k.perStyleCenti() * pairs.most();
        long room = under - behind.rings.least();
        long dear = TrainGraph.none(behind.dearer) ? 0 : behind.dearer;
        double front = set.fromMm() - behind.stand.setting.footMm();
        boolean oneSeat = shelf.seats.length == 1; // it is asked about on every blank
        int n = 0;
        int[] kept = new int[shelf.rears.length];
        long[] floors = new long[shelf.rears.length];
        for (int r = 0; behind.rearRanks.floor(r) + dear - most < room && behind.rearRanks.has(r); r++) {
            int i = behind.rearRanks.at(r);
            Cut cut = shelf.rears[i];
            if (!oneSeat || joins.some(cut)) {
                long on = behind.buttEnd.least(cut);
                if (TrainGraph.none(on)) {
                    continue;
                }
                long floor = cut.fills()
                        ? behind.rearRanks.floor(r)
                        : on
                                + behind.rearMasses.near(
                                        i,
                                        front - shelf.widestCheckMm - cut.lengthMm(),
                                        front - cut.lengthMm(),
                                        k,
                                        behind.armMm);
                long pair = pair(cut);
                if (floor + pair < room) {
                    kept[n] = i;
                    floors[n++] = floor + pair;
                }
            }
        }
        this.cuts = Arrays.copyOf(kept, n);
        this.ranks = new Ranked(Arrays.copyOf(floors, n));
    }

    /** Cost of seat and grip side by side, not above nought. */
    long pair(Cut cut) {
        return -k.perStyleCenti() * pairs.each()[cut.index()];
    }

    boolean has(int rank) {
        return ranks.has(rank);
    }

    int at(int rank) {
        return cuts[ranks.at(rank)];
    }

    long floor(int rank) {
        return ranks.floor(rank);
    }

    /** Rank of the first that is one of these. */
    int first(BitSet match) {
        int rank = 0;
        while (has(rank) && !match.get(shelf.rears[at(rank)].index())) {
            rank++;
        }
        return rank;
    }
}
