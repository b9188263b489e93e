package withy.app;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Hand and balance of a finished rod.
 *
 * @param reachMm reel foot to butt end
 * @param forearmMinMm shortest forearm it suits by the body rule, or null
 * @param forearmMaxMm longest
 * @param womenPercent share of women between
 * @param menPercent share of men between
 * @param barrelMm seat where the palm lies, or null without a seat
 * @param barrelMinMm thinnest for the palm, or null on a surf rod
 * @param barrelMaxMm thickest
 * @param reels the brief's first, its name empty
 * @param counterweights lightest first
 */
public record HandSheet(
        double reachMm,
        double wantedMinMm,
        double wantedMaxMm,
        @Nullable Double forearmMinMm,
        @Nullable Double forearmMaxMm,
        @Nullable Double womenPercent,
        @Nullable Double menPercent,
        double palmMm,
        @Nullable Double barrelMm,
        @Nullable Double barrelMinMm,
        @Nullable Double barrelMaxMm,
        List<ReelBalance> reels,
        List<Counterweight> counterweights) {
    public HandSheet {
        reels = List.copyOf(reels);
        counterweights = List.copyOf(counterweights);
    }

    /**
     * With one reel on.
     *
     * @param balanceMm ahead of the reel foot
     * @param zoneGrams weight at the butt end that would bring the balance into the wanted zone; negative: too much there
     */
    public record ReelBalance(String name, double massG, double balanceMm, double tipHeavyNmm, double zoneGrams) {}

    /**
     * Weight at the butt end.
     *
     * @param swingWeightKgM2 added to the swing weight
     * @param tipGrams weight at the tip that would add as much
     */
    public record Counterweight(
            int grams, double balanceMm, double tipHeavyNmm, double swingWeightKgM2, double tipGrams) {}
}
