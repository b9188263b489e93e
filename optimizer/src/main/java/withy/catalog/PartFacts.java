package withy.catalog;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What every part of every kind carries.
 *
 * @param id unique across kinds; lower case, digits, hyphens
 * @param maker invented or real maker's name, as the builder writes it
 * @param model the maker's name for the part
 * @param priceMinor what the shop pays for one piece (thread: one spool; finish, adhesive: one pack), minor units of the catalogue's currency,
 *     without tax
 * @param priceDate day the price was read, or null
 * @param packQty pieces that must be ordered together, at least 1
 * @param stock free pieces on the shelf
 * @param leadDays days until an ordered piece arrives; null = cannot be ordered
 * @param supplier who it is ordered from, or empty
 * @param bin where it lies, or empty
 * @param weightG catalogue weight of one piece, g
 * @param weightTolG stated tolerance (±) of the catalogue weight, g; the kind's house tolerance where the file leaves it out
 * @param measuredG mean of the shop's own scale readings, g, or null
 * @param material what it is mainly made of
 * @param colour visible colour (CIE L*a*b*, D65), or null where the part does not show
 * @param gloss surface, or null
 * @param setCode colour-and-finish set it belongs to, or empty
 * @param durabilityClass 1 to 5, trade table
 * @param corrosionClass 1 fresh water only … 4 salt every day
 */
public record PartFacts(
        String id,
        String maker,
        String model,
        long priceMinor,
        @Nullable LocalDate priceDate,
        int packQty,
        int stock,
        @Nullable Integer leadDays,
        String supplier,
        String bin,
        double weightG,
        double weightTolG,
        @Nullable Double measuredG,
        Material material,
        @Nullable Lab colour,
        @Nullable Gloss gloss,
        String setCode,
        int durabilityClass,
        int corrosionClass) {

    /** Weight to build with, milligrams, rounded half up. */
    public long massMg() {
        return Math.round((measuredG != null ? measuredG : weightG) * 1000.0);
    }

    /** True where a scale reading stands behind the weight. */
    public boolean weighed() {
        return measuredG != null;
    }

    /** The same with another number of free pieces. */
    public PartFacts withStock(int pieces) {
        return with(pieces, leadDays, weightTolG, measuredG, priceMinor, priceDate);
    }

    /** The same with no more to be ordered. */
    public PartFacts notOrdered() {
        return with(stock, null, weightTolG, measuredG, priceMinor, priceDate);
    }

    /** The same with what the shop's scale says. */
    public PartFacts withScale(double meanG, double toleranceG) {
        return with(stock, leadDays, toleranceG, meanG, priceMinor, priceDate);
    }

    /** The same at another price. */
    public PartFacts withPrice(long minor, LocalDate date) {
        return with(stock, leadDays, weightTolG, measuredG, minor, date);
    }

    /** The same with another ± of the weight. */
    public PartFacts withTolerance(double toleranceG) {
        return with(stock, leadDays, toleranceG, measuredG, priceMinor, priceDate);
    }

    private PartFacts with(
            int pieces,
            @Nullable Integer days,
            double toleranceG,
            @Nullable Double meanG,
            long minor,
            @Nullable LocalDate date) {
        return new PartFacts(
                id,
                maker,
                model,
                minor,
                date,
                packQty,
                pieces,
                days,
                supplier,
                bin,
                weightG,
                toleranceG,
                meanG,
                material,
                colour,
                gloss,
                setCode,
                durabilityClass,
                corrosionClass);
    }

    /** Maker and model as one name. */
    public String name() {
        return maker + " " + model;
    }
}
