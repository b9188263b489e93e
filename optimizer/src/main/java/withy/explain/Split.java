package withy.explain;

import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.Handle;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Wish;
import withy.brief.BriefDraft;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.objectives.Solver.Query;

/**
 * A butt grip that must be in makes the handle a split one: said to the search, which else may leave it out of a full handle. Where a part that must be in has no place on the handle that
 * is wished, nothing need be searched.
 */
final class Split {
    private Split() {}

    /** The question with that said, the question itself where no butt grip must be in, or null where the handle that is wished has no place for a part that must be. */
    static @Nullable Query where(Catalog catalog, Query query) {
        Brief brief = query.brief();
        boolean ruled =
                query.rulebook().rules().stream().anyMatch(rule -> rule.code().equals("handle"));
        boolean butt = false;
        for (String id : query.forced()) {
            Part part = catalog.find(id);
            if (ruled && part != null && outOfPlace(brief.handle(), part)) {
                return null;
            }
            butt |= part instanceof Grip grip && grip.place() == Grip.Place.BUTT;
        }
        return butt ? query.withBrief(new BriefDraft(brief).handle(Split::split).brief()) : query;
    }

    private static boolean outOfPlace(Handle wished, Part part) {
        if (part instanceof Grip grip) {
            return switch (grip.place()) {
                case BUTT, REAR -> must(wished.form(), HandleForm.FULL);
                case FULL -> must(wished.form(), HandleForm.SPLIT);
                case FORE -> must(wished.foreGrip(), false);
            };
        }
        return part.kind() == PartKind.KEEPER && must(wished.keeper(), false);
    }

    private static <T> boolean must(@Nullable Wish<T> wish, T value) {
        return wish != null && wish.hard() && wish.value().equals(value);
    }

    private static Handle split(Handle h) {
        return new Handle(
                new Wish<>(HandleForm.SPLIT, true, 0),
                h.foreGrip(),
                h.trigger(),
                h.movingHood(),
                h.keeper(),
                h.action(),
                h.mixedGrips());
    }
}
