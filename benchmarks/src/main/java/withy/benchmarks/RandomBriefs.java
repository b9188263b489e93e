package withy.benchmarks;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import withy.brief.Brief;
import withy.brief.Brief.Handle;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Lure;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.brief.BriefDraft;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.Part;

/** Seeded briefs: a scenario with other lures, length, reach, classes, priorities, handle and budget. Equal seeds give equal briefs. */
final class RandomBriefs {
    static final long SEED = 20_261_125L;

    private static final int MOST_PRIORITY = 4;
    private static final int MOST_CLASS = 5;

    private RandomBriefs() {}

    /** So many, from the scenarios in turn. */
    static List<Scenario> of(List<Scenario> scenarios, int count) {
        Random random = new Random(SEED);
        List<Scenario> briefs = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Scenario from = scenarios.get(i % scenarios.size());
            briefs.add(new Scenario(from.name() + " " + i, changed(from.brief(), random)));
        }
        return briefs;
    }

    private static Brief changed(Brief brief, Random random) {
        double heavier = 0.75 + random.nextDouble() * 0.6;
        double longer = random.nextInt(5) * 20 - 40;
        double reach = random.nextInt(7) * 5 - 15;
        Lure lure = brief.lure();
        Long budget = brief.budgetMinor();
        BriefDraft draft = new BriefDraft(brief)
                .lure(new Lure(lure.lightestG() * heavier, lure.usualG() * heavier, lure.heaviestG() * heavier))
                .length(brief.lengthMinMm() + longer - 20, brief.lengthMaxMm() + longer + 20)
                .reach(brief.reachMinMm() + reach, brief.reachMaxMm() + reach)
                .classes(
                        Math.max(1, Math.min(MOST_CLASS, brief.durabilityClass() + random.nextInt(3) - 1)),
                        brief.corrosionClass())
                .priorities(priorities(random))
                .handle(handle -> handle(handle, random));
        int money = random.nextInt(3);
        return draft.budget(
                        money == 0 || budget == null
                                ? budget
                                : money == 1 ? null : Long.valueOf(budget * (85 + random.nextInt(60)) / 100))
                .brief();
    }

    private static Map<Objective, Double> priorities(Random random) {
        Map<Objective, Double> priorities = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            priorities.put(objective, (double) random.nextInt(MOST_PRIORITY + 1));
        }
        return priorities;
    }

    private static Handle handle(Handle from, Random random) {
        int form = random.nextInt(4);
        Wish<HandleForm> wish = form == 3
                ? from.form()
                : new Wish<>(form == 0 ? HandleForm.FULL : HandleForm.SPLIT, random.nextBoolean(), 2);
        return new Handle(
                wish,
                from.foreGrip(),
                from.trigger(),
                from.movingHood(),
                from.keeper(),
                from.action(),
                from.mixedGrips());
    }

    /** The brief with so many parts that would be nice to have or to leave out, drawn from the catalogue. */
    static Scenario wishing(Scenario from, Catalog catalog, int wishes) {
        Random random = new Random(SEED + wishes);
        List<Part> parts = new ArrayList<>(new TreeMap<>(catalog.byId()).values());
        List<PartWish> insisted = new ArrayList<>(from.brief().insisted());
        List<PartWish> refused = new ArrayList<>(from.brief().refused());
        for (int i = 0; i < wishes; i++) {
            PartWish wish = new PartWish(parts.get(random.nextInt(parts.size())).id(), false, 1 + random.nextInt(3));
            (i % 2 == 0 ? insisted : refused).add(wish);
        }
        Brief brief = new BriefDraft(from.brief())
                .parts(own -> insisted, own -> refused)
                .brief();
        return new Scenario(from.name(), brief);
    }
}
