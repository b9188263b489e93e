package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import withy.brief.Brief;
import withy.explain.Breach;
import withy.explain.Finding;
import withy.explain.Finding.Outcome;
import withy.explain.Found;
import withy.oracle.Enumeration.Legal;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Rulebook;

/** Why a part cannot go in, against every build of small catalogues. */
final class RefusedHolds {
    private RefusedHolds() {}

    /** Nothing holds the parts, and of the rules that are said to be broken none can be kept. */
    static void check(String told, SmallShop.Case shop, Finding finding, List<Legal> with) {
        assertEquals(List.of(), with, told);
        Breach breach = finding.breach();
        if (breach == null) {
            return;
        }
        Set<String> broken = new TreeSet<>();
        broken.add(breach.verdict().rule());
        finding.alsoBroken().forEach(also -> broken.add(also.verdict().rule()));
        assertEquals(finding.outcome() == Outcome.NOT_IN_STOCK, broken.equals(Set.of("stock")), told + broken);
        assertTrue(without(shop, finding.parts(), broken), told + ": still nothing without " + broken);
        for (String rule : broken) {
            Set<String> others = new TreeSet<>(broken);
            others.remove(rule);
            assertFalse(without(shop, finding.parts(), others), told + ": " + rule + " need not give way");
        }
        Found opponent = Objects.requireNonNull(finding.opponent(), told);
        boolean measured = Judge.judge(opponent.rod(), Rulebook.standard()).contains(breach.verdict());
        assertTrue(measured, told + ": the judge does not say " + breach.verdict());
        Set<String> kept = new TreeSet<>();
        finding.forcedBy().forEach(wish -> kept.add(wish.field() + " " + wish.about()));
        if (finding.outcome() == Outcome.BREAKS_RULE) {
            forced(
                    told + ": " + breach.verdict() + " for " + kept,
                    shop,
                    finding,
                    kept,
                    breach.verdict().rule());
        }
    }

    /** With nothing asked but the wishes that force it, the build with the parts breaks the rule all the same. */
    private static void forced(String told, SmallShop.Case shop, Finding finding, Set<String> kept, String rule) {
        Build build = Objects.requireNonNull(finding.opponent(), told).build();
        for (Brief brief : Unasked.but(shop.query().brief(), kept)) {
            Rod rod = Rod.measure(shop.catalog(), brief, build);
            boolean broken = Judge.judge(rod, Rulebook.standard()).stream()
                    .anyMatch(one -> one.rule().equals(rule) && !one.outcome().legal());
            assertTrue(broken, told);
        }
    }

    private static boolean without(SmallShop.Case shop, Set<String> parts, Set<String> rules) {
        Rulebook book = Rulebook.standard();
        for (String rule : rules) {
            book = book.without(rule);
        }
        return Anything.answers(shop.catalog(), shop.query().forcing(parts).withRulebook(book));
    }
}
