package withy.search;

import java.util.List;
import java.util.Optional;
import withy.brief.Brief;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.rod.BlankShape;
import withy.rod.Build;
import withy.rod.Layout;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rules.Judge;
import withy.rules.Refusal;

/** One question: what it leaves open, and what it wants. */
final class Task {
    final Query query;
    final Ground ground;
    final Aim aim;
    final Brief brief;
    final Scoring scoring;
    final Bounds bounds;

    /** Placings of the forced parts, any of which will do. */
    final List<Stations> alternatives;

    Task(Query query, Ground ground, Aim aim, List<Stations> alternatives) {
        this.alternatives = alternatives;
        this.query = query;
        this.ground = ground;
        this.aim = aim;
        this.brief = query.brief();
        this.scoring = aim.scoring();
        this.bounds = aim.bounds();
    }

    /** Every blank under every placing of the forced parts that allows it. */
    List<Site> sites() {
        return ground.sites(alternatives);
    }

    /** What a layout fixes, where it keeps the rules. */
    Optional<Setting> setting(BlankShape shape, Layout layout) {
        Setting setting = Setting.of(ground.catalog, brief, shape, layout, ground.spots);
        Refusal refusal = new Refusal();
        ground.rules.onLayout(setting, refusal.reset());
        return refusal.refused() ? Optional.empty() : Optional.of(setting);
    }

    /** The class every load-bearing part must have at least. */
    int leastClass() {
        long asked = brief.durabilityClass();
        long wanted = bounds.marginClasses() == Long.MIN_VALUE ? Long.MIN_VALUE : asked + bounds.marginClasses();
        return (int) Math.max(ground.ruled("durability") ? asked : 0, wanted);
    }

    /** Classes above what was asked that builds are credited with whose load-bearing parts are all of a class. */
    long margin(int leastClass) {
        return leastClass - (long) brief.durabilityClass();
    }

    /** Measures and judges a build. */
    Measured measure(Build build, BlankShape shape) {
        Rod rod = Rod.measure(ground.catalog, brief, build, shape);
        ObjectiveVector vector = ObjectiveVector.of(rod, ground.style, ground.wishes);
        boolean legal = bounds.keeps(vector) && Judge.legal(rod, ground.rules);
        return new Measured(
                build, vector, rod.balance().aheadMgMm(), rod.balance().behindMgMm(), scoring.score(vector), legal);
    }

    /** A build measured and judged; legal means within the question's bounds too. */
    record Measured(Build build, ObjectiveVector vector, long aheadMgMm, long behindMgMm, long score, boolean legal) {}

    /** A legal build with its score. */
    record Judged(Build build, ObjectiveVector vector, long score) {}
}
