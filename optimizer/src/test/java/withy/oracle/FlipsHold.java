package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.explain.Finding;
import withy.explain.Flip;
import withy.fixture.Changed;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.oracle.Enumeration.Legal;

/** What would have to change for a part to win, against every build of small catalogues on both sides. */
final class FlipsHold {
    private FlipsHold() {}

    /** Where it is said to win it wins, and at the next value back it loses or is no better than others. */
    static void check(String told, SmallShop.Case shop, String part, Finding finding, Flip flip) {
        if (Double.isNaN(flip.wins())) {
            if (flip.kind() == Flip.Kind.PRICE) {
                Catalog free = priced(shop.catalog(), part, 0);
                assertFalse(wins(free, shop.query(), part), told);
            }
            return;
        }
        switch (flip.kind()) {
            case PRIORITY -> {
                assertTrue(wins(shop.catalog(), weighed(shop, flip.subject(), flip.wins()), part), told);
                assertTrue(ties(shop.catalog(), weighed(shop, flip.subject(), flip.loses()), part), told);
            }
            case PRICE -> {
                Catalog wins = priced(shop.catalog(), part, Math.round(flip.wins()));
                Catalog loses = priced(shop.catalog(), part, Math.round(flip.loses()));
                assertTrue(wins(wins, shop.query(), part), told);
                assertTrue(ties(loses, shop.query(), part), told);
            }
            case WEIGHT -> {
                assertTrue(wins(scaled(shop.catalog(), part, flip.wins()), shop.query(), part), told);
                assertTrue(ties(scaled(shop.catalog(), part, flip.loses()), shop.query(), part), told);
            }
            case WISH -> {
                Query wins =
                        shop.query().withBrief(Said.of(shop.query().brief(), flip.subject(), flip.now(), flip.wins()));
                Query loses =
                        shop.query().withBrief(Said.of(shop.query().brief(), flip.subject(), flip.now(), flip.loses()));
                if (finding.breach() == null) {
                    assertTrue(wins(shop.catalog(), wins, part), told);
                    assertTrue(ties(shop.catalog(), loses, part), told);
                } else {
                    assertTrue(Anything.answers(shop.catalog(), wins.forcing(Set.of(part))), told);
                    assertFalse(Anything.answers(shop.catalog(), loses.forcing(Set.of(part))), told);
                }
            }
        }
    }

    private static Query weighed(SmallShop.Case shop, String objective, double priority) {
        Map<Objective, Double> priorities = new EnumMap<>(shop.query().brief().priorities());
        for (Objective one : Objective.values()) {
            if (one.key().equals(objective)) {
                priorities.put(one, priority);
            }
        }
        return shop.query().withPriorities(priorities);
    }

    private static Catalog priced(Catalog catalog, String part, long minor) {
        return with(catalog, part, "facts.priceMinor", minor);
    }

    private static Catalog scaled(Catalog catalog, String part, double grams) {
        return with(catalog, part, "facts.measuredG", grams);
    }

    /** The catalogue with one fact of a part as if it were another. */
    static Catalog with(Catalog catalog, String id, String path, Object value) {
        List<Part> parts = new ArrayList<>();
        for (Part part : catalog.byId().values()) {
            parts.add(part.id().equals(id) ? (Part) Changed.with((Record) part, path, value) : part);
        }
        return new Catalog(catalog.rates(), catalog.asOf(), catalog.hash(), parts);
    }

    /** A best build holds the part. */
    private static boolean wins(Catalog catalog, Query query, String part) {
        return compare(catalog, query, part) >= 0;
    }

    /** A best build does without the part. */
    private static boolean ties(Catalog catalog, Query query, String part) {
        return compare(catalog, query, part) <= 0;
    }

    /** How much better the best build with the part is than the best without. */
    private static long compare(Catalog catalog, Query query, String part) {
        Scoring scoring = Scoring.of(query.brief(), catalog.rates(), query.priorities());
        List<Legal> all = new Enumeration(catalog, query, true).legal();
        List<Legal> with = all.stream()
                .filter(one -> Compared.holds(one.build(), Set.of(part)))
                .toList();
        List<Legal> rest = all.stream()
                .filter(one -> !Compared.holds(one.build(), Set.of(part)))
                .toList();
        return Long.compare(Compared.least(rest, scoring), Compared.least(with, scoring));
    }
}
