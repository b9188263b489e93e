package withy.explain;

import java.util.Map;
import java.util.Objects;
import java.util.function.LongFunction;
import java.util.function.LongPredicate;
import org.jspecify.annotations.Nullable;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartFacts;
import withy.explain.Flip.Kind;
import withy.rod.Rod;
import withy.rod.Tariff;

/** At which price or weight of its own a part would win. */
final class PartFlips {
    /** Share of its weight down to which a lighter part is thought of. */
    private static final double LIGHTEST_SHARE = 0.5;

    private final Inquiry inquiry;
    private final Finding finding;

    PartFlips(Inquiry inquiry, Finding finding) {
        this.inquiry = inquiry;
        this.finding = finding;
    }

    /** At which price of the part. */
    @Nullable
    Flip price(Part part) {
        long now = part.facts().priceMinor();
        if (now == 0 || inquiry.brief().owned().contains(part.id())) {
            return null;
        }
        LongPredicate cheaper = off -> wins(part.with(priced(part.facts(), now - off)));
        if (!cheaper.test(now)) {
            return new Flip(
                    Kind.PRICE,
                    part.id(),
                    now,
                    0,
                    Double.NaN,
                    "minor",
                    Phrases.of("flip.price.never", part.facts().name()));
        }
        long off = Turning.firstFrom(Math.max(1, Math.min(now, guessMinor(part))), now, cheaper);
        return off < 0
                ? null
                : new Flip(
                        Kind.PRICE,
                        part.id(),
                        now,
                        now - off + 1,
                        now - off,
                        "minor",
                        Phrases.of("flip.price", part.facts().name(), inquiry.money(now - off), inquiry.money(now)));
    }

    private PartFacts priced(PartFacts facts, long minor) {
        return facts.withPrice(minor, inquiry.catalog().asOf());
    }

    /** What the part would have to be cheaper if the two builds stayed what they are. */
    private long guessMinor(Part part) {
        Found first = Objects.requireNonNull(finding.first());
        Found opponent = Objects.requireNonNull(finding.opponent());
        long pieces = opponent.build().choices().values().stream()
                .filter(choice -> choice.partId().equals(part.id()))
                .count();
        double gap = inquiry.score(opponent.vector()) - inquiry.score(first.vector());
        double milli = gap / inquiry.scoring().perCostMilli() / Math.max(1, pieces);
        return Math.max(1, (long) Math.ceil(milli / Tariff.MILLI));
    }

    /** At which weight of the part. */
    @Nullable
    Flip weight(Part part) {
        PartFacts facts = part.facts();
        double now = facts.massMg() / 1000.0;
        double grid = now < 3 ? 0.01 : 0.1;
        long most = (long) Math.floor(now * (1 - LIGHTEST_SHARE) / grid);
        LongFunction<Part> made = step -> part.with(facts.withScale(lighter(now, grid, step), facts.weightTolG()));
        LongPredicate lighter = step -> wins(made.apply(step));
        if (most < 1 || !lighter.test(most)) {
            return null;
        }
        long guess = Turning.first(most, step -> passes(made.apply(step)));
        long step = Turning.firstFrom(guess < 0 ? most : guess, most, lighter);
        return step < 0
                ? null
                : new Flip(
                        Kind.WEIGHT,
                        part.id(),
                        now,
                        lighter(now, grid, step - 1),
                        lighter(now, grid, step),
                        "g",
                        Phrases.of(
                                "flip.weight",
                                facts.name(),
                                inquiry.units().fineMass(lighter(now, grid, step)),
                                inquiry.units().fineMass(now)));
    }

    private static double lighter(double now, double grid, long step) {
        return step == 0 ? now : Math.round((Math.ceil(now / grid) - step) * grid * 1000) / 1000.0;
    }

    /** True where the opponent as it is, but for the part, scores no worse than the best build. */
    private boolean passes(Part changed) {
        Found first = Objects.requireNonNull(finding.first());
        Found opponent = Objects.requireNonNull(finding.opponent());
        Catalog other = inquiry.catalog()
                .changed(
                        Map.of(changed.id(), changed.facts()), inquiry.catalog().hash());
        Rod rod = Rod.measure(other, inquiry.brief(), opponent.build());
        return inquiry.score(inquiry.vector(rod)) <= inquiry.score(first.vector());
    }

    private boolean wins(Part changed) {
        var build = inquiry.solvedWith(changed, inquiry.query()).build();
        return build != null && build.holds(finding.parts());
    }
}
