package withy.search;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import withy.catalog.Catalog;
import withy.objectives.Solver.Query;
import withy.rod.Build;

/**
 * A job as the plan sees it.
 *
 * @param id its number
 * @param catalog what it could have if it were alone
 * @param query its question, with what is glued given
 * @param kept the build it keeps, or null where it is to be chosen
 */
public record PlanJob(
        long id, Catalog catalog, Query query, @Nullable Build kept) {
    /** Day it is wanted; far off where there is no hurry. */
    LocalDate wanted() {
        LocalDate wanted = query.brief().wantedBy();
        return wanted == null ? Supplies.NO_HURRY : wanted;
    }
}
