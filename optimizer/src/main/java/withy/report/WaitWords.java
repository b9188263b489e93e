package withy.report;

import withy.app.OutAnswer.Waiting;
import withy.explain.Phrases;

/** What waiting for a part that ran out means, in words. */
public final class WaitWords {
    private WaitWords() {}

    /** A sentence or two. */
    public static String of(Waiting waiting) {
        String day = waiting.day();
        String sooner = waiting.sooner();
        if (day == null && sooner == null) {
            return Phrases.of("text.out.noWaiting");
        }
        String first = day == null
                ? ""
                : Phrases.of(waiting.onOrder() ? "text.out.waiting.ordered" : "text.out.waiting", day)
                        + late(waiting.daysLate());
        return sooner == null ? first : (first + " " + Phrases.of("text.out.waiting.sooner", sooner)).strip();
    }

    /** The same after other ways out. */
    static String besides(Waiting waiting) {
        return waiting.possible() ? Phrases.of("text.out.orWait", of(waiting)) : of(waiting);
    }

    /** What follows a day: how late it is, or that the sentence ends. */
    public static String late(long days) {
        return days == 0 ? "." : Phrases.of("text.out.late", days);
    }
}
