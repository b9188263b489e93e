package withy.search;

import java.util.Arrays;
import java.util.List;
import withy.rod.Consumables;
import withy.rod.Station;

/** The threads worth looking at on a blank, each with its finish and adhesive: which beats which, and what each is worth to look at. */
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

    /** Those of a blank; one is beaten only where finish and adhesive are the same for all. */
    static Threads of(Ground ground, Site site) {
        List<Consumables> with = site.threads();
        int[] own = new int[with.size()];
        Arrays.setAll(own, t -> t);
        boolean one = with.stream()
                        .map(c -> c.finish().id() + c.adhesive().id())
                        .distinct()
                        .count()
                == 1;
        int[] beaters = one
                ? ground.threadChoice.beaters(
                        site.shape().blank(),
                        with.stream().map(Consumables::thread).toList())
                : own;
        return new Threads(
                with,
                beaters,
                with.stream()
                        .mapToLong(c -> ground.threadChoice.style(site.shape().blank(), c.thread()))
                        .toArray(),
                with.stream()
                        .mapToLong(c -> ground.wishes.part(Station.THREAD, c.thread(), 1))
                        .toArray());
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
