package withy.app;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What {@code parts} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param catalogHash hash of the catalogue
 * @param currency currency of every price
 * @param parts the parts that pass every filter, in the order of the files
 */
public record PartsAnswer(int schema, String catalogHash, String currency, List<Line> parts) {
    public PartsAnswer {
        parts = List.copyOf(parts);
    }

    /**
     * One part.
     *
     * @param part catalogue id
     * @param kind word for its kind
     * @param name maker and model
     * @param about what a builder picks it by, in his units
     * @param material what it is mainly made of
     * @param weightG weight to build with, g (thread, finish, adhesive: one pack)
     * @param weightToleranceG ± of it, g
     * @param weighed true where a scale reading stands behind it
     * @param priceMinor what the shop pays for one, minor units
     * @param priceDate day the price was read, or null
     * @param stock free pieces on the shelf
     * @param leadDays days until an ordered piece arrives; null = cannot be ordered
     * @param durabilityClass 1 to 5
     * @param corrosionClass 1 to 4
     */
    public record Line(
            String part,
            String kind,
            String name,
            String about,
            String material,
            double weightG,
            double weightToleranceG,
            boolean weighed,
            long priceMinor,
            @Nullable String priceDate,
            int stock,
            @Nullable Integer leadDays,
            int durabilityClass,
            int corrosionClass) {}
}
