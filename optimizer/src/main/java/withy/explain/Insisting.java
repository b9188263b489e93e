package withy.explain;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.Handle;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.brief.BriefDraft;
import withy.rod.Rod;

/** A brief that insists on what would be nice, as far as a rod has it. */
final class Insisting {
    private final Set<String> missed = new TreeSet<>();
    private final Set<String> parts;

    private Insisting(Rod rod) {
        this.parts = rod.build().partIds();
        Missed.of(rod).forEach(wish -> missed.add(wish.field()));
    }

    /** The brief of a rod with every nice wish that the rod meets as one that must be met. */
    static Brief on(Rod rod) {
        Insisting insisting = new Insisting(rod);
        return new BriefDraft(rod.brief())
                .handle(insisting::handle)
                .parts(insisted -> insisting.parts(insisted, true), refused -> insisting.parts(refused, false))
                .brief();
    }

    private Handle handle(Handle h) {
        return new Handle(
                met("handle.form", h.form()),
                met("handle.foreGrip", h.foreGrip()),
                met("handle.trigger", h.trigger()),
                met("handle.movingHood", h.movingHood()),
                met("handle.keeper", h.keeper()),
                met("handle.action", h.action()),
                h.mixedGrips());
    }

    private <T> @Nullable Wish<T> met(String field, @Nullable Wish<T> wish) {
        return wish == null || missed.contains(field) ? wish : new Wish<>(wish.value(), true, wish.steps());
    }

    private List<PartWish> parts(List<PartWish> wishes, boolean in) {
        return wishes.stream()
                .map(wish ->
                        parts.contains(wish.partId()) == in ? new PartWish(wish.partId(), true, wish.steps()) : wish)
                .toList();
    }
}
