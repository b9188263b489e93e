package withy.brief;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.util.Currency;
import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.FishedFrom;
import withy.brief.Brief.Landing;
import withy.catalog.Rates;
import withy.catalog.RodType;
import withy.units.Dates;
import withy.units.Money;
import withy.units.UnitsFault;

/** Reads use (fish, landing, durability, water) and the bargain (budget, date, priorities, steps, balance zone). */
final class TradeReader {
    /** Balance zone ahead of the reel foot, mm [common practice]. */
    private static final double ZONE_NEAR_MM = 40;

    private static final double ZONE_FAR_MM = 110;

    /** Width kept where one edge is told beyond the usual other one, mm. */
    private static final double ZONE_WIDTH_MM = ZONE_FAR_MM - ZONE_NEAR_MM;

    /** Smallest and greatest amounts taken as a budget, minor units. */
    private static final Bounds BUDGET_MINOR = new Bounds(1, 100_000_000);

    private static final int MOST_DAYS = 3650;

    private final Fields root;
    private final Notes notes;
    private final BriefContext context;

    TradeReader(Fields root, BriefContext context) {
        this.root = root;
        this.notes = root.notes();
        this.context = context;
    }

    /** Waters, each with the corrosion class it asks for (1 fresh … 4 salt every day). */
    enum Water {
        FRESH(1),
        BRACKISH(2),
        SALT(3),
        SALT_EVERY_DAY(4);

        private final int corrosionClass;

        Water(int corrosionClass) {
            this.corrosionClass = corrosionClass;
        }
    }

    double largestFish(double dragKg) {
        Double fish = root.quantity("largestFish", Quantity.HEAVY_MASS, Bounds.FISH_KG);
        if (fish == null) {
            fish = Quantity.HEAVY_MASS.round(2 * dragKg);
            notes.taken(Default.FISH, fish);
        }
        return fish;
    }

    Landing landing(FishedFrom from) {
        Landing landing = root.choice("landing", Landing.class);
        if (landing == null) {
            landing = from == FishedFrom.BEACH || from == FishedFrom.WADING ? Landing.HAND : Landing.NET;
            notes.taken(Default.LANDING, Words.spoken(landing));
        }
        return landing;
    }

    /** Classes by drag after the trade table; a kayak, a boat or a lifted fish ask for class 4, and no rod is built below 2 unasked. */
    int durability(double dragKg, FishedFrom from, Landing landing) {
        Integer told = root.whole("durabilityClass", 1, 5);
        if (told != null) {
            return told;
        }
        int byDrag = dragKg <= 2 ? 2 : dragKg <= 4 ? 3 : dragKg <= 8 ? 4 : 5;
        boolean hardUse = from == FishedFrom.KAYAK || from == FishedFrom.BOAT || landing == Landing.LIFTED;
        int taken = hardUse ? Math.max(4, byDrag) : byDrag;
        notes.taken(Default.DURABILITY, taken, dragKg);
        return taken;
    }

    int corrosion(FishedFrom from) {
        Water water = root.choice("water", Water.class);
        Integer told = root.whole("corrosionClass", 1, 4);
        if (water != null && told != null) {
            root.fault("corrosionClass", "either water or corrosionClass", "Maybe drop one of the two.");
        }
        if (told != null) {
            return told;
        }
        if (water == null) {
            water = from == FishedFrom.BEACH || from == FishedFrom.PIER || from == FishedFrom.KAYAK
                    ? Water.SALT
                    : Water.FRESH;
            notes.taken(Default.WATER, Words.spoken(water), water.corrosionClass);
        }
        return water.corrosionClass;
    }

    /** Under {@code budgetMinor} as whole minor units, or under {@code budget} as an amount of the catalogue's currency. */
    @Nullable
    Long budget() {
        JsonNode minor = root.take("budgetMinor");
        JsonNode amount = root.take("budget");
        if (minor.isMissingNode() && amount.isMissingNode()) {
            notes.taken(Default.BUDGET);
            return null;
        }
        if (minor.isMissingNode()) {
            Long read = amount(amount);
            return read == null ? null : within("budget", read);
        }
        if (!amount.isMissingNode()) {
            root.fault("budget", "either budgetMinor or budget", "Maybe drop one of the two.");
        }
        if (minor.isNull()) {
            return null;
        }
        if (!minor.isIntegralNumber() || !minor.canConvertToLong()) {
            root.fault(
                    "budgetMinor",
                    "whole minor units of " + context.rates().currency(),
                    "Maybe \"budget\" was meant, in " + context.rates().currency() + ".");
            return null;
        }
        return within("budgetMinor", minor.longValue());
    }

    private @Nullable Long amount(JsonNode amount) {
        Currency currency = context.currency();
        String allowed = "an amount such as \"" + Money.print(65_000, currency) + "\"";
        if (!amount.isTextual() && !(amount.isNumber() && Double.isFinite(amount.doubleValue()))) {
            root.fault("budget", allowed, "Maybe leave it out where there is no ceiling.");
            return null;
        }
        try {
            return Money.minor(
                    amount.isNumber() ? amount.decimalValue().toPlainString() : amount.textValue(), currency);
        } catch (UnitsFault e) {
            root.fault("budget", allowed, e.maybe());
            return null;
        }
    }

    private @Nullable Long within(String key, long minor) {
        if (BUDGET_MINOR.holds(minor)) {
            return minor;
        }
        root.fault(
                key,
                BUDGET_MINOR.text("minor units of " + context.rates().currency()),
                "Maybe a digit is missing or one too many.");
        return null;
    }

    /** Under {@code wantedBy} as a date, without a year the next such day, or under {@code wantedInDays} counted from the day of reading. */
    @Nullable
    LocalDate wantedBy() {
        Integer days = root.whole("wantedInDays", 0, MOST_DAYS);
        if (days != null) {
            if (root.has("wantedBy")) {
                root.fault("wantedInDays", "either wantedBy or wantedInDays", "Maybe drop one of the two.");
            }
            return context.asOf().plusDays(days);
        }
        if (root.isNull("wantedBy")) {
            return null;
        }
        String text = root.text("wantedBy", 40);
        if (text == null) {
            if (!root.has("wantedBy") && !root.has("wantedInDays")) {
                notes.taken(Default.WANTED_BY);
            }
            return null;
        }
        try {
            Dates.Day day = Dates.byHand(text, context.asOf());
            LocalDate date = day.date();
            if (!day.yearTold()) {
                notes.taken(Default.WANTED_YEAR, Dates.words(date));
            }
            if (date.isBefore(context.asOf())) {
                root.fault("wantedBy", "a day from " + context.asOf() + " on", "Maybe the year is mistyped.");
            }
            return date;
        } catch (UnitsFault e) {
            root.fault("wantedBy", e.allowed(), e.maybe());
            return null;
        }
    }

    Map<Objective, Double> priorities() {
        Fields fields = root.object("priorities");
        Map<Objective, Double> priorities = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            Double told = fields.number(objective.key(), Bounds.PRIORITY, "");
            if (told == null) {
                told = usualPriority(objective);
                notes.taken(Default.PRIORITY, objective.word(), told);
            }
            priorities.put(objective, told);
        }
        fields.finish();
        if (fields.present() && priorities.values().stream().allMatch(p -> p == 0)) {
            notes.fault("priorities", "0 for all six", "at least one above 0", "Maybe give what matters most a 3.");
        }
        return priorities;
    }

    /** ASSUMED: what most customers ask for first is a light rod that does not sink at the tip. */
    static double usualPriority(Objective objective) {
        return switch (objective) {
            case WEIGHT -> 3;
            case BALANCE -> 2;
            case SWING_WEIGHT, PRICE, STYLE, DURABILITY -> 1;
        };
    }

    Map<Objective, Double> steps(RodType type, @Nullable Long budgetMinor) {
        Fields fields = root.object("steps");
        Rates.Steps house = context.rates().steps();
        Map<Objective, Double> steps = new EnumMap<>(Objective.class);
        step(steps, fields, Objective.WEIGHT, "weightG", "g", house.weightG());
        step(steps, fields, Objective.BALANCE, "balanceNmm", "N·mm", house.balanceNmm());
        step(steps, fields, Objective.SWING_WEIGHT, "swingWeightKgM2", "kg·m²", house.swingWeightKgM2());
        step(steps, fields, Objective.STYLE, "stylePoints", "points", house.stylePoints());
        step(steps, fields, Objective.DURABILITY, "durabilityClasses", "classes", house.durabilityClasses());
        Double price = fields.number("priceMinor", Bounds.STEP, "minor units");
        fields.finish();
        if (price == null) {
            PriceStep usual = PriceStep.of(context.rates(), type, budgetMinor);
            price = (double) usual.minor();
            usual.tell(notes);
        }
        steps.put(Objective.PRICE, price);
        return steps;
    }

    private void step(
            Map<Objective, Double> steps, Fields fields, Objective objective, String key, String unit, double usual) {
        Double told = fields.number(key, Bounds.STEP, unit);
        if (told == null) {
            told = usual;
            boolean oneClass = usual == 1 && unit.equals("classes");
            notes.taken(Default.STEP, objective.word(), Bounds.plain(usual) + " " + (oneClass ? "class" : unit));
        }
        steps.put(objective, told);
    }

    FrameReader.Ends zone() {
        Fields fields = root.object("balanceZone");
        Double near = fields.quantity("near", Quantity.LENGTH, Bounds.ZONE_MM);
        Double far = fields.quantity("far", Quantity.LENGTH, Bounds.ZONE_MM);
        fields.finish();
        if (near == null || far == null) {
            near = near == null
                    ? Bounds.ZONE_MM.clamp(Math.min(ZONE_NEAR_MM, far == null ? ZONE_NEAR_MM : far - ZONE_WIDTH_MM))
                    : near;
            far = far == null ? Bounds.ZONE_MM.clamp(Math.max(ZONE_FAR_MM, near + ZONE_WIDTH_MM)) : far;
            notes.taken(Default.ZONE, near, far);
        }
        if (near > far) {
            notes.fault(
                    "balanceZone",
                    Bounds.plain(near) + " to " + Bounds.plain(far) + " mm",
                    "near at most far",
                    "Maybe the two are swapped.");
        }
        return new FrameReader.Ends(near, far);
    }
}
