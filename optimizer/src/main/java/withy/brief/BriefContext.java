package withy.brief;

import java.time.LocalDate;
import java.util.Currency;
import withy.catalog.Rates;

/**
 * What the shop adds to a brief.
 *
 * @param rates currency, steps and usual prices
 * @param asOf the day the brief is read; a date wanted lies on it or after it
 */
public record BriefContext(Rates rates, LocalDate asOf) {

    /** Currency of every amount in the brief. */
    public Currency currency() {
        return Currency.getInstance(rates.currency());
    }
}
