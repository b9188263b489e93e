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
 * @param loss what a rod is that misses it: "without a hook keeper, …", "with a fore grip, …"
 */
public record Missed(String field, String words, String loss) {

    /** What a rod has that meets it. */
    String gain() {
        return Phrases.of("whynot.meets", words);
    }

    /** The same beside what a rod is: "with a hook keeper, …". */
    String with() {
        return Phrases.of("whynot.meets.with", words);
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
            String words = words(field, wish.value());
            boolean without = wish.value().equals(false);
            list.add(new Missed(field, words, without ? unwanted(words(field, true)) : lacking(words)));
        }
    }

    private static void part(List<Missed> list, String field, PartWish wish, Rod rod, boolean bad) {
        if (!wish.hard() && rod.build().partIds().contains(wish.partId()) == bad) {
            Part part = rod.setting().catalog().find(wish.partId());
            String name = part == null ? wish.partId() : part.facts().name();
            String words = Phrases.of("demand." + field, name);
            list.add(new Missed(field, words, bad ? unwanted(name) : lacking(words)));
        }
    }

    private static String words(String field, Object value) {
        return Phrases.of("demand." + field + "." + HandleDemands.word(value));
    }

    private static String lacking(String words) {
        return Phrases.of("whynot.misses", words);
    }

    private static String unwanted(String words) {
        return Phrases.of("whynot.misses.not", words);
    }
}
