package withy.explain;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.objectives.Style;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/**
 * A world of few builds: all that can be put together from a handful of choices on the fixture's rod. What is best among them is found by measuring
 * and judging each, so that explanations can be held against the list itself in no time.
 */
final class FewBuilds {
    static final QuantityText METRIC = new QuantityText(UnitSystem.METRIC);
    private final Fixtures fixture;
    private List<Build> builds;

    private FewBuilds(Fixtures fixture) {
        this.fixture = fixture;
        this.builds = List.of(fixture.build());
    }

    /** One build, the fixture's. */
    static FewBuilds of(Fixtures fixture) {
        return new FewBuilds(fixture);
    }

    /**
     * Two blanks, caps, seats and keepers in every combination, and parts that never go in. Light parts are dear; the gilded cap is the cap again, but dear;
     * the twin is the cap again at its price; the sold cap is lightest of all and comes after the day; the loose tip, far too wide, is in none of them yet.
     */
    static FewBuilds shop() {
        Fixtures f = Fixtures.legal();
        f.copy("cap", "cap-light").part("cap-light", "facts.measuredG", null).part("cap-light", "facts.weightG", 1.0);
        f.part("cap-light", "facts.priceMinor", 1_900);
        f.copy("cap", "cap-gilded").part("cap-gilded", "facts.priceMinor", 8_000);
        f.copy("cap", "cap-twin");
        f.copy("cap", "cap-sold")
                .part("cap-sold", "facts.stock", 0)
                .part("cap-sold", "facts.weightG", 0.5)
                .part("cap-sold", "facts.leadDays", 45);
        f.copy("seat", "seat-light")
                .part("seat-light", "facts.weightG", 9.0)
                .part("seat-light", "facts.priceMinor", 9_500);
        f.copy("blank", "blank-light").part("blank-light", "facts.weightG", 41.0);
        f.part("blank-light", "facts.priceMinor", 26_000);
        f.copy("tip-top", "tip-loose").part("tip-loose", "tubeMm", 3.4);
        for (String id :
                List.of("cap-light", "cap-gilded", "cap-twin", "cap-sold", "seat-light", "blank-light", "tip-loose")) {
            f.part(id, "facts.model", id);
        }
        f.brief("budgetMinor", 90_000L);
        return new FewBuilds(f)
                .onBlanks("blank-light")
                .or(Station.BUTT_CAP, "cap-light", "cap-gilded", "cap-twin", "cap-sold")
                .or(Station.SEAT, "seat-light")
                .or(Station.KEEPER, "keeper");
    }

    Brief brief() {
        return fixture.theBrief();
    }

    Catalog catalog() {
        return fixture.catalog();
    }

    /** Each build so far also with other parts at a station. */
    FewBuilds or(Station station, String... parts) {
        List<Build> more = new ArrayList<>(builds);
        for (Build build : builds) {
            for (String part : parts) {
                more.add(build.with(station, Choice.of(part)));
            }
        }
        builds = more;
        return this;
    }

    /** Each build so far also on other blanks. */
    FewBuilds onBlanks(String... blanks) {
        List<Build> more = new ArrayList<>(builds);
        for (Build build : builds) {
            for (String blank : blanks) {
                Layout l = build.layout();
                more.add(new Build(new Layout(blank, l.reelFootMm(), l.form(), l.guideCount()), build.choices()));
            }
        }
        builds = more;
        return this;
    }

    /** A brief with some priorities otherwise. */
    static Brief weighing(Brief brief, Map<Objective, Double> other) {
        Map<Objective, Double> priorities = new EnumMap<>(brief.priorities());
        priorities.putAll(other);
        return Changed.with(brief, "priorities", priorities);
    }

    Inquiry inquiry(Brief brief) {
        return new Inquiry(catalog(), brief, other -> new Weighing(other, builds), Watch.NONE, METRIC);
    }

    /** One build with its objectives. */
    record Weighed(Build build, Rod rod, ObjectiveVector vector) {
        boolean holds(String part) {
            return build.layout().blankId().equals(part)
                    || build.choices().values().stream()
                            .anyMatch(choice -> choice.partId().equals(part));
        }
    }

    /** Every build that is legal for a brief, in a catalogue. */
    List<Weighed> legal(Catalog catalog, Brief brief) {
        return weighed(catalog, brief, builds).stream()
                .filter(one -> Judge.legal(one.rod, Rulebook.standard()))
                .toList();
    }

    private static List<Weighed> weighed(Catalog catalog, Brief brief, List<Build> builds) {
        Style style = new Style(catalog, brief);
        NiceWishes wishes = new NiceWishes(brief);
        List<Weighed> list = new ArrayList<>();
        for (Build build : builds) {
            Rod rod = Rod.measure(catalog, brief, build);
            list.add(new Weighed(build, rod, ObjectiveVector.of(rod, style, wishes)));
        }
        return list;
    }

    /** The one of least score that meets a condition, by the brief's own priorities; null where none does. */
    static @Nullable Weighed best(List<Weighed> among, Scoring scoring, Predicate<Weighed> condition) {
        Weighed best = null;
        for (Weighed one : among) {
            if (condition.test(one) && (best == null || scoring.score(one.vector) < scoring.score(best.vector))) {
                best = one;
            }
        }
        return best;
    }

    /** True where a best build for a brief in a catalogue holds a part: none without it scores less. */
    boolean wins(Catalog catalog, Brief brief, String part) {
        Scoring scoring = Scoring.of(brief, catalog.rates());
        List<Weighed> all = legal(catalog, brief);
        Weighed with = best(all, scoring, one -> one.holds(part));
        Weighed without = best(all, scoring, one -> !one.holds(part));
        return with != null && (without == null || scoring.score(with.vector) <= scoring.score(without.vector));
    }

    /** The plainest search there can be: the first of least score. */
    private record Weighing(Catalog catalog, List<Build> builds) implements Solver {
        @Override
        public Solution solve(Query query, Watch watch) {
            Scoring scoring = Scoring.of(query.brief(), catalog.rates(), query.priorities());
            Weighed best = best(
                    weighed(catalog, query.brief(), builds),
                    scoring,
                    one -> answers(query, one) && usual(query, one) && Judge.legal(one.rod(), query.rulebook()));
            return best == null
                    ? new Solution(null, null, Long.MAX_VALUE, Long.MAX_VALUE, true, builds.size())
                    : new Solution(
                            best.build(),
                            best.vector(),
                            scoring.score(best.vector()),
                            scoring.score(best.vector()),
                            true,
                            builds.size());
        }

        /** What the shop leaves out is in no build that nobody asks it for. */
        private boolean usual(Query query, Weighed one) {
            return one.build().partIds().stream()
                    .allMatch(id -> query.forced().contains(id)
                            || catalog.rates()
                                    .usual(catalog.find(id), query.brief().rodType()));
        }

        private static boolean answers(Query query, Weighed one) {
            Set<String> ids = new HashSet<>(Set.of(one.build().layout().blankId()));
            one.build().choices().values().forEach(choice -> ids.add(choice.partId()));
            boolean under = true;
            for (Objective objective : query.ceilings().keySet()) {
                under &= one.vector().loss(objective) <= query.ceilings().get(objective);
            }
            return under
                    && ids.containsAll(query.forced())
                    && query.refused().stream().noneMatch(ids::contains);
        }
    }
}
