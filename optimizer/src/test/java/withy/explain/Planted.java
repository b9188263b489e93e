package withy.explain;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import withy.brief.Brief;
import withy.brief.Brief.Wish;
import withy.catalog.Catalog;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.objectives.Style;
import withy.rod.Build;
import withy.rod.Rod;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/**
 * A search that is told beforehand which briefs can be met, and meets them with the fixture's rod: so what can't be kept together is known.
 */
final class Planted {
    /** Each asked of the fixture's rod in a way that the brief shows whether it is still asked. */
    static final List<String> FIELDS = List.of(
            "packedMaxMm",
            "pieces",
            "durabilityClass",
            "water",
            "handle.keeper",
            "budgetMinor",
            "wantedBy",
            "lengthMm");

    private Planted() {}

    static Brief brief() {
        Brief brief = Fixtures.legal().theBrief();
        return Changed.with(brief, "handle.keeper", new Wish<>(true, true, 0));
    }

    /** Fields of a brief that are still asked. */
    static Set<String> kept(Brief brief) {
        Set<String> kept = new TreeSet<>();
        keep(kept, "packedMaxMm", brief.packedMaxMm() != null);
        keep(kept, "pieces", brief.piecesMin() == 2);
        keep(kept, "durabilityClass", brief.durabilityClass() > 1);
        keep(kept, "water", brief.corrosionClass() > 1);
        keep(kept, "handle.keeper", brief.handle().keeper() != null);
        keep(kept, "budgetMinor", brief.budgetMinor() != null);
        keep(kept, "wantedBy", brief.wantedBy() != null);
        keep(kept, "lengthMm", brief.lengthMinMm() > 900);
        return kept;
    }

    private static void keep(Set<String> kept, String field, boolean asked) {
        if (asked) {
            kept.add(field);
        }
    }

    /** The fixture's rod for every brief that a condition lets through. */
    static Inquiry inquiry(Brief brief, Predicate<Brief> buildable) {
        return inquiry(brief, buildable, Watch.NONE);
    }

    static Inquiry inquiry(Brief brief, Predicate<Brief> buildable, Watch watch) {
        Catalog catalog = Fixtures.legal().part("blank", "liftKg", 9.0).catalog();
        Build build = Fixtures.legal().build();
        Solver planted = (query, seen) -> solution(catalog, build, query, buildable);
        return new Inquiry(catalog, brief, other -> planted, watch, new QuantityText(UnitSystem.METRIC));
    }

    static Solution solution(Catalog catalog, Build build, Query query, Predicate<Brief> buildable) {
        if (!buildable.test(query.brief())) {
            return new Solution(null, null, Long.MAX_VALUE, Long.MAX_VALUE, true, 1);
        }
        Rod rod = Rod.measure(catalog, query.brief(), build);
        ObjectiveVector vector =
                ObjectiveVector.of(rod, new Style(catalog, query.brief()), new NiceWishes(query.brief()));
        return new Solution(build, vector, 7, 7, true, 1);
    }
}
