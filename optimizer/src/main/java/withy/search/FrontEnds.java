package withy.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Wish;
import withy.catalog.Decal;
import withy.catalog.Keeper;
import withy.catalog.Part;
import withy.rod.Fitter;
import withy.rod.Placed;
import withy.rod.Share;
import withy.rod.Station;

/** Keepers and inscriptions ahead of each front end of a handle, and what they cost at least under one set of prices. */
final class FrontEnds {
    private static final long NONE = TrainGraph.NONE;

    private final Stand stand;
    private final Linear k;
    private final Map<Fitter, Map<Long, Long>> dressed = new IdentityHashMap<>();
    private final Map<Long, Long> undressed = new HashMap<>();

    private final Map<End, List<Option<Keeper>>> keepers = new HashMap<>();
    private final Map<End, List<Option<Decal>>> decals = new HashMap<>();

    FrontEnds(Stand stand, Linear k) {
        this.stand = stand;
        this.k = k;
    }

    /** A front end dressed with one thread. */
    private record End(double frontMm, @Nullable Fitter fitter) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof End that
                    && Double.compare(frontMm, that.frontMm) == 0
                    && Objects.equals(fitter, that.fitter);
        }

        @Override
        public int hashCode() {
            return 31 * Double.hashCode(frontMm) + Objects.hashCode(fitter);
        }
    }

    /** With one thread; without any, a number that holds for all. */
    long cost(@Nullable Fitter dress, double frontMm) {
        if (dress == null) {
            return undressed.computeIfAbsent(Stand.key(frontMm), any -> alone(frontMm));
        }
        Map<Long, Long> of = dressed.computeIfAbsent(dress, any -> new HashMap<>());
        return of.computeIfAbsent(Stand.key(frontMm), any -> {
            long keeper = cheapest(keepersAheadOf(frontMm, dress));
            long decal = cheapest(decalsAheadOf(frontMm, dress));
            return TrainGraph.none(keeper) || TrainGraph.none(decal) ? NONE : keeper + decal;
        });
    }

    private long alone(double frontMm) {
        long keeper = keeperAlone(frontMm);
        long decal = cheapest(decalsAheadOf(frontMm, stand.fitter));
        // finishes differ by less than an inscription weighs
        long least = stand.ground.finishes.size() > 1 ? Math.min(0, decal) : decal;
        long dress = stand.ground.endDress(k, frontMm - stand.setting.footMm());
        return TrainGraph.none(keeper) || TrainGraph.none(decal) ? NONE : keeper + least + dress;
    }

    /** Keepers ahead of a front end, without thread where none is given; the empty choice first where it is allowed. */
    List<Option<Keeper>> keepersAheadOf(double frontMm, @Nullable Fitter fitter) {
        return keepers.computeIfAbsent(new End(frontMm, fitter), any -> {
            List<Option<Keeper>> all = new ArrayList<>();
            Wish<Boolean> wish =
                    stand.ground.handleRule ? stand.ground.brief.handle().keeper() : null;
            boolean must = wish != null && wish.hard() && wish.value();
            boolean mustNot = wish != null && wish.hard() && !wish.value();
            if (stand.stations.optional(Station.KEEPER) && !must) {
                all.add(new Option<>(null, frontMm, 0, Sums.NONE, 0, stand.ground.wishes.keeper(false)));
            }
            for (Keeper keeper : stand.ground.keepers) {
                if (!mustNot && stand.stations.allows(Station.KEEPER, keeper)) {
                    addKeeper(keeper, frontMm, fitter, all);
                }
            }
            return all;
        });
    }

    private void addKeeper(Keeper keeper, double frontMm, @Nullable Fitter fitter, List<Option<Keeper>> to) {
        double x = frontMm + Fitter.KEEPER_AHEAD_MM;
        Placed placed = new Placed(Station.KEEPER, keeper, x, 0);
        stand.ground.rules.onPart(stand.setting, placed, stand.refusal.reset());
        if (!stand.refusal.refused()) {
            Share share = fitter == null ? stand.fitter.keeperAlone(keeper, frontMm) : fitter.keeper(keeper, frontMm);
            int n = stand.setting.guideCount();
            long missed = stand.ground.wishes.keeper(true) + stand.ground.wishes.part(Station.KEEPER, keeper, n);
            to.add(new Option<>(keeper, x, 0, Sums.of(share), 0, missed));
        }
    }

    /** A number no keeper with its thread costs less than at a front end, where weight there is a burden. */
    long keeperAlone(double frontMm) {
        long least = TrainGraph.NONE;
        for (Option<Keeper> option : keepersAheadOf(frontMm, null)) {
            option.price(k);
            least = Math.min(least, option.cost);
        }
        return least;
    }

    /** Inscriptions: one where the brief asks for an inscription, else none. */
    List<Option<Decal>> decalsAheadOf(double frontMm, Fitter fitter) {
        return decals.computeIfAbsent(new End(frontMm, fitter), any -> {
            List<Option<Decal>> all = new ArrayList<>();
            boolean asked = !stand.ground.brief.look().inscription().isEmpty() && !stand.ground.decals.isEmpty();
            Stations stations = stand.stations;
            if (stations.optional(Station.DECAL) && (!asked || stations.empty().contains(Station.DECAL))) {
                all.add(new Option<>(null, frontMm, 0, Sums.NONE, 0, 0));
                return all;
            }
            for (Decal decal : stand.ground.decals) {
                if (stations.allows(Station.DECAL, decal)) {
                    double from = frontMm + Fitter.DECAL_AHEAD_MM;
                    Share share = fitter.decal(decal, frontMm);
                    all.add(Work.option(
                            stand.ground, stand.setting, Station.DECAL, decal, from, decal.widthMm(), share));
                }
            }
            return all;
        });
    }

    private <P extends Part> long cheapest(List<Option<P>> options) {
        long cheapest = NONE;
        for (Option<P> option : options) {
            option.price(k);
            cheapest = Math.min(cheapest, option.cost);
        }
        return cheapest;
    }
}
