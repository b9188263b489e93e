package withy.search.planning;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.objectives.NiceWishes;
import withy.objectives.Scoring;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.Layout;
import withy.rules.Rulebook;

/**
 * One question as it is handed to the engine.
 *
 * @param catalog the shop
 * @param brief the wishes
 * @param rules the rules in force, inside the chain of the kernel and outside
 * @param scoring what is minimised
 * @param style counts style points
 * @param wishes counts nice wishes missed
 * @param shapes gives a blank's shape by its id
 * @param ceilings largest allowed loss by objective
 * @param forced parts that must be used somewhere
 * @param layouts every layout that may be chosen; at least one
 * @param slots every station with what may fill it, from butt to tip
 * @param kernel completes a layout
 */
public record Problem(
        Catalog catalog,
        Brief brief,
        Rulebook rules,
        Scoring scoring,
        Style style,
        NiceWishes wishes,
        Function<String, BlankShape> shapes,
        Map<Objective, Long> ceilings,
        Set<String> forced,
        List<Layout> layouts,
        List<Slot> slots,
        Kernel kernel) {

    public Problem {
        ceilings = Collections.unmodifiableMap(new TreeMap<>(ceilings));
        forced = Collections.unmodifiableSet(new TreeSet<>(forced));
        layouts = List.copyOf(layouts);
        slots = List.copyOf(slots);
        if (layouts.isEmpty()) {
            throw new IllegalArgumentException(
                    "0 layouts to plan with; at least 1 is needed.\nMaybe the brief leaves no blank.");
        }
    }
}
