package withy.search;

import java.time.LocalDate;
import java.util.Collections;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Pieces that several jobs share.
 *
 * @param today the day orders are sent
 * @param parts what there is of each part; one that is not named is there without end
 */
public record Supplies(LocalDate today, SortedMap<String, Supply> parts) {
    /** The day of jobs that are in no hurry. */
    static final LocalDate NO_HURRY = LocalDate.MAX;

    public Supplies {
        parts = Collections.unmodifiableSortedMap(new TreeMap<>(parts));
    }

    /**
     * Of one part.
     *
     * @param here pieces on the shelf promised to nobody
     * @param due pieces on order promised to nobody, by the day they are due
     * @param leadDays days until an ordered piece arrives; null = cannot be ordered
     */
    public record Supply(
            int here,
            SortedMap<LocalDate, Integer> due,
            @Nullable Integer leadDays) {
        public Supply {
            due = Collections.unmodifiableSortedMap(new TreeMap<>(due));
        }

        int by(LocalDate day) {
            return here
                    + due.headMap(day).values().stream()
                            .mapToInt(Integer::intValue)
                            .sum()
                    + due.getOrDefault(day, 0);
        }
    }

    /** True where a job that wants its rod by a day can have no more of a part than there is: an order would come too late. */
    boolean scarce(String part, LocalDate wanted) {
        Supply supply = parts.get(part);
        if (supply == null) {
            return false;
        }
        Integer lead = supply.leadDays();
        return lead == null || today.plusDays(lead).isAfter(wanted);
    }

    /** Pieces there are by a day without ordering. */
    int by(String part, LocalDate day) {
        Supply supply = parts.get(part);
        return supply == null ? Integer.MAX_VALUE : supply.by(day);
    }

    /** Days on which more of a part than there is might be wanted. */
    SortedSet<LocalDate> days(Iterable<LocalDate> wanted) {
        SortedSet<LocalDate> days = new TreeSet<>();
        wanted.forEach(days::add);
        return days;
    }
}
