package withy.catalog;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What can be read but is hard to believe; never stands in the way, always told. Bounds are this project's, from common practice. */
final class CatalogPlausibility {
    /** A price read longer ago is asked about, years. */
    private static final int PRICE_YEARS = 2;

    /** A scale reading that differs more from the catalogue weight is asked about, as a share of it. */
    private static final double READING_SHARE = 0.25;

    private final Catalog catalog;
    private final Map<String, Integer> lines;
    private final Map<PartKind, Header> headers;
    private final List<Fault> warnings = new ArrayList<>();

    private CatalogPlausibility(Catalog catalog, Map<String, Integer> lines, Map<PartKind, Header> headers) {
        this.catalog = catalog;
        this.lines = lines;
        this.headers = headers;
    }

    /**
     * Warnings in the order of kinds and files.
     *
     * @param catalog the catalogue
     * @param lines line of each part id in its file
     * @param headers columns of each file
     */
    static List<Fault> warnings(Catalog catalog, Map<String, Integer> lines, Map<PartKind, Header> headers) {
        CatalogPlausibility plausibility = new CatalogPlausibility(catalog, lines, headers);
        PlausibleFit fit = new PlausibleFit(catalog, plausibility);
        for (PartKind kind : PartKind.values()) {
            for (Part part : catalog.all(kind)) {
                plausibility.facts(part);
                PlausibleWeight.check(part, plausibility);
                fit.check(part);
            }
        }
        return List.copyOf(plausibility.warnings);
    }

    /** Tells one. */
    void warn(Part part, String column, String value, String problem, String usual, String maybe) {
        String file = part.kind().fileName();
        Header header = headers.get(part.kind());
        String written = header == null ? column : header.written(column);
        warnings.add(new Fault(file, lines.getOrDefault(part.id(), 0), written, value, problem, usual, maybe));
    }

    private void facts(Part part) {
        PartFacts facts = part.facts();
        WeightRange usual = WeightRange.of(part.kind());
        if (facts.weightG() < usual.usualLeast() || facts.weightG() > usual.usualMost()) {
            warn(
                    part,
                    "weight_g",
                    Numbers.plain(facts.weightG()) + " g",
                    "is hard to believe for a " + part.kind().word(),
                    "usually " + Numbers.plain(usual.usualLeast()) + " to " + Numbers.plain(usual.usualMost()) + " g",
                    "the decimal mark slipped, or it is the weight of a whole pack");
        }
        Double measured = facts.measuredG();
        if (measured != null && Math.abs(measured - facts.weightG()) > READING_SHARE * facts.weightG()) {
            warn(
                    part,
                    "measured_g",
                    Numbers.plain(measured) + " g",
                    "is far from the catalogue weight of " + Numbers.plain(facts.weightG()) + " g",
                    "within a quarter of it",
                    "another part lay on the scale");
        }
        if (facts.priceMinor() == 0) {
            warn(part, "price", "0", "makes the part free", "more than 0", "the price is still to be filled in");
        }
        priceDate(part, facts.priceDate());
        if (facts.stock() == 0 && facts.leadDays() == null) {
            warn(
                    part,
                    "stock",
                    "0",
                    "and no lead_days: the part can't be had",
                    "stock above 0, or days until it arrives",
                    "lead_days is still to be filled in");
        }
    }

    private void priceDate(Part part, @Nullable LocalDate date) {
        if (date == null) {
            return;
        }
        if (date.isBefore(catalog.asOf().minusYears(PRICE_YEARS))) {
            warn(
                    part,
                    "price_date",
                    date.toString(),
                    "is more than " + PRICE_YEARS + " years ago",
                    "since " + catalog.asOf().minusYears(PRICE_YEARS),
                    "ask the supplier for today's price");
        } else if (date.isAfter(catalog.asOf())) {
            warn(
                    part,
                    "price_date",
                    date.toString(),
                    "lies ahead",
                    "up to " + catalog.asOf(),
                    "day and month changed places");
        }
    }
}
