package withy.explain;

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

    /** A build that answers one of them, or null: which one says nothing. Where no handle goes on with any of their reels, none of them is asked. */
    @Nullable
    Build any(Set<Query> questions) {
        Query loose = questions.size() > 1 ? AnyReel.of(inquiry, questions) : null;
        Build held = loose == null ? null : soon(questions);
        if (held != null) {
            return held;
        }
        if (loose != null && !mayHold(loose)) {
            return null;
        }
        for (Query question : AnyReel.likeliestFirst(questions, lastReel)) {
            Build build = inquiry.any(question);
            if (build != null) {
                lastReel = question.brief().reel();
                return build;
            }
        }
        return null;
    }

    /** One with the likeliest reel where it is soon found, or null, which says nothing. */
    private @Nullable Build soon(Set<Query> questions) {
        Query asked = inquiry.asked(AnyReel.likeliestFirst(questions, lastReel).get(0));
        return asked == null ? null : solver.soon(asked, watch);
    }

    /** True where a build is seen to answer one of them; false says nothing. */
    boolean answered(Build build, Set<Query> questions) {
        return questions.stream().anyMatch(query -> solver.answers(query, build));
    }

    private boolean mayHold(Query query) {
        Query asked = inquiry.asked(query);
        return asked != null && solver.mayHold(asked, watch);
    }
}
