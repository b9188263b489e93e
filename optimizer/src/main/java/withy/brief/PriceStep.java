package withy.brief;

import java.util.Currency;
import org.jspecify.annotations.Nullable;
import withy.catalog.Rates;
import withy.catalog.RodType;
import withy.units.Money;

/**
 * The least difference in price worth noticing: the rates' percent of the budget, or of the usual price of the rod type.
 *
 * @param minor minor units, at least 1
 * @param sentence what the answer says about it
 */
record PriceStep(long minor, String sentence) {
    /** ASSUMED where rates have no usual price for the type: 5 % of 500 units of two decimals. */
    private static final long ASSUMED_MINOR = 2500;

    static PriceStep of(Rates rates, RodType type, @Nullable Long budgetMinor) {
        Currency currency = Currency.getInstance(rates.currency());
        Long usual = rates.usualPriceMinor().get(type);
        double percent = rates.steps().pricePercent();
        Long whole = budgetMinor == null ? usual : budgetMinor;
        if (whole == null) {
            return new PriceStep(
                    ASSUMED_MINOR, Default.STEP_PRICE_ASSUMED.sentence(Money.print(ASSUMED_MINOR, currency)));
        }
        long minor = Math.max(1, Math.round(whole * percent / 100));
        String ofWhat = (budgetMinor == null ? "the usual price, " : "the budget, ") + Money.print(whole, currency);
        return new PriceStep(minor, Default.STEP_PRICE.sentence(Money.print(minor, currency), percent, ofWhat));
    }

    void tell(Notes notes) {
        notes.taken(sentence);
    }
}
