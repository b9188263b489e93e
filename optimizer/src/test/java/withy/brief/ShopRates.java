package withy.brief;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import withy.catalog.Operation;
import withy.catalog.PartKind;
import withy.catalog.Rates;
import withy.catalog.RodType;

/** Rates of an invented shop and the day on which briefs are read in tests. */
final class ShopRates {
    static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    static final BriefContext CONTEXT = new BriefContext(rates("EUR", usualPrices()), DAY);

    private ShopRates() {}

    static Map<RodType, Long> usualPrices() {
        return Map.of(RodType.SPINNING, 52_000L, RodType.CASTING, 58_000L, RodType.SURF_SPINNING, 70_000L);
    }

    static Rates rates(String currency, Map<RodType, Long> usualPrices) {
        Map<Operation, Double> minutes = new EnumMap<>(Operation.class);
        for (Operation operation : Operation.values()) {
            minutes.put(operation, 10.0);
        }
        Map<PartKind, Double> tolerances = new EnumMap<>(PartKind.class);
        for (PartKind kind : PartKind.values()) {
            tolerances.put(kind, 3.0);
        }
        return new Rates(
                currency,
                21,
                15,
                3000,
                0,
                minutes,
                500,
                "finish-one",
                "adhesive-one",
                Map.of(RodType.SPINNING, List.of("A")),
                0.35,
                0.15,
                6,
                8,
                0.0009,
                tolerances,
                0.5,
                Rates.Steps.ASSUMED,
                usualPrices);
    }

    static Brief brief(String json) {
        return BriefReader.read(json, CONTEXT).orThrow();
    }

    static List<BriefFault> faults(String json) {
        return BriefReader.read(json, CONTEXT).faults();
    }
}
