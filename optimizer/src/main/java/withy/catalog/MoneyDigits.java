package withy.catalog;

import java.util.Currency;

/** Decimal digits of a currency (ISO 4217). */
final class MoneyDigits {
    private MoneyDigits() {}

    static int of(String currency) {
        return Math.max(0, Currency.getInstance(currency).getDefaultFractionDigits());
    }

    static boolean known(String currency) {
        return Currency.getAvailableCurrencies().stream()
                .anyMatch(each -> each.getCurrencyCode().equals(currency));
    }
}
