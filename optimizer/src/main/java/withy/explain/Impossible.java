package withy.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.objectives.Solver.Query;

/**
 * Why nothing at all can be built, and what would have to give way.
 *
 * @param wishesAreToBlame false where the catalogue holds nothing that fits together even without any wish
 * @param conflicts smallest sets of wishes that cannot be kept together, smallest first
 * @param allConflicts true where there are no other such sets
 * @param repairs cheapest first
 */
public record Impossible(
        boolean wishesAreToBlame, List<Conflict> conflicts, boolean allConflicts, List<Repair> repairs) {
    private static final Set<String> BODILY = Set.of("reel", "hand", "reachMm");

    public Impossible {
        conflicts = List.copyOf(conflicts);
        repairs = List.copyOf(repairs);
    }

    /** Of the brief as it is. To be asked only where no build is legal. */
    public static Impossible of(Inquiry inquiry) {
        return of(inquiry, inquiry.query(), Conflicts.MOST);
    }

    /** Of a question about the brief, such as one that forces a part. */
    static Impossible of(Inquiry inquiry, Query question, int mostSets) {
        List<Demand> demands = Demands.of(inquiry);
        Conflicts conflicts = new Conflicts(inquiry, question, demands);
        if (!conflicts.possibleKeeping(Set.of())) {
            return new Impossible(false, List.of(), true, List.of());
        }
        Conflicts.Sets sets = conflicts.find(mostSets);
        List<Conflict> told = new ArrayList<>();
        for (List<Demand> set : sets.sets()) {
            if (conflicts.holds(set)) {
                told.add(told(inquiry, question, set, demands));
            }
        }
        List<Repair> repairs = new Repairs(inquiry, question, conflicts, demands).find(sets.sets());
        return new Impossible(true, told, sets.all(), repairs);
    }

    private static Conflict told(Inquiry inquiry, Query question, List<Demand> set, List<Demand> demands) {
        Found nearest = nearest(inquiry, question, set, demands);
        Breach breach = nearest == null ? null : Breach.first(nearest.rod(), inquiry.units());
        List<String> words = set.stream().map(Demand::words).toList();
        String key = set.size() == 1 ? "conflict.one" : set.size() == 2 ? "conflict.two" : "conflict.more";
        String sentence = Phrases.of(key, Phrases.list(words));
        return new Conflict(set.stream().map(Conflict.Asked::of).toList(), sentence, breach, nearest);
    }

    /**
     * The best build with the last wish of a set given up, or the cheapest where that is the budget, measured for a brief that keeps the set. As many of the other wishes are kept as can be:
     * all of them, or what tackle and body ask, or none.
     */
    private static @Nullable Found nearest(Inquiry inquiry, Query question, List<Demand> set, List<Demand> demands) {
        Demand last = set.get(set.size() - 1);
        boolean money = last.key().equals("budgetMinor");
        List<Demand> others = demands.stream().filter(d -> !set.contains(d)).toList();
        List<Demand> loose =
                others.stream().filter(d -> !BODILY.contains(d.key())).toList();
        for (List<Demand> dropped : List.of(List.<Demand>of(), loose, others)) {
            for (Brief kept : Demands.without(inquiry.brief(), dropped)) {
                for (Brief without : Demands.without(kept, List.of(last))) {
                    Query asked = question.withBrief(without);
                    if (inquiry.possible(asked)) {
                        Found found = money ? Repairs.cheapest(inquiry, asked) : inquiry.best(asked);
                        return found == null ? null : inquiry.measuredFor(kept, found.build());
                    }
                }
            }
        }
        return null;
    }
}
