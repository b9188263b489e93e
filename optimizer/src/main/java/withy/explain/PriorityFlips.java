package withy.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.brief.Objective;
import withy.explain.Flip.Kind;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;

/** At which priority of one objective parts would win, the others staying as they are. */
final class PriorityFlips {
    /** Grid of priorities, and as far as one is raised. */
    private static final double PRIORITY_GRID = 0.1;

    private static final double MOST_PRIORITY = 100;

    private static final int MOST_PRIORITY_FLIPS = 2;

    private final Inquiry inquiry;
    private final Finding finding;

    PriorityFlips(Inquiry inquiry, Finding finding) {
        this.inquiry = inquiry;
        this.finding = finding;
    }

    /** Nearest first. */
    List<Flip> nearest() {
        List<Flip> found = new ArrayList<>();
        for (Objective objective : Objective.values()) {
            if (!inquiry.stopped()) {
                Flips.add(found, priority(objective));
            }
        }
        found.sort(Comparator.comparingDouble(flip -> Math.abs(flip.wins() - flip.now()) / (flip.now() + 1)));
        return found.subList(0, Math.min(MOST_PRIORITY_FLIPS, found.size()));
    }

    /** Raised where the opponent is better, lowered where it is worse, to where its score passes that of the best, and on from there. */
    private @Nullable Flip priority(Objective objective) {
        ObjectiveVector first = Objects.requireNonNull(finding.first()).vector();
        ObjectiveVector opponent = Objects.requireNonNull(finding.opponent()).vector();
        long gain = first.loss(objective) - opponent.loss(objective);
        if (gain == 0) {
            return null;
        }
        double now = inquiry.brief().priority(objective);
        double way = gain > 0 ? PRIORITY_GRID : -PRIORITY_GRID;
        long most = Math.round(Math.abs((gain > 0 ? MOST_PRIORITY : 0) - now) / PRIORITY_GRID);
        long cross = Turning.first(most, step -> {
            Scoring scoring = Scoring.of(inquiry.brief(), inquiry.catalog().rates(), with(objective, now + way * step));
            return scoring.score(opponent) <= scoring.score(first);
        });
        if (cross < 0) {
            return null;
        }
        long wins = Turning.firstFrom(
                cross,
                most,
                step -> Flips.wins(
                        inquiry, finding, inquiry.query().withPriorities(with(objective, now + way * step))));
        if (wins < 0) {
            return null;
        }
        double at = Turning.tenth(now + way * wins);
        return new Flip(
                Kind.PRIORITY,
                objective.key(),
                now,
                Turning.tenth(now + way * (wins - 1)),
                at,
                "",
                Phrases.of(
                        "flip.priority",
                        Phrases.of("objective." + objective.key()),
                        Turning.number(at),
                        Turning.number(now)));
    }

    private Map<Objective, Double> with(Objective objective, double value) {
        Map<Objective, Double> priorities = new EnumMap<>(inquiry.brief().priorities());
        priorities.put(objective, Turning.tenth(Math.max(0, value)));
        return priorities;
    }
}
