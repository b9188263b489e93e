package withy.objectives;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.Wish;
import withy.catalog.Blank;
import withy.catalog.Part;
import withy.catalog.ReelSeat;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * Wishes that are nice to have, in thousandths of a step, added up station by station. A wished part that would be nice is credited where it
 * is used (guides: a share a station), a whole rod never more than once; a part rather not wanted costs at every station it is used.
 */
public final class NiceWishes {
    private final Brief brief;
    private final Map<String, Long> credit = new HashMap<>();
    private final Map<String, Long> cost = new HashMap<>();
    private final long base;

    /** Of a brief. */
    public NiceWishes(Brief brief) {
        this.brief = brief;
        long sum = 0;
        for (Brief.PartWish wish : brief.insisted()) {
            if (!wish.hard()) {
                credit.merge(wish.partId(), milli(wish.steps()), Long::sum);
                sum += milli(wish.steps());
            }
        }
        for (Brief.PartWish wish : brief.refused()) {
            if (!wish.hard()) {
                cost.merge(wish.partId(), milli(wish.steps()), Long::sum);
            }
        }
        this.base = sum;
    }

    /** Missed by a whole rod. */
    public long missedMilliSteps(Rod rod) {
        long sum = layout(rod.setting());
        Part seat = rod.partAt(Station.SEAT);
        sum += seat instanceof ReelSeat reelSeat ? seat(reelSeat) : 0;
        sum += keeper(rod.partAt(Station.KEEPER) != null) + foreGrip(rod.partAt(Station.FORE_GRIP) != null);
        if (credit.isEmpty() && cost.isEmpty()) {
            return sum;
        }
        int guides = rod.setting().guideCount();
        Map<String, Long> twice = new HashMap<>();
        for (Station station : rod.build().choices().keySet()) {
            Part part = rod.partAt(station);
            if (part != null) {
                sum += part(station, part, guides);
                twice.merge(part.id(), share(station, part, guides), Long::sum);
            }
        }
        for (Map.Entry<String, Long> credited : twice.entrySet()) {
            Long due = credit.get(credited.getKey());
            sum += due == null ? 0 : Math.max(0, credited.getValue() - due);
        }
        return sum + part(Station.BLANK, rod.setting().blank(), guides);
    }

    /** Most that the use of wished parts can be credited at one station each. */
    public long mostCredit() {
        return base;
    }

    /** By blank and layout, with everything that is owed to begin with. */
    public long layout(Setting setting) {
        return blank(setting.blank())
                + missed(brief.handle().form(), setting.layout().form());
    }

    /** By the blank alone, with everything that is owed to begin with. */
    public long blank(Blank blank) {
        return base + missed(brief.handle().action(), blank.action());
    }

    /** By a seat. */
    public long seat(ReelSeat seat) {
        return missed(brief.handle().trigger(), seat.trigger())
                + missed(brief.handle().movingHood(), seat.movingHood());
    }

    /** By the presence of a hook keeper. */
    public long keeper(boolean present) {
        return missed(brief.handle().keeper(), present);
    }

    /** By the presence of a fore grip. */
    public long foreGrip(boolean present) {
        return missed(brief.handle().foreGrip(), present);
    }

    /** By a part at a station; a credit is negative. */
    public long part(Station station, Part part, int guideCount) {
        Long plus = cost.get(part.id());
        return (plus == null ? 0 : plus) - share(station, part, guideCount);
    }

    private long share(Station station, Part part, int guideCount) {
        Long due = credit.get(part.id());
        return due == null ? 0 : station.place() == Station.Place.GUIDE ? due / guideCount : due;
    }

    private static <T> long missed(@Nullable Wish<T> wish, T actual) {
        return wish == null || wish.hard() || wish.value().equals(actual) ? 0 : milli(wish.steps());
    }

    private static long milli(double steps) {
        return Math.round(steps * 1000);
    }
}
