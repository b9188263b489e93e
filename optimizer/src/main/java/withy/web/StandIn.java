package withy.web;

import java.util.LinkedHashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.app.Answer;
import withy.app.Propose;
import withy.rod.Build;
import withy.web.Bench.Asked;

/** The best of the builds of the steps before that keeps to what is asked now: it stands in until the best of all is known. */
final class StandIn {
    /** Steps back whose builds may stand in. */
    private static final int MOST_BACK = 4;

    private StandIn() {}

    /** That build as an answer, or null where none keeps to it. */
    static @Nullable Answer of(Pages pages, Step step, Asked asked) {
        Set<Build> known = new LinkedHashSet<>();
        Step back = pages.steps().find(step.parent());
        for (int i = 0; i < MOST_BACK && back != null; i++) {
            Asked then = pages.bench().read(back.brief());
            if (then.brief() != null
                    && then.catalog().hash().equals(asked.catalog().hash())) {
                known.addAll(pages.bench().answers().known(then));
            }
            back = pages.steps().find(back.parent());
        }
        return Propose.known(asked.catalog(), asked.told(), known, pages.bench().units());
    }
}
