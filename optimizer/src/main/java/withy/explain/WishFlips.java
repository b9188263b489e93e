package withy.explain;

import java.util.Currency;
import java.util.Objects;
import java.util.function.BiConsumer;
import java.util.function.LongPredicate;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Lure;
import withy.brief.BriefDraft;
import withy.catalog.Blank;
import withy.explain.Flip.Kind;
import withy.rod.LoadBearing;

/** At which other number of the brief parts would win. */
final class WishFlips {
    private static final double LURE_GRID_G = 0.5;

    private final Inquiry inquiry;
    private final Finding finding;

    WishFlips(Inquiry inquiry, Finding finding) {
        this.inquiry = inquiry;
        this.finding = finding;
    }

    @Nullable
    Flip heaviest(Blank blank) {
        Double own = blank.ownLureMaxG();
        double now = inquiry.brief().lure().heaviestG();
        double far = own != null ? own : blank.lureMaxG();
        return wish(
                "lure.heaviest",
                now,
                far,
                LURE_GRID_G,
                (draft, g) -> draft.lure(new Lure(
                        inquiry.brief().lure().lightestG(),
                        inquiry.brief().lure().usualG(),
                        g)));
    }

    @Nullable
    Flip usual(Blank blank) {
        Double own = blank.ownLureMinG();
        double now = inquiry.brief().lure().usualG();
        double far = own != null ? own : blank.lureMinG();
        return wish(
                "lure.usual",
                now,
                far,
                LURE_GRID_G,
                (draft, g) -> draft.lure(new Lure(
                        inquiry.brief().lure().lightestG(),
                        g,
                        inquiry.brief().lure().heaviestG())));
    }

    @Nullable
    Flip budget() {
        Long budget = inquiry.brief().budgetMinor();
        if (budget == null) {
            return null;
        }
        double unit = Math.pow(
                10,
                Math.max(
                        0,
                        Currency.getInstance(inquiry.catalog().rates().currency())
                                .getDefaultFractionDigits()));
        return wish("budgetMinor", budget, budget * 2.0, unit, (draft, minor) -> draft.budget(Math.round(minor)));
    }

    /** A sturdier rod, where the opponent is one. */
    @Nullable
    Flip durability() {
        int now = inquiry.brief().durabilityClass();
        int far = LoadBearing.weakestClass(
                Objects.requireNonNull(finding.opponent()).rod());
        return wish(
                "durabilityClass",
                now,
                far,
                1,
                (draft, n) -> draft.classes((int) Math.round(n), inquiry.brief().corrosionClass()));
    }

    private @Nullable Flip wish(String key, double now, double far, double grid, BiConsumer<BriefDraft, Double> set) {
        boolean up = far > now;
        if (far == now
                || key.equals("lure.heaviest") != up && key.startsWith("lure")
                || key.equals("durabilityClass") && !up) {
            return null;
        }
        Dial dial = new Dial("flip." + key, now, far, grid, set, value -> told(key, value), unit(key));
        LongPredicate changed = step ->
                Flips.wins(inquiry, finding, inquiry.query().withBrief(dial.turned(inquiry.brief(), dial.at(step))));
        long step = Turning.first(dial.steps(), changed);
        return step < 0
                ? null
                : new Flip(
                        Kind.WISH,
                        key,
                        now,
                        dial.at(step - 1),
                        dial.at(step),
                        dial.unit(),
                        Phrases.of("flip.wish." + key, told(key, dial.at(step)), told(key, now)));
    }

    private String told(String key, double value) {
        return switch (key) {
            case "budgetMinor" -> inquiry.money(Math.round(value));
            case "durabilityClass" -> Long.toString(Math.round(value));
            default -> inquiry.units().lureMass(value);
        };
    }

    private static String unit(String key) {
        return key.equals("budgetMinor") ? "minor" : key.startsWith("lure") ? "g" : "class";
    }
}
