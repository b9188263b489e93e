package withy.search;

import withy.brief.Brief;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.rod.BlankShape;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rules.Judge;

/** One question: what it leaves open, and what it wants. */
final class Task {
    final Query query;
    final Ground ground;
    final Aim aim;
    final Brief brief;
    final Scoring scoring;
    final Bounds bounds;

    Task(Query query, Ground ground, Aim aim) {
        this.query = query;
        this.ground = ground;
        this.aim = aim;
        this.brief = query.brief();
        this.scoring = aim.scoring();
        this.bounds = aim.bounds();
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
