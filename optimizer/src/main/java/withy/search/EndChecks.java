package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import withy.catalog.Check;

/** Checks that end a handle at one front end or another of a stand, under one set of prices. */
final class EndChecks {
    private final Stand stand;
    private final Linear k;
    private final Ranked ranks;
    private final long keeperFloor;
    private final Map<Long, Sorted> sorted = new HashMap<>();
    private final Map<Long, Fitting<Check>> wanted = new HashMap<>();

    /**
     * @param ranks what each costs at least wherever it stands
     * @param keeperFloor a number that what stands ahead costs no less than
     */
    EndChecks(Stand stand, Linear k, Ranked ranks, long keeperFloor) {
        this.stand = stand;
        this.k = k;
        this.ranks = ranks;
        this.keeperFloor = keeperFloor;
    }

    /** What was found below a limit. */
    private record Sorted(List<Option<Check>> list, long under) {}

    /** Those that go on at a place and may cost less than a limit with what stands ahead, priced, the cheapest first. */
    List<Option<Check>> below(double fromMm, long under) {
        long key = Stand.key(fromMm);
        Sorted known = sorted.get(key);
        if (known == null || known.under < under) {
            List<Option<Check>> list = new ArrayList<>();
            for (int c = 0; ranks.has(c) && ranks.floor(c) + keeperFloor < under; c++) {
                Option<Check> check = stand.endCheck(ranks.at(c), fromMm);
                if (check != null) {
                    check.price(k);
                    list.add(check);
                }
            }
            list.sort(Comparator.comparingLong(check -> check.cost));
            known = new Sorted(list, under);
            sorted.put(key, known);
        }
        return known.list;
    }

    /** Those that go on at a place, looked at as far as they are wanted. */
    Fitting<Check> wanted(double fromMm) {
        return wanted.computeIfAbsent(
                Stand.key(fromMm), any -> new Fitting<>(ranks, k, i -> stand.endCheck(i, fromMm), i -> i));
    }
}
