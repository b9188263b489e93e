package withy.shop;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A customer's rod from wish to finished rod.
 *
 * @param id its number
 * @param name short name of the commission
 * @param state how far it is
 * @param brief the brief as JSON, nothing left open
 * @param wanted day it is wanted, or null
 * @param build the accepted build as JSON, or null
 * @param glued stations that are glued or wrapped
 * @param predicted what was foretold of the rod when its build was accepted, as JSON, or null
 * @param revision changes with every write; a write on an older one is refused
 */
public record Job(
        long id,
        String name,
        State state,
        String brief,
        @Nullable String wanted,
        @Nullable String build,
        Set<String> glued,
        @Nullable String predicted,
        int revision) {
    public Job {
        glued = Set.copyOf(glued);
    }

    /** How far a job is. */
    public enum State {
        NEW,
        OFFERED,
        ACCEPTED,
        BUILT,
        WEIGHED,
        CLOSED,
        CANCELLED;

        /** The word in files. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        static State of(String word) {
            return valueOf(word.toUpperCase(Locale.ROOT));
        }
    }

    /** True while its pieces can still be chosen again. */
    public boolean open() {
        return state == State.NEW || state == State.OFFERED || state == State.ACCEPTED;
    }

    /**
     * An offer as it was given.
     *
     * @param id its number
     * @param day day it was given
     * @param catalogHash hash of lists and memory at that time
     * @param answer the answer as JSON
     * @param shown the answer as it was shown
     * @param paper the offer as it is printed, as JSON; null where it was given before papers were kept
     * @param ended day it was withdrawn or let lapse, or null
     * @param lapsed true where it ended since its day was over
     */
    public record Offer(
            long id,
            String day,
            String catalogHash,
            String answer,
            String shown,
            @Nullable String paper,
            @Nullable String ended,
            boolean lapsed) {}

    /**
     * One line of its history.
     *
     * @param day day
     * @param what what was done
     * @param note in words
     */
    public record Event(String day, String what, String note) {}

    /**
     * The finished rod on scale and balance.
     *
     * @param weightG g, without reel
     * @param balanceMm balance point with reel, mm ahead of the reel foot, or null
     */
    public record AsBuilt(double weightG, @Nullable Double balanceMm) {}

    /**
     * All of a job.
     *
     * @param job the job
     * @param offers its offers, oldest first
     * @param pieces pieces promised to it or built into it
     * @param missing parts whose promised pieces were lost
     * @param history what was done, oldest first
     * @param asBuilt the finished rod, or null
     */
    public record File(
            Job job,
            List<Offer> offers,
            List<Piece> pieces,
            List<Change.Hit> missing,
            List<Event> history,
            @Nullable AsBuilt asBuilt) {
        public File {
            offers = List.copyOf(offers);
            pieces = List.copyOf(pieces);
            missing = List.copyOf(missing);
            history = List.copyOf(history);
        }
    }
}
