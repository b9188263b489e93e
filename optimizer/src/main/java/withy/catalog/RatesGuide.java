package withy.catalog;

import java.util.LinkedHashMap;
import java.util.Map;

/** The fields of {@code rates.json} as part of the page on catalogue folders. */
final class RatesGuide {
    private static final Map<String, String> FIELDS = new LinkedHashMap<>();

    static {
        tell("schema", "number of this format: 1");
        tell("currency", "ISO 4217 code of every price");
        tell("taxPercent", "tax on what the customer pays");
        tell("marginPercent", "margin on parts, materials and work together");
        tell("hourlyRateMinor", "an hour of work, in the smallest coin: 3000 is 30.00 EUR");
        tell("labourDiscountPercent", "taken off the price of work");
        tell("labourMinutes", "minutes of one operation each, the layout and the coats once a rod");
        tell("sundriesMinor", "sandpaper, tape, cups and brushes of one rod, in the smallest coin");
        tell("houseFinish", "id in finishes.csv");
        tell("houseAdhesive", "id in adhesives.csv");
        tell("threadLetters", "thread sizes the shop uses, by rod type");
        tell("finishFilmMm", "thickness of the finish over the thread, both coats");
        tell("adhesiveFilmMm", "thickness of glue under grips and arbors");
        tell("finishMixMinMl", "smallest mix of finish that can be trusted, each coat");
        tell("adhesiveMixMl", "glue mixed for one rod");
        tell("tapeDensityGMm3", "mass of tape rings, g a cubic millimetre");
        tell("houseTolerancePercent", "how far a weight may be off where the list states no tolerance, by kind");
        tell("workmanshipToleranceG", "how far glue and finish may be off, g a rod");
        tell("steps", "least difference worth noticing, by objective; may be left out");
        tell(
                "usualPriceMinor",
                "what a rod of the type usually costs the customer, in the smallest coin; stands in where no budget is told");
    }

    private RatesGuide() {}

    private static void tell(String field, String what) {
        FIELDS.put(field, what);
    }

    static String text() {
        StringBuilder page = new StringBuilder();
        page.append(
                "## rates.json\n\nBegin with that of `bench` and change its figures; `withy check` tells what is allowed.\n\n");
        page.append("| field | what |\n|--|--|\n");
        FIELDS.forEach((field, what) ->
                page.append("| `").append(field).append("` | ").append(what).append(" |\n"));
        return page.append('\n').toString();
    }
}
