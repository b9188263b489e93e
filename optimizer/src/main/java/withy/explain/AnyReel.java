package withy.explain;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Reel;
import withy.brief.BriefDraft;
import withy.objectives.Solver.Query;

/** One question in the place of several that are the same but for the reel: what not even that can be built is not worth asking for with each. */
final class AnyReel {
    private AnyReel() {}

    /** The question for whatever reel; null where they differ in more. */
    static @Nullable Query of(Inquiry inquiry, Set<Query> questions) {
        Query one = questions.iterator().next();
        Reel reel = one.brief().reel();
        for (Query other : questions) {
            BriefDraft same = new BriefDraft(other.brief());
            same.reel(reel);
            if (!other.withBrief(same.brief()).equals(one)) {
                return null;
            }
        }
        return one.withRulebook(inquiry.rulebooks().anyReel(one.rulebook()));
    }

    /** Those with one reel before the others. */
    static List<Query> likeliestFirst(Set<Query> questions, @Nullable Reel likely) {
        return questions.stream()
                .sorted(Comparator.comparing(
                        (Query question) -> !question.brief().reel().equals(likely)))
                .toList();
    }
}
