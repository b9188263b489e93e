package withy.oracle;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.explain.Found;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.oracle.Enumeration.Legal;
import withy.rod.Build;
import withy.rod.Rod;

/** What builds are said to be beside each other, told again. */
final class Compared {
    private Compared() {}

    /** A step of any objective (weight beyond the tolerances too), or a nice wish that only one of them meets. */
    static boolean noticed(SmallShop.Case shop, Found first, Found opponent) {
        Brief brief = shop.query().brief();
        Rod a = opponent.rod();
        Rod b = first.rod();
        double weight = Math.abs(a.figures().weightG() - b.figures().weightG());
        double tolerance =
                Math.hypot(a.figures().weightToleranceG(), b.figures().weightToleranceG());
        double outside =
                Math.abs(a.figures().balanceOutsideZoneNmm() - b.figures().balanceOutsideZoneNmm());
        double swing = Math.abs(a.figures().swingWeightKgM2() - b.figures().swingWeightKgM2());
        double price = Math.abs(a.figures().priceMinor() - b.figures().priceMinor());
        double style = Math.abs(opponent.vector().styleCenti() - first.vector().styleCenti()) / 100.0;
        double classes =
                Math.abs(opponent.vector().durabilityClasses() - first.vector().durabilityClasses());
        double hair = 1 - 1e-9;
        return weight >= brief.step(Objective.WEIGHT) * hair && weight > tolerance
                || outside >= brief.step(Objective.BALANCE) * hair
                || swing >= brief.step(Objective.SWING_WEIGHT) * hair
                || price >= brief.step(Objective.PRICE)
                || style >= brief.step(Objective.STYLE) * hair
                || classes >= brief.step(Objective.DURABILITY)
                || !meets(first, opponent.build())
                || !meets(opponent, first.build());
    }

    /** True where a build misses no nice wish that another meets, told by what each wish alone costs. */
    static boolean meets(Found first, Build opponent) {
        Brief brief = first.rod().brief();
        for (Brief one : OneWish.each(brief)) {
            long mine = new withy.objectives.NiceWishes(one)
                    .missedMilliSteps(Rod.measure(first.rod().setting().catalog(), one, opponent));
            long best = new withy.objectives.NiceWishes(one)
                    .missedMilliSteps(Rod.measure(first.rod().setting().catalog(), one, first.build()));
            if (mine > 0 && best == 0) {
                return false;
            }
        }
        return brief.insisted().stream()
                .map(wish -> Set.of(wish.partId()))
                .noneMatch(part -> holds(first.build(), part) && !holds(opponent, part));
    }

    static boolean better(ObjectiveVector one, ObjectiveVector other) {
        boolean strictly = one.missedMilliSteps() < other.missedMilliSteps();
        for (Objective objective : Objective.values()) {
            if (one.loss(objective) > other.loss(objective)) {
                return false;
            }
            strictly |= one.loss(objective) < other.loss(objective);
        }
        return strictly && one.missedMilliSteps() <= other.missedMilliSteps();
    }

    static long least(List<Legal> builds, Scoring scoring) {
        return builds.stream()
                .mapToLong(one -> scoring.score(one.vector()))
                .min()
                .orElse(Long.MAX_VALUE);
    }

    static boolean holds(Build build, Set<String> parts) {
        Set<String> ids = new HashSet<>(Set.of(build.layout().blankId()));
        build.choices().values().forEach(choice -> ids.add(choice.partId()));
        return ids.containsAll(parts);
    }
}
