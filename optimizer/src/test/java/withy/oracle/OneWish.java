package withy.oracle;

import java.util.ArrayList;
import java.util.List;
import withy.brief.Brief;
import withy.brief.Brief.Handle;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.fixture.Changed;

/** A brief with one nice wish at a time; parts rather wanted are left out. */
final class OneWish {
    private OneWish() {}

    static List<Brief> each(Brief brief) {
        List<Brief> briefs = new ArrayList<>();
        Brief bare = Changed.with(Changed.with(brief, "insisted", List.of()), "refused", List.of());
        Handle none = new Handle(null, null, null, null, null, null, true);
        Handle h = brief.handle();
        String[] names = {"form", "foreGrip", "trigger", "movingHood", "keeper", "action"};
        Wish<?>[] wishes = {h.form(), h.foreGrip(), h.trigger(), h.movingHood(), h.keeper(), h.action()};
        for (int i = 0; i < names.length; i++) {
            if (wishes[i] != null && !wishes[i].hard()) {
                Wish<?> sure = new Wish<>(wishes[i].value(), false, 1);
                briefs.add(Changed.with(bare, "handle", Changed.with(none, names[i], sure)));
            }
        }
        for (PartWish wish : brief.refused()) {
            if (!wish.hard()) {
                PartWish sure = new PartWish(wish.partId(), false, 100);
                briefs.add(Changed.with(Changed.with(bare, "handle", none), "refused", List.of(sure)));
            }
        }
        return briefs;
    }
}
