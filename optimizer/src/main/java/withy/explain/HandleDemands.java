package withy.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.Handle;
import withy.brief.Brief.Wish;
import withy.brief.BriefDraft;
import withy.catalog.RodType;
import withy.explain.Demand.Switch;
import withy.units.QuantityText;

/** What the hand, the reach and the wishes about the handle ask. */
final class HandleDemands {
    /** Key of the demand that grips fit this hand. */
    static final String HAND = "hand";

    /** What any reach means: no handle is shorter or longer (ASSUMED); surf rods lie above. */
    private static final double SHORTEST_REACH_MM = 150;

    private static final double LONGEST_REACH_MM = 450;
    private static final double SHORTEST_SURF_REACH_MM = 500;
    private static final double LONGEST_SURF_REACH_MM = 800;
    private static final double REACH_GRID_MM = 5;

    /** One palm in each row of the palm table, mm. */
    private static final double[] PALMS_MM = {75, 85, 95, 105};

    private final Brief brief;
    private final QuantityText units;
    private final List<Demand> list = new ArrayList<>();

    private HandleDemands(Brief brief, QuantityText units) {
        this.brief = brief;
        this.units = units;
    }

    static List<Demand> of(Brief brief, QuantityText units) {
        HandleDemands demands = new HandleDemands(brief, units);
        demands.hand();
        demands.reach();
        demands.form();
        return demands.list;
    }

    /** True of the keys of what reel, hand and handle ask. */
    static boolean areOfTheHandle(String key) {
        return Set.of("reel", HAND, "reachMm").contains(key) || key.startsWith("handle.");
    }

    /** Barrels of surf rods follow the blank, whoever's hand it is. */
    private void hand() {
        if (surf()) {
            return;
        }
        List<Consumer<BriefDraft>> palms = new ArrayList<>();
        palms.add(draft -> {});
        for (double palm : PALMS_MM) {
            palms.add(draft -> draft.palm(palm));
        }
        list.add(new Demand(
                HAND, "", Phrases.of("demand.hand", units.partLength(brief.palmMm())), palms, List.of(), List.of()));
    }

    private void reach() {
        boolean surf = surf();
        double shortest = Math.min(brief.reachMinMm(), surf ? SHORTEST_SURF_REACH_MM : SHORTEST_REACH_MM);
        double longest = Math.max(brief.reachMaxMm(), surf ? LONGEST_SURF_REACH_MM : LONGEST_REACH_MM);
        list.add(new Demand(
                "reachMm",
                "",
                Phrases.of(
                        "demand.reachMm", units.partLength(brief.reachMinMm()), units.partLength(brief.reachMaxMm())),
                List.of(draft -> draft.reach(shortest, longest)),
                List.of(
                        dial(
                                "reachMm.min",
                                brief.reachMinMm(),
                                shortest,
                                (draft, mm) -> draft.reach(mm, draft.brief().reachMaxMm())),
                        dial(
                                "reachMm.max",
                                brief.reachMaxMm(),
                                longest,
                                (draft, mm) -> draft.reach(draft.brief().reachMinMm(), mm))),
                List.of()));
    }

    private boolean surf() {
        return brief.rodType() == RodType.SURF_SPINNING;
    }

    private void form() {
        Handle h = brief.handle();
        hard("handle.form", h.form(), draft -> draft.handle(o -> HandleWithout.form(o)));
        hard("handle.foreGrip", h.foreGrip(), draft -> draft.handle(o -> HandleWithout.foreGrip(o)));
        hard("handle.trigger", h.trigger(), draft -> draft.handle(o -> HandleWithout.trigger(o)));
        hard("handle.movingHood", h.movingHood(), draft -> draft.handle(o -> HandleWithout.movingHood(o)));
        hard("handle.keeper", h.keeper(), draft -> draft.handle(o -> HandleWithout.keeper(o)));
        hard("handle.action", h.action(), draft -> draft.handle(o -> HandleWithout.action(o)));
        if (!h.mixedGrips()) {
            whole(
                    "handle.mixedGrips",
                    Phrases.of("demand.handle.mixedGrips"),
                    draft -> draft.handle(HandleWithout::oneMaterial));
        }
    }

    private void hard(String key, @Nullable Wish<?> wish, Consumer<BriefDraft> drop) {
        if (wish != null && wish.hard()) {
            whole(key, Phrases.of("demand." + key + "." + word(wish.value())), drop);
        }
    }

    /** A wish's value as the message file spells it in a key. */
    static String word(Object value) {
        return value.toString().toLowerCase(Locale.ROOT);
    }

    private Dial dial(String key, double now, double far, BiConsumer<BriefDraft, Double> set) {
        return new Dial(key, now, far, REACH_GRID_MM, set, units::partLength, "mm");
    }

    /** A demand that is only dropped as a whole. */
    private void whole(String key, String words, Consumer<BriefDraft> drop) {
        String repair = Phrases.of("repair." + key, "");
        list.add(new Demand(key, "", words, List.of(drop), List.of(), List.of(new Switch(repair, drop))));
    }
}
