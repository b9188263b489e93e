package withy.search;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Station;
import withy.search.ChangeLadder.Situation;
import withy.search.LooseParts.Unit;

/** What is the best build when some parts of one may change and all others stay; what was answered answers narrower questions where it can. */
final class LadderQuestions {
    private final Situation situation;
    private final Watch watch;
    private final Replacements replacements;
    private final List<Answer> answers = new ArrayList<>();

    LadderQuestions(Situation situation, Replacements replacements, Watch watch) {
        this.situation = situation;
        this.replacements = replacements;
        this.watch = watch;
    }

    /**
     * A question.
     *
     * @param free parts that may change
     * @param change those of them that do, as far as leaving them out of the catalogue brings it about
     */
    private record Asked(Set<Unit> free, Set<Unit> change) {
        static Asked of(Set<Unit> free, Set<Unit> counted) {
            Set<Unit> change = new HashSet<>(counted);
            change.removeIf(unit -> !unit.alone());
            return new Asked(free, change);
        }
    }

    /**
     * A case to be looked at.
     *
     * @param free parts that may change
     * @param counted those of them that do
     */
    record Case(Set<Unit> free, Set<Unit> counted) {}

    private interface Question extends Callable<Solution> {
        @Override
        Solution call();
    }

    /**
     * An answer. Later questions never have a higher limit.
     *
     * @param asked the question
     * @param solution the best build below the limit, or none
     * @param changed parts that are other in it; empty without a build
     */
    private record Answer(Asked asked, Solution solution, Set<Unit> changed) {
        /** True where this answer is that of a narrower question too. */
        boolean holds(Asked other, long limit) {
            boolean wider =
                    solution.proven() && asked.free.containsAll(other.free) && other.change.containsAll(asked.change);
            boolean none = solution.build() == null || solution.score() >= limit;
            return wider && (none || other.free.containsAll(changed) && changed.containsAll(other.change));
        }
    }

    /**
     * The best build with these parts free and all else as it was, that scores less than a limit.
     *
     * @param counted those of which it is settled that they change; builds in which they don't may be left out
     * @param thorough true where the engine is to look on if the proof is given up
     */
    Solution best(Set<Unit> free, Set<Unit> counted, long limit, boolean thorough) {
        Asked asked = Asked.of(free, counted);
        Solution known = known(asked, limit);
        return known == null ? answered(asked, question(asked, limit, thorough).call()) : known;
    }

    /** Answers several questions at once, two at a time. */
    void ahead(List<Case> cases, long limit) {
        List<Asked> unknown = new ArrayList<>();
        for (Case one : cases) {
            Asked asked = Asked.of(one.free(), one.counted());
            if (known(asked, limit) == null && !unknown.contains(asked)) {
                unknown.add(asked);
            }
        }
        List<Question> questions =
                unknown.stream().map(asked -> question(asked, limit, false)).toList();
        List<Solution> solutions = Workers.all(questions, Workers.MOST);
        for (int i = 0; i < unknown.size(); i++) {
            answered(unknown.get(i), solutions.get(i));
        }
    }

    private @Nullable Solution known(Asked asked, long limit) {
        for (Answer answer : answers) {
            if (answer.holds(asked, limit)) {
                return answer.solution.score() < limit ? answer.solution : none(limit);
            }
        }
        return null;
    }

    private Solution answered(Asked asked, Solution solution) {
        Build build = solution.build();
        answers.add(new Answer(asked, solution, build == null ? Set.of() : changed(asked.free, build)));
        return solution;
    }

    private static Solution none(long limit) {
        return new Solution(null, null, Long.MAX_VALUE, limit, true, 0);
    }

    /** Which of these parts are other in a build. */
    Set<Unit> changed(Set<Unit> of, Build build) {
        Set<Unit> changed = new HashSet<>();
        for (Unit unit : of) {
            for (Station station : unit.stations()) {
                if (!same(situation.current().partAt(station), build.partAt(station))) {
                    changed.add(unit);
                }
            }
        }
        return changed;
    }

    private static boolean same(@Nullable String one, @Nullable String other) {
        return one == null ? other == null : one.equals(other);
    }

    private Question question(Asked asked, long limit, boolean thorough) {
        Set<Station> free = new HashSet<>();
        asked.free.forEach(unit -> free.addAll(unit.stations()));
        Set<String> gone = new HashSet<>();
        asked.change.forEach(unit -> gone.add(unit.name()));
        Build current = situation.current();
        boolean glued = !situation.locked().isEmpty();
        SortedMap<Station, Choice> fixed = new TreeMap<>();
        Set<Station> empty = new TreeSet<>();
        if (!free.contains(Station.BLANK)) {
            fixed.put(Station.BLANK, Choice.of(current.layout().blankId()));
        }
        for (Station station : Replacements.stations()) {
            Choice choice = current.choices().get(station);
            if (free.contains(station)) {
                continue;
            }
            if (choice == null) {
                empty.add(station);
            } else {
                boolean kept = situation.locked().contains(station);
                fixed.put(station, kept ? choice : Choice.of(choice.partId()));
            }
        }
        Query query =
                situation.query().fixing(fixed, empty, glued ? current.layout().reelFootMm() : null);
        Search search = replacements.search(free, fixed, gone);
        return () -> thorough ? search.solveAlone(query, watch) : search.below(limit, query, watch);
    }
}
