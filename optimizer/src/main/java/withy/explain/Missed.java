package withy.explain;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.catalog.Part;
import withy.catalog.ReelSeat;
import withy.rod.Rod;
import withy.rod.Station;

/**
 * A nice wish that a build does not meet.
 *
 * @param field field of the brief
 * @param words as said on the phone
 * @param spare what a rod that misses it has and would be nicer without; null where it lacks something
 */
public record Missed(String field, String words, @Nullable String spare) {

    /** What a rod is that misses them, at most two things: "without a hook keeper or a trigger, …", "with a fore grip, …". */
    static List<String> losses(List<Missed> wishes) {
        return losses(wishes, "");
    }

    /**
     * The same of a rod that is told of by a part of its own.
     *
     * @param own the part's name; it is not named again
     */
    static List<String> losses(List<Missed> wishes, String own) {
        List<String> lacking = new ArrayList<>();
        List<String> spare = new ArrayList<>();
        boolean itself = false;
        for (Missed wish : wishes) {
            if (wish.spare == null) {
                lacking.add(wish.words);
            } else if (wish.spare.equals(own)) {
                itself = true;
            } else {
                spare.add(wish.spare);
            }
        }
        List<String> losses = new ArrayList<>();
        if (!lacking.isEmpty()) {
            losses.add(nice("whynot.misses", lacking, Phrases.either(lacking)));
        }
        if (!spare.isEmpty()) {
            losses.add(Phrases.of("whynot.misses.not", Phrases.list(spare)));
        }
        if (itself) {
            losses.add(Phrases.of("whynot.misses.own"));
        }
        return losses;
    }

    /** What a rod has that meets them: one thing to say, or none. */
    static List<String> gains(List<Missed> wishes) {
        return met("whynot.meets", wishes);
    }

    /** The same beside what a rod is: "with a hook keeper, …". */
    static List<String> with(List<Missed> wishes) {
        return met("whynot.meets.with", wishes);
    }

    private static List<String> met(String key, List<Missed> wishes) {
        List<String> words = wishes.stream().map(Missed::words).toList();
        return words.isEmpty() ? List.of() : List.of(nice(key, words, Phrases.list(words)));
    }

    /** That it would be nice is said once of all of them. */
    private static String nice(String key, List<String> words, String joined) {
        String many = words.size() == 1 ? "whynot.nice" : words.size() == 2 ? "whynot.nice.both" : "whynot.nice.all";
        return Phrases.of(key, joined, Phrases.of(many));
    }

    /** All of a rod, in the order of the brief. */
    static List<Missed> of(Rod rod) {
        List<Missed> list = new ArrayList<>();
        Brief brief = rod.brief();
        Brief.Handle handle = brief.handle();
        wish(list, "handle.form", handle.form(), rod.setting().layout().form());
        wish(list, "handle.action", handle.action(), rod.setting().blank().action());
        Part seat = rod.partAt(Station.SEAT);
        if (seat instanceof ReelSeat reelSeat) {
            wish(list, "handle.trigger", handle.trigger(), reelSeat.trigger());
            wish(list, "handle.movingHood", handle.movingHood(), reelSeat.movingHood());
        }
        wish(list, "handle.keeper", handle.keeper(), rod.partAt(Station.KEEPER) != null);
        wish(list, "handle.foreGrip", handle.foreGrip(), rod.partAt(Station.FORE_GRIP) != null);
        for (PartWish wish : brief.insisted()) {
            part(list, "insisted", wish, rod, false);
        }
        for (PartWish wish : brief.refused()) {
            part(list, "refused", wish, rod, true);
        }
        return list;
    }

    /** Those of one rod that another does not share. */
    static List<Missed> of(Rod rod, Rod other) {
        List<Missed> own = new ArrayList<>(of(rod));
        own.removeAll(of(other));
        return own;
    }

    private static <T> void wish(List<Missed> list, String field, @Nullable Wish<T> wish, T actual) {
        if (wish != null && !wish.hard() && !wish.value().equals(actual)) {
            boolean without = wish.value().equals(false);
            list.add(new Missed(field, words(field, wish.value()), without ? words(field, true) : null));
        }
    }

    private static void part(List<Missed> list, String field, PartWish wish, Rod rod, boolean bad) {
        if (!wish.hard() && rod.build().partIds().contains(wish.partId()) == bad) {
            Part part = rod.setting().catalog().find(wish.partId());
            String name = part == null ? wish.partId() : part.facts().name();
            list.add(new Missed(field, Phrases.of("demand." + field, name), bad ? name : null));
        }
    }

    private static String words(String field, Object value) {
        return Phrases.of("demand." + field + "." + HandleDemands.word(value));
    }
}
