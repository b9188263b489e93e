package withy.explain;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Reel;
import withy.objectives.Solver;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Build;

/** Some build for one of several questions that differ in wishes alone: one for each value that would do of a wish that is dropped. For one thread. */
final class Several {
    private final Inquiry inquiry;
    private final Solver solver;
    private final Watch watch;
    /** With which something was possible. */
    private @Nullable Reel lastReel;

    Several(Inquiry inquiry, Solver solver, Watch watch) {
        this.inquiry = inquiry;
        this.solver = solver;
        this.watch = watch;
    }

    /**
     * A build that answers one of them, or null: which one says nothing. Where no handle goes on with any of their reels, none of them is asked but, where there is hope,
     * the likeliest: what is looked at for it need not be looked at again where a handle goes on with it.
     *
     * @param hopeful true where there is likely one
     */
    @Nullable
    Build any(Set<Query> questions, boolean hopeful) {
        List<Query> ordered = AnyReel.likeliestFirst(questions, lastReel);
        Query loose = questions.size() > 1 ? AnyReel.of(inquiry, questions) : null;
        if (loose == null) {
            return firstOf(ordered);
        }
        Build likely = hopeful ? likely(ordered.get(0)) : null;
        return likely != null || !mayHold(loose) ? likely : firstOf(ordered);
    }

    private @Nullable Build firstOf(List<Query> questions) {
        for (Query question : questions) {
            Build build = inquiry.any(question);
            if (build != null) {
                lastReel = question.brief().reel();
                return build;
            }
        }
        return null;
    }

    /** One with the likeliest reel, or null: one that is soon found, else any where a handle goes on. */
    private @Nullable Build likely(Query question) {
        Query asked = inquiry.asked(question);
        Build soon = asked == null ? null : solver.soon(asked, watch);
        return soon != null ? soon : asked != null && solver.mayHold(asked, watch) ? firstOf(List.of(question)) : null;
    }

    /** True where a build is seen to answer one of them; false says nothing. */
    boolean answered(Build build, Set<Query> questions) {
        return questions.stream().anyMatch(query -> solver.answers(query, build));
    }

    /** Those of them that a build is seen to answer. */
    Set<Query> answeredBy(Build build, Set<Query> questions) {
        Set<Query> answered = new LinkedHashSet<>();
        questions.stream().filter(query -> solver.answers(query, build)).forEach(answered::add);
        return answered;
    }

    private boolean mayHold(Query query) {
        Query asked = inquiry.asked(query);
        return asked != null && solver.mayHold(asked, watch);
    }
}
