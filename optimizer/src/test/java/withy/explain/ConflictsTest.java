package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.fixture.Fixtures;
import withy.objectives.Solver;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/**
 * What can be built is planted, as sets of wishes that can't be kept together: so the smallest sets, the first wish too many and the least that must
 * give way are known beforehand.
 */
class ConflictsTest {
    private static Predicate<Brief> without(Set<Set<String>> planted) {
        return brief -> planted.stream().noneMatch(Planted.kept(brief)::containsAll);
    }

    private static Set<Set<String>> smallest(Random random) {
        Set<Set<String>> sets = new HashSet<>();
        int many = 1 + random.nextInt(4);
        for (int i = 0; i < many; i++) {
            Set<String> set = new TreeSet<>();
            int size = 1 + random.nextInt(3);
            while (set.size() < size) {
                set.add(Planted.FIELDS.get(random.nextInt(Planted.FIELDS.size())));
            }
            sets.add(set);
        }
        Set<Set<String>> all = Set.copyOf(sets);
        sets.removeIf(set -> all.stream().anyMatch(other -> !other.equals(set) && set.containsAll(other)));
        return sets;
    }

    private static Set<String> fields(List<Demand> demands) {
        Set<String> fields = new TreeSet<>();
        demands.forEach(demand -> fields.add(demand.key()));
        return fields;
    }

    /** All planted sets are found and nothing else, smallest first; seeds 0 to 39. */
    @Test
    void thePlantedSetsAreFound() {
        for (long seed = 0; seed < 40; seed++) {
            Set<Set<String>> planted = smallest(new Random(seed));
            Inquiry inquiry = Planted.inquiry(Planted.brief(), without(planted));
            List<Demand> demands = Demands.of(inquiry);
            assertTrue(fields(demands).containsAll(Planted.FIELDS), "asked: " + fields(demands));
            Conflicts conflicts = new Conflicts(inquiry, inquiry.query(), demands);
            Conflicts.Sets sets = conflicts.find(Conflicts.MOST);
            Set<Set<String>> found = new HashSet<>();
            sets.sets().forEach(set -> found.add(fields(set)));
            assertEquals(planted, found, "seed " + seed);
            assertEquals(planted.size(), sets.sets().size(), "seed " + seed);
            assertTrue(sets.all(), "seed " + seed);
            for (int i = 1; i < sets.sets().size(); i++) {
                assertTrue(sets.sets().get(i - 1).size() <= sets.sets().get(i).size(), "smallest first");
            }
            for (List<Demand> set : sets.sets()) {
                assertTrue(conflicts.holds(set), "seed " + seed);
                List<Demand> more = new ArrayList<>(set);
                demands.stream()
                        .filter(demand -> !set.contains(demand))
                        .limit(1)
                        .forEach(more::add);
                assertFalse(conflicts.holds(more), "one too many");
                assertFalse(conflicts.holds(set.subList(1, set.size())), "one too few");
            }
        }
    }

    /** Where fewer are asked for than there are, that is said. */
    @Test
    void moreSetsThanAskedForAreHintedAt() {
        Set<Set<String>> planted = Set.of(Set.of("water"), Set.of("pieces"), Set.of("budgetMinor"));
        Inquiry inquiry = Planted.inquiry(Planted.brief(), without(planted));
        Conflicts.Sets two = new Conflicts(inquiry, inquiry.query(), Demands.of(inquiry)).find(2);
        assertEquals(2, two.sets().size());
        assertFalse(two.all());
        Conflicts.Sets three = new Conflicts(inquiry, inquiry.query(), Demands.of(inquiry)).find(4);
        assertEquals(3, three.sets().size());
        assertTrue(three.all());
    }

    /** The first wish, in the order said, with which the planted sets can no longer be kept; every order of four seeds. */
    @Test
    void theFirstWishTooMany() {
        for (long seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            Set<Set<String>> planted = smallest(random);
            List<String> turn = new ArrayList<>(Planted.FIELDS);
            java.util.Collections.shuffle(turn, random);
            Inquiry inquiry = Planted.inquiry(Planted.brief(), without(planted));
            Comparator<String> order =
                    Comparator.comparingInt(field -> turn.contains(field) ? turn.indexOf(field) : -1);
            Conflict.Asked first = FirstTooMuch.of(inquiry, order);
            assertNotNull(first);
            Set<String> said = new TreeSet<>();
            String expected = "";
            for (String field : turn) {
                said.add(field);
                if (expected.isEmpty() && planted.stream().anyMatch(said::containsAll)) {
                    expected = field;
                }
            }
            assertEquals(expected, first.field(), "seed " + seed + ", said " + turn + ", planted " + planted);
        }
    }

    @Test
    void nothingIsTooMuchWhereNothingCanBeBuiltAtAll() {
        assertNull(FirstTooMuch.of(Planted.inquiry(Planted.brief(), brief -> false), Comparator.naturalOrder()));
        Impossible none = Impossible.of(Planted.inquiry(Planted.brief(), brief -> false));
        assertFalse(none.wishesAreToBlame());
        assertTrue(none.conflicts().isEmpty() && none.repairs().isEmpty() && none.allConflicts());
        Watch stop = new Watch(() -> true, (build, objectives, score) -> {});
        assertNull(FirstTooMuch.of(
                Planted.inquiry(Planted.brief(), kept -> kept.wantedBy() == null, stop), Comparator.naturalOrder()));
    }

    /** A question that is given up says so; what was asked once is not asked again. */
    @Test
    void eachQuestionIsAskedOnce() {
        Fixtures fixture = Fixtures.legal();
        int[] asked = {0};
        Solver counting = (query, seen) -> {
            asked[0]++;
            Solution found = Planted.solution(fixture.catalog(), fixture.build(), query, b -> true);
            return new Solution(found.build(), found.objectives(), 3_000_000_000_000L, 1_000_000_000_000L, false, 1);
        };
        Inquiry inquiry = new Inquiry(
                fixture.catalog(), Planted.brief(), other -> counting, Watch.NONE, new QuantityText(UnitSystem.METRIC));
        assertFalse(inquiry.open());
        Found first = inquiry.first();
        assertNotNull(first);
        assertFalse(first.proven());
        assertEquals(2.0, first.mayBeOffSteps(), 1e-12);
        assertTrue(inquiry.open());
        inquiry.first();
        assertEquals(1, asked[0]);
        inquiry.any(inquiry.query());
        assertEquals(2, asked[0], "not proven, so asked for any");
        inquiry.any(inquiry.query());
        assertEquals(2, asked[0]);
        assertFalse(inquiry.stopped());
    }
}
