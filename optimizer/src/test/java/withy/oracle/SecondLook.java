package withy.oracle;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Style;
import withy.rod.Build;
import withy.rod.Figures;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.rules.Verdict;

/**
 * Compares a build as the product measures and judges it with the second implementation. Tolerances: the product rounds what each station adds to
 * whole milligrams and thousandths of a minor unit, the second look does not.
 */
final class SecondLook {
    private final Catalog catalog;
    private final Brief brief;
    private final Style style;
    private final List<String> differences = new ArrayList<>();

    SecondLook(Catalog catalog, Brief brief) {
        this.catalog = catalog;
        this.brief = brief;
        this.style = new Style(catalog, brief);
    }

    /** Everything the two do not agree on; empty where they do. */
    List<String> differences(Build build) {
        differences.clear();
        Rod rod = Rod.measure(catalog, brief, build);
        SecondRod second = new SecondRod(catalog, brief, build);
        SecondFigures figures = new SecondFigures(second);
        SecondRules rules = new SecondRules(second, figures);
        figures(rod.figures(), figures);
        ObjectiveVector vector = ObjectiveVector.of(rod, style, new NiceWishes(brief));
        SecondStyle look = new SecondStyle(second);
        near("style", vector.styleCenti() / 100.0, look.points(), 0.3);
        near("missed steps", vector.missedMilliSteps() / 1000.0, look.missedSteps(), 0.03);
        int margin = rules.weakestClass() - brief.durabilityClass();
        near("durability", vector.durabilityClasses(), margin, 0);
        Scoring scoring = Scoring.of(brief, catalog.rates());
        double score = look.score(figures, margin);
        near("score", Scoring.steps(scoring.score(vector)), score, 0.15 + Math.abs(score) * 1e-3);
        verdicts(rod, rules, figures);
        return List.copyOf(differences);
    }

    private void figures(Figures first, SecondFigures second) {
        near("weight g", first.weightG(), second.weightG(), 0.03);
        near("tolerance g", first.weightToleranceG(), second.toleranceG(), 0.002);
        near("tip-heavy N·mm", first.tipHeavyNmm(), second.tipHeavyNmm(), 0.05);
        near("balance mm", first.balanceFromReelFootMm(), second.balancePointMm(), 0.05);
        near("swing weight kg·m²", first.swingWeightKgM2(), second.swingWeightKgM2(), 2e-6);
        near("outside N·mm", first.balanceOutsideZoneNmm(), second.outsideNmm(), 0.1);
        near("counterweight g", first.counterweightG(), second.counterweightG(), 0.05);
        near("finished mm", first.finishedLengthMm(), second.finishedMm(), 1e-6);
        near("packed mm", first.packedLengthMm(), second.packedMm(), 1e-6);
        near("reach mm", first.reelToButtMm(), second.reachMm(), 1e-6);
        double price = second.priceMinor().setScale(0, RoundingMode.HALF_UP).doubleValue();
        near("price", first.priceMinor(), price, 1);
    }

    private void near(String what, double first, double second, double tolerance) {
        if (!(Math.abs(first - second) <= tolerance)) {
            differences.add(String.format(Locale.ROOT, "%s: %.6f and %.6f", what, first, second));
        }
    }

    private void verdicts(Rod rod, SecondRules second, SecondFigures figures) {
        Set<String> broken = new TreeSet<>();
        Set<String> warned = new TreeSet<>();
        for (Verdict verdict : Judge.judge(rod, Rulebook.standard())) {
            String check = verdict.rule() + "." + verdict.check();
            if (!verdict.outcome().legal()) {
                broken.add(check);
            } else if (verdict.outcome() == Verdict.Outcome.WARNING) {
                warned.add(check);
            }
        }
        Long budget = brief.budgetMinor();
        boolean atBudget = budget != null
                && figures.priceMinor()
                                .subtract(java.math.BigDecimal.valueOf(budget))
                                .abs()
                                .doubleValue()
                        < 1;
        if (atBudget) {
            broken.remove("budget.price");
            second.broken.remove("budget.price");
        }
        if (second.unsure) {
            for (String check : List.of("guide-train.clearance", "guide-train.turn", "guide-train.spare")) {
                broken.remove(check);
                second.broken.remove(check);
                warned.remove(check);
                second.warned.remove(check);
            }
        }
        same("broken", broken, second.broken);
        same("warned", warned, second.warned);
    }

    private void same(String what, Set<String> first, Set<String> second) {
        if (!first.equals(second)) {
            Set<String> onlyFirst = new TreeSet<>(first);
            onlyFirst.removeAll(second);
            Set<String> onlySecond = new TreeSet<>(second);
            onlySecond.removeAll(first);
            differences.add(what + ": product alone " + onlyFirst + ", second look alone " + onlySecond);
        }
    }
}
