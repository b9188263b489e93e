package withy.search;

import org.jspecify.annotations.Nullable;
import withy.brief.Objective;
import withy.objectives.ObjectiveVector;
import withy.rod.Build;

/**
 * One build of an offer.
 *
 * @param rank 1 is the best for the brief's priorities
 * @param build what it is made of
 * @param objectives its objectives
 * @param score its score by the brief's own priorities
 * @param bound no legal build scores less by the brief's priorities (rank 1), or by the priorities this alternative was found with
 * @param gap how far its score (under the priorities it was found with) may be above the bound, 0 when proven
 * @param proven true where it is proven the best under the priorities it was found with
 * @param strength the objective in which it beats rank 1 by more than a noticeable step; null for rank 1
 */
public record Proposal(
        int rank,
        Build build,
        ObjectiveVector objectives,
        long score,
        long bound,
        long gap,
        boolean proven,
        @Nullable Objective strength) {}
