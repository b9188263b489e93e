package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import withy.catalog.Adhesive;
import withy.catalog.Blank;
import withy.catalog.Finish;
import withy.catalog.WrapThread;
import withy.rod.Consumables;
import withy.rod.Station;

/** The threads worth looking at on blanks of one look, each with its finish and adhesive: which beats which, and what each is worth to look at. */
final class Threads {
    private final List<Consumables> with;
    /** For each the one that beats it, or itself. */
    private final int[] beaters;

    private final long[] style;
    private final long[] missed;

    private Threads(List<Consumables> with, int[] beaters, long[] style, long[] missed) {
        this.with = with;
        this.beaters = beaters;
        this.style = style;
        this.missed = missed;
    }

    /**
     * With every finish and adhesive; one is beaten only where there is one of each.
     *
     * @param on the threads worth looking at on a blank, the likeliest first
     */
    static Threads of(Ground ground, Stations stations, Blank blank, List<WrapThread> on) {
        List<Finish> finishes = ground.finishes.stream()
                .filter(finish -> stations.allows(Station.FINISH, finish))
                .toList();
        List<Adhesive> adhesives = ground.adhesives.stream()
                .filter(adhesive -> stations.allows(Station.ADHESIVE, adhesive))
                .toList();
        List<Consumables> with = new ArrayList<>();
        for (WrapThread thread : on) {
            for (Finish finish : finishes) {
                for (Adhesive adhesive : adhesives) {
                    with.add(new Consumables(thread, finish, adhesive));
                }
            }
        }
        int[] beaters = new int[with.size()];
        Arrays.setAll(beaters, t -> t);
        boolean one = finishes.size() == 1 && adhesives.size() == 1;
        ThreadChoice choice = ground.threadChoice;
        return new Threads(
                List.copyOf(with),
                one ? choice.beaters(blank, on) : beaters,
                with.stream().mapToLong(c -> choice.style(blank, c.thread())).toArray(),
                with.stream()
                        .mapToLong(c -> ground.wishes.part(Station.THREAD, c.thread(), 1))
                        .toArray());
    }

    /** All of them, the likeliest first. */
    List<Consumables> all() {
        return with;
    }

    int size() {
        return beaters.length;
    }

    Consumables with(int thread) {
        return with.get(thread);
    }

    /** One that beats this and is itself unbeaten, or this where none does. */
    int beater(int thread) {
        return beaters[thread];
    }

    /** What a thread is worth to look at under some prices, wishes that are missed taken off. */
    long looks(int thread, Linear k) {
        return k.perStyleCenti() * style[thread] - k.perMilliStep() * missed[thread];
    }
}
