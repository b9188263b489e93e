package withy.oracle;

import withy.brief.Brief;
import withy.fixture.Changed;

/** A brief with one number said otherwise, told from the names of its fields alone. */
final class Said {
    private Said() {}

    static Brief of(Brief brief, String field, double now, double value) {
        if (Double.isNaN(value)) {
            throw new IllegalArgumentException(field + " without a number");
        }
        boolean more = value > now;
        double share = value / now;
        return switch (field) {
            case "lengthMm" -> Changed.with(brief, more ? "lengthMaxMm" : "lengthMinMm", value);
            case "pieces" -> Changed.with(brief, more ? "piecesMax" : "piecesMin", value);
            case "reachMm" -> Changed.with(brief, more ? "reachMaxMm" : "reachMinMm", value);
            case "packedMaxMm" -> Changed.with(brief, "packedMaxMm", value);
            case "lure.usual" -> Changed.with(brief, "lure.usualG", value);
            case "lure.heaviest" -> Changed.with(brief, "lure.heaviestG", value);
            case "largestFish" -> Changed.with(brief, "largestFishKg", value);
            case "durabilityClass" -> Changed.with(brief, "durabilityClass", value);
            case "water" -> Changed.with(brief, "corrosionClass", value);
            case "budgetMinor" -> Changed.with(brief, "budgetMinor", (long) value);
            case "wantedBy" -> Changed.with(brief, "wantedBy", brief.wantedBy().plusDays(Math.round(value)));
            case "line.strength" ->
                Changed.with(
                        Changed.with(brief, "line.strengthKg", value),
                        "line.diameterMm",
                        brief.line().diameterMm() * Math.sqrt(share));
            case "leader.strength" ->
                Changed.with(
                        Changed.with(brief, "leader.strengthKg", value),
                        "leader.diameterMm",
                        brief.leader().diameterMm() * Math.sqrt(share));
            default -> throw new IllegalArgumentException("no number in " + field);
        };
    }
}
