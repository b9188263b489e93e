package withy.explain;

import java.util.List;
import java.util.function.Consumer;
import withy.brief.Brief;
import withy.brief.BriefDraft;

/**
 * One thing a customer asks that a build must keep.
 *
 * @param key field of the brief
 * @param about part or material it is about, or empty
 * @param words what is asked, as said on the phone
 * @param drops the brief as if it had not been asked: one way or, where any of several values would do, each of them
 * @param dials numbers that can give way
 * @param switches other ways to give way
 */
record Demand(
        String key,
        String about,
        String words,
        List<Consumer<BriefDraft>> drops,
        List<Dial> dials,
        List<Switch> switches) {

    /**
     * Giving way without a number.
     *
     * @param words what is done instead
     * @param say says it
     */
    record Switch(String words, Consumer<BriefDraft> say) {
        Brief said(Brief brief) {
            BriefDraft draft = new BriefDraft(brief);
            say.accept(draft);
            return draft.brief();
        }
    }

    Demand {
        drops = List.copyOf(drops);
        dials = List.copyOf(dials);
        switches = List.copyOf(switches);
    }

    Evidence ground() {
        return Evidence.wish(key);
    }
}
