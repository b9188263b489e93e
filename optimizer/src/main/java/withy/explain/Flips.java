package withy.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.catalog.Blank;
import withy.catalog.Part;
import withy.explain.Finding.Outcome;
import withy.explain.Flip.Kind;
import withy.explain.Repairs.Turn;
import withy.objectives.Solver.Query;
import withy.rod.Build;

/**
 * What would have to change for parts to win. A flip is looked for on a grid; it is told only where solving says that the parts are in the best
 * build at one value and not at the next one back.
 */
final class Flips {
    private Flips() {}

    /** Of a legal opponent that does not win. */
    static List<Flip> of(Inquiry inquiry, Finding finding) {
        List<Flip> list = new ArrayList<>();
        if (finding.outcome() == Outcome.LOSES) {
            list.addAll(new PriorityFlips(inquiry, finding).nearest());
        }
        PartFlips own = new PartFlips(inquiry, finding);
        WishFlips wishes = new WishFlips(inquiry, finding);
        if (finding.parts().size() == 1) {
            Part part = Objects.requireNonNull(
                    inquiry.catalog().find(finding.parts().iterator().next()));
            add(list, own.price(part));
            add(list, own.weight(part));
            if (part instanceof Blank blank) {
                add(list, wishes.heaviest(blank));
                add(list, wishes.usual(blank));
            }
        }
        add(list, wishes.budget());
        add(list, wishes.durability());
        return list;
    }

    /** Of parts no legal build holds: what would let them in, and whether they would then be in the best build. */
    static List<Flip> ofRefused(Inquiry inquiry, Finding finding) {
        if (finding.breach() == null) {
            return List.of();
        }
        List<Demand> demands = Demands.of(inquiry);
        List<List<Demand>> sets = asking(inquiry, finding, demands);
        if (sets.stream().anyMatch(List::isEmpty)) {
            return List.of();
        }
        Query forced = inquiry.query().forcing(finding.parts());
        Conflicts conflicts = new Conflicts(inquiry, forced, demands);
        List<Flip> list = new ArrayList<>();
        for (Turn turn : new Repairs(inquiry, forced, conflicts, demands).singles(sets)) {
            boolean wins = wins(inquiry, finding, inquiry.query().withBrief(turn.brief()));
            Repair.Change change = turn.change();
            list.add(new Flip(
                    Kind.WISH,
                    change.field(),
                    change.from(),
                    change.shy(),
                    change.to(),
                    change.unit(),
                    Phrases.counted(
                            finding.parts().size(),
                            wins ? "flip.lets.wins" : "flip.lets",
                            Phrases.list(List.of(change.words())))));
        }
        return list;
    }

    /** Sets of wishes of which one must give way each: those that make a rule refuse a part outright, and those that force what is told first. */
    private static List<List<Demand>> asking(Inquiry inquiry, Finding finding, List<Demand> demands) {
        List<List<Demand>> sets = new ArrayList<>();
        for (Outright.Own own : Outright.own(inquiry, finding.parts())) {
            sets.add(Outright.asking(inquiry, own.breach().verdict(), own.part(), demands));
        }
        if (finding.outcome() == Outcome.BREAKS_RULE) {
            sets.add(demands.stream()
                    .filter(demand -> finding.forcedBy().contains(Conflict.Asked.of(demand)))
                    .toList());
        }
        return sets;
    }

    static void add(List<Flip> list, @Nullable Flip flip) {
        if (flip != null) {
            list.add(flip);
        }
    }

    /** True where the parts are in the best build for a question. */
    static boolean wins(Inquiry inquiry, Finding finding, Query query) {
        Build build = inquiry.solved(query).build();
        return build != null && build.holds(finding.parts());
    }
}
