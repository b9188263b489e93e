package withy.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.BriefDraft;
import withy.brief.Objective;
import withy.explain.Demand.Switch;
import withy.explain.Repair.Change;
import withy.objectives.Solver.Query;
import withy.rod.Build;

/**
 * The least that must give way so that something can be built: one wish, or two where one is not enough. Each is solved again with the change, and
 * with a change one step smaller, which must not do.
 */
final class Repairs {
    private static final int MOST = 6;

    /** Days that count as much as giving a wish up. ASSUMED. */
    private static final double MONTH_DAYS = 30;

    private final Inquiry inquiry;
    private final Query question;
    private final Conflicts conflicts;
    private final List<Demand> demands;

    Repairs(Inquiry inquiry, Query question, Conflicts conflicts, List<Demand> demands) {
        this.inquiry = inquiry;
        this.question = question;
        this.conflicts = conflicts;
        this.demands = demands;
    }

    /**
     * A brief with one thing said otherwise.
     *
     * @param size how much it asks of the customer: 1 for giving a wish up
     */
    record Turn(Brief brief, Change change, double size) {}

    /** Cheapest first. */
    List<Repair> find(List<List<Demand>> sets) {
        List<Repair> repairs = new ArrayList<>();
        singles(sets).forEach(turn -> add(repairs, List.of(turn)));
        if (repairs.isEmpty()) {
            pairs(sets, repairs);
        }
        repairs.sort(Comparator.comparingDouble(Repair::size));
        return List.copyOf(repairs.subList(0, Math.min(MOST, repairs.size())));
    }

    /** Every way in which one wish can give way, cheapest first. */
    List<Turn> singles(List<List<Demand>> sets) {
        List<Turn> turns = new ArrayList<>();
        for (Demand demand : demands) {
            if (hits(sets, demand) && conflicts.possibleWithout(Set.of(demands.indexOf(demand)))) {
                turns.addAll(turns(inquiry.brief(), demand));
            }
        }
        turns.sort(Comparator.comparingDouble(Turn::size));
        return List.copyOf(turns.subList(0, Math.min(MOST, turns.size())));
    }

    private static boolean hits(List<List<Demand>> sets, Demand... any) {
        return sets.stream().allMatch(set -> List.of(any).stream().anyMatch(set::contains));
    }

    private void pairs(List<List<Demand>> sets, List<Repair> repairs) {
        for (int i = 0; i < demands.size(); i++) {
            for (int j = i + 1; j < demands.size() && !inquiry.stopped(); j++) {
                Demand one = demands.get(i);
                Demand other = demands.get(j);
                Set<Integer> both = new TreeSet<>(Set.of(i, j));
                if (repairs.size() < MOST && hits(sets, one, other) && conflicts.possibleWithout(both)) {
                    pair(one, other, repairs);
                }
            }
        }
    }

    /** The first gives way as far as it must with the second given up, then the second as far as it must. */
    private void pair(Demand one, Demand other, List<Repair> repairs) {
        for (Brief without : Demands.without(inquiry.brief(), List.of(other))) {
            for (Turn first : turns(without, one)) {
                for (Turn second : turns(reapplied(one, first), other)) {
                    add(repairs, List.of(first, second));
                    return;
                }
            }
        }
    }

    /** The change found with another wish given up, said in the brief that keeps that wish. */
    private Brief reapplied(Demand demand, Turn turn) {
        for (Dial dial : demand.dials()) {
            if (demand.key().equals(turn.change.field()) && dial.key().equals(turn.change.knob())) {
                return dial.turned(inquiry.brief(), turn.change.to());
            }
        }
        for (Switch other : demand.switches()) {
            if (other.words().equals(turn.change.words())) {
                return other.said(inquiry.brief());
            }
        }
        return inquiry.brief();
    }

    private void add(List<Repair> repairs, List<Turn> turns) {
        Turn last = turns.get(turns.size() - 1);
        Found build = inquiry.bestFor(question.withBrief(last.brief));
        if (build == null) {
            return;
        }
        List<String> words = turns.stream().map(turn -> turn.change.words()).toList();
        double size = turns.stream().mapToDouble(Turn::size).sum();
        repairs.add(
                new Repair(turns.stream().map(Turn::change).toList(), Phrases.list(words), size, build, last.brief));
    }

    /** Every way one wish can give way so that this brief can be met. */
    private List<Turn> turns(Brief brief, Demand demand) {
        List<Turn> turns = new ArrayList<>();
        for (Dial dial : demand.dials()) {
            Turn turn = turned(brief, demand, dial);
            if (turn != null) {
                turns.add(turn);
            }
        }
        for (Switch other : demand.switches()) {
            Brief said = other.said(brief);
            if (possible(said)) {
                Change change = new Change(
                        demand.key(), demand.about(), "", Double.NaN, Double.NaN, Double.NaN, "", other.words());
                turns.add(new Turn(said, change, 1));
            }
        }
        return turns;
    }

    /** The dial turned no further than it must be, or null where no turn is enough. */
    private @Nullable Turn turned(Brief brief, Demand demand, Dial dial) {
        long least = least(brief, dial);
        if (least < 0) {
            return null;
        }
        double to = dial.at(least);
        String words = Phrases.of(
                key(dial, to),
                dial.print().apply(Math.abs(to - dial.now())),
                dial.print().apply(to),
                dial.print().apply(dial.now()));
        double size = dial.unit().equals("days") ? to / MONTH_DAYS : Math.abs(to - dial.now()) / Math.abs(dial.now());
        Change change =
                new Change(demand.key(), "", dial.key(), dial.now(), to, dial.at(least - 1), dial.unit(), words);
        return new Turn(dial.turned(brief, to), change, size);
    }

    /** One of something is said otherwise than several. */
    private static String key(Dial dial, double to) {
        boolean oneDay = dial.unit().equals("days") && to - dial.now() == 1;
        boolean onePiece = dial.key().startsWith("pieces") && to == 1;
        return "repair." + (onePiece ? "pieces.1" : dial.key() + (oneDay ? ".one" : ""));
    }

    private long least(Brief brief, Dial dial) {
        long enough = dial.steps();
        if (enough == 0 || !possible(dial.turned(brief, dial.far()))) {
            return -1;
        }
        if (dial.key().equals("budgetMinor")) {
            return leastMoney(brief, dial);
        }
        long tooLittle = 0;
        while (enough - tooLittle > 1) {
            long middle = (enough + tooLittle) >>> 1;
            if (possible(dial.turned(brief, dial.at(middle)))) {
                enough = middle;
            } else {
                tooLittle = middle;
            }
        }
        return enough;
    }

    /**
     * From the price of the cheapest build down, in growing steps, each build met telling a price that is enough; then by halves. Where the cheapest is
     * proven one question is asked: whether a little less is too little.
     */
    private long leastMoney(Brief brief, Dial dial) {
        long now = Math.round(dial.now());
        Found cheapest = cheapest(inquiry, question.withBrief(brief));
        long price =
                cheapest == null ? Long.MAX_VALUE : cheapest.rod().figures().priceMinor();
        long enough = Math.min(dial.steps(), price - now);
        long tooLittle = 0;
        long step = 1;
        while (enough - tooLittle > 1) {
            long less = Math.max(enough - step, (enough + tooLittle) >>> 1);
            Brief said = dial.turned(brief, dial.at(less));
            Build some = inquiry.any(question.withBrief(said));
            if (some == null) {
                tooLittle = less;
            } else {
                long met = inquiry.measuredFor(said, some).rod().figures().priceMinor();
                enough = Math.max(tooLittle + 1, Math.min(less, met - now));
                step *= 2;
            }
        }
        return enough;
    }

    /** The cheapest build, whatever the budget; null where there is none. */
    static @Nullable Found cheapest(Inquiry inquiry, Query question) {
        Brief free = new BriefDraft(question.brief()).budget(null).brief();
        return inquiry.bestFor(question.withBrief(free).withPriorities(Inquiry.only(Objective.PRICE)));
    }

    private boolean possible(Brief brief) {
        return inquiry.possible(question.withBrief(brief));
    }
}
