package withy.explain;

import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.Handle;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Wish;
import withy.brief.BriefDraft;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.objectives.Solver.Query;

/** A butt grip that must be in makes the handle a split one: said to the search, which else may leave it out of a full handle. */
final class Split {
    private Split() {}

    /** The question with that said, the question itself where no butt grip must be in, or null where a full handle must be, too. */
    static @Nullable Query where(Catalog catalog, Query query) {
        boolean butt = query.forced().stream()
                .anyMatch(id -> catalog.find(id) instanceof Grip grip && grip.place() == Grip.Place.BUTT);
        if (!butt) {
            return query;
        }
        Brief brief = query.brief();
        Wish<HandleForm> form = brief.handle().form();
        boolean ruled =
                query.rulebook().rules().stream().anyMatch(rule -> rule.code().equals("handle"));
        if (form != null && form.hard() && form.value() == HandleForm.FULL && ruled) {
            return null;
        }
        Brief split = new BriefDraft(brief).handle(Split::split).brief();
        return query.withBrief(split);
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
