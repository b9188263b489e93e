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

    /**
     * One objective's priority turned one way.
     *
     * @param way a step of the grid, up or down
     * @param most steps it can be turned
     * @param cross steps to where the opponent's score passes that of the best; it is hardly in the best build before
     */
    private record Turn(Objective objective, double now, double way, long most, long cross) {
        double size() {
            return distance(now, now + way * cross);
        }
    }

    private static double distance(double now, double wins) {
        return Math.abs(wins - now) / (now + 1);
    }

    /**
     * Two of them, the nearer first. Further objectives are looked at only while the opponent may pass sooner there than at those found; another build with the
     * parts may pass sooner still, so the second need not be the second nearest of all: that would take every objective's whole question.
     */
    List<Flip> nearest() {
        List<Turn> turns = new ArrayList<>();
        for (Objective objective : Objective.values()) {
            Turn turn = turn(objective);
            if (turn != null) {
                turns.add(turn);
            }
        }
        turns.sort(Comparator.comparingDouble(Turn::size));
        List<Flip> found = new ArrayList<>();
        for (Turn turn : turns) {
            boolean enough =
                    found.size() >= MOST_PRIORITY_FLIPS && size(found.get(MOST_PRIORITY_FLIPS - 1)) <= turn.size();
            if (!inquiry.stopped() && !enough) {
                Flips.add(found, flip(turn));
                found.sort(Comparator.comparingDouble(PriorityFlips::size));
            }
        }
        return found.subList(0, Math.min(MOST_PRIORITY_FLIPS, found.size()));
    }

    private static double size(Flip flip) {
        return distance(flip.now(), flip.wins());
    }

    /** Raised where the opponent is better, lowered where it is worse; null where neither makes it pass. */
    private @Nullable Turn turn(Objective objective) {
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
        return cross < 0 ? null : new Turn(objective, now, way, most, cross);
    }

    private @Nullable Flip flip(Turn turn) {
        Objective objective = turn.objective;
        double now = turn.now;
        double way = turn.way;
        long wins = Turning.firstFrom(
                turn.cross,
                turn.most,
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
