package withy.brief;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.PartWish;
import withy.units.Money;
import withy.units.UnitsFault;

/**
 * What the command line changes in a resolved brief: {@code --priority weight=5}, {@code --budget 650}, {@code --with PART}, {@code --without
 * PART}.
 *
 * @param priorities new priorities
 * @param budgetMinor new ceiling, minor units, or null for the brief's own
 * @param with parts that must be in
 * @param without parts that must not be in
 */
public record BriefOverrides(
        Map<Objective, Double> priorities,
        @Nullable Long budgetMinor,
        SortedSet<String> with,
        SortedSet<String> without) {
    private static final double LONGEST_BUDGET_MINOR = 1e8;

    public BriefOverrides {
        priorities = Collections.unmodifiableMap(
                priorities.isEmpty() ? new EnumMap<>(Objective.class) : new EnumMap<>(priorities));
        with = Collections.unmodifiableSortedSet(new TreeSet<>(with));
        without = Collections.unmodifiableSortedSet(new TreeSet<>(without));
    }

    /**
     * What came of reading them.
     *
     * @param overrides the overrides, or null where there is a fault
     * @param faults all faults, in the order of the options
     */
    public record Reading(@Nullable BriefOverrides overrides, List<BriefFault> faults) {
        public Reading {
            faults = List.copyOf(faults);
        }
    }

    /** No change. */
    public static BriefOverrides none() {
        return new BriefOverrides(Map.of(), null, new TreeSet<>(), new TreeSet<>());
    }

    /** Reads the values of the options as typed. */
    public static Reading read(
            List<String> priorities,
            @Nullable String budget,
            List<String> with,
            List<String> without,
            BriefContext context) {
        List<BriefFault> faults = new ArrayList<>();
        Map<Objective, Double> read = new EnumMap<>(Objective.class);
        for (String typed : priorities) {
            priority(typed, read, faults);
        }
        Long minor = budget == null ? null : budget(budget, context, faults);
        ids("--with", with, faults);
        ids("--without", without, faults);
        for (String id : new TreeSet<>(with)) {
            if (without.contains(id)) {
                faults.add(fault(
                        "--without", id, "a part that is not also asked for by --with", "Maybe drop one of the two."));
            }
        }
        return faults.isEmpty()
                ? new Reading(new BriefOverrides(read, minor, new TreeSet<>(with), new TreeSet<>(without)), faults)
                : new Reading(null, faults);
    }

    private static void priority(String typed, Map<Objective, Double> read, List<BriefFault> faults) {
        List<String> keys = new ArrayList<>();
        for (Objective objective : Objective.values()) {
            keys.add(objective.key());
        }
        int equals = typed.indexOf('=');
        String key = equals < 0 ? typed.strip() : typed.substring(0, equals).strip();
        int at = keys.indexOf(key);
        if (at < 0) {
            faults.add(fault(
                    "--priority",
                    typed,
                    "one of " + String.join(", ", keys) + " and a number, weight=5",
                    NearKey.maybe(key, keys)));
            return;
        }
        String allowed = key + "= and a number, " + Bounds.PRIORITY.text("");
        try {
            double value = equals < 0
                    ? Double.NaN
                    : new BigDecimal(typed.substring(equals + 1).strip()).doubleValue();
            if (Bounds.PRIORITY.holds(value)) {
                if (read.put(Objective.values()[at], value) != null) {
                    faults.add(fault("--priority", typed, key + " once", "Maybe drop one of the two."));
                }
                return;
            }
        } catch (NumberFormatException e) {
            // Told below like any other value out of range.
        }
        faults.add(fault("--priority", typed, allowed, "Maybe " + key + "=5 was meant."));
    }

    private static @Nullable Long budget(String typed, BriefContext context, List<BriefFault> faults) {
        String allowed = "an amount above 0, such as " + Money.print(65_000, context.currency());
        try {
            long minor = Money.minor(typed, context.currency());
            if (minor >= 1 && minor <= LONGEST_BUDGET_MINOR) {
                return minor;
            }
            faults.add(fault("--budget", typed, allowed, "Maybe a digit is missing or one too many."));
        } catch (UnitsFault e) {
            faults.add(fault("--budget", typed, allowed, e.maybe()));
        }
        return null;
    }

    private static void ids(String option, List<String> ids, List<BriefFault> faults) {
        for (String id : ids) {
            if (!WishReader.isId(id)) {
                faults.add(fault(
                        option,
                        id,
                        "a catalogue id: lower case, digits and hyphens",
                        "Maybe copy it from the list that parts prints."));
            }
        }
    }

    private static BriefFault fault(String option, String value, String allowed, String maybe) {
        return new BriefFault(option, 0, 0, value, allowed, maybe);
    }

    /**
     * The brief with these changes. A price step that was taken from the budget follows the new one, and sentences about defaults that are told
     * now are dropped.
     */
    public Brief apply(Brief brief, BriefContext context) {
        List<String> sentences = new ArrayList<>(brief.defaultsUsed());
        Map<Objective, Double> newPriorities = new EnumMap<>(brief.priorities());
        for (Map.Entry<Objective, Double> told : priorities.entrySet()) {
            sentences.remove(Default.PRIORITY.sentence(told.getKey().word(), brief.priority(told.getKey())));
            newPriorities.put(told.getKey(), told.getValue());
        }
        Map<Objective, Double> newSteps = new EnumMap<>(brief.steps());
        if (budgetMinor != null) {
            sentences.remove(Default.BUDGET.sentence());
            PriceStep before = PriceStep.of(context.rates(), brief.rodType(), brief.budgetMinor());
            PriceStep after = PriceStep.of(context.rates(), brief.rodType(), budgetMinor);
            int at = sentences.indexOf(before.sentence());
            if (at >= 0) {
                sentences.set(at, after.sentence());
                newSteps.put(Objective.PRICE, (double) after.minor());
            }
        }
        List<PartWish> insisted = changed(brief.insisted(), with, without);
        List<PartWish> refused = changed(brief.refused(), without, with);
        TreeSet<String> owned = new TreeSet<>(brief.owned());
        owned.removeAll(without);
        Long budget = budgetMinor == null ? brief.budgetMinor() : budgetMinor;
        return with(brief, budget, newPriorities, newSteps, new Lists(insisted, owned, refused), sentences);
    }

    /** The three lists of parts of a brief. */
    private record Lists(List<PartWish> insisted, Set<String> owned, List<PartWish> refused) {}

    private static Brief with(
            Brief brief,
            @Nullable Long budget,
            Map<Objective, Double> priorities,
            Map<Objective, Double> steps,
            Lists parts,
            List<String> sentences) {
        return new Brief(
                brief.name(),
                brief.customer(),
                brief.rodType(),
                brief.twoHanded(),
                brief.fishedFrom(),
                brief.lengthMinMm(),
                brief.lengthMaxMm(),
                brief.piecesMin(),
                brief.piecesMax(),
                brief.packedMaxMm(),
                brief.lure(),
                brief.line(),
                brief.leader(),
                brief.dragKg(),
                brief.reel(),
                brief.largestFishKg(),
                brief.landing(),
                brief.durabilityClass(),
                brief.corrosionClass(),
                brief.palmMm(),
                brief.reachMinMm(),
                brief.reachMaxMm(),
                brief.handle(),
                brief.look(),
                budget,
                brief.wantedBy(),
                priorities,
                brief.zoneNearMm(),
                brief.zoneFarMm(),
                steps,
                parts.insisted(),
                parts.owned(),
                parts.refused(),
                brief.counterweightAsked(),
                brief.guidesByClearance(),
                sentences);
    }

    private static List<PartWish> changed(List<PartWish> wishes, SortedSet<String> added, SortedSet<String> dropped) {
        List<PartWish> changed = new ArrayList<>();
        for (PartWish wish : wishes) {
            if (!added.contains(wish.partId()) && !dropped.contains(wish.partId())) {
                changed.add(wish);
            }
        }
        for (String id : added) {
            changed.add(new PartWish(id, true, 0));
        }
        return changed;
    }
}
