package withy.brief;

/** A brief that tells everything there is to tell, once. */
final class FullBrief {
    static final String JSON = """
            {
              "$schema": "brief.schema.json", "schema": 1, "name": "All told", "customer": "Estuary",
              "rodType": "casting", "hands": 2, "fishedFrom": "pier",
              "lengthMm": {"min": 1950, "max": 2100}, "pieces": {"min": 1, "max": 2}, "packedMaxMm": 1500,
              "lure": {"lightestG": 20, "usualG": 40, "heaviestG": 60},
              "line": {"kind": "braid", "gauge": "PE 1.5", "diameterMm": 0.21, "strengthKg": 13},
              "leader": {"strengthKg": 12, "gauge": "no. 7", "diameterMm": 0.44, "lengthMm": 1500, "knot": "pr", "castThroughRings": true},
              "dragKg": 4,
              "reel": {"size": 200, "footLengthMm": 56, "footThicknessMm": 2.9, "footWidthMm": 11, "massG": 210,
                       "centreOffsetMm": 0, "lipDiameterMm": 26, "stemHeightMm": 22},
              "largestFishKg": 6, "landing": "net", "durabilityClass": 4, "water": "salt",
              "hand": {"size": "large", "palmMm": 91, "forearmMm": 350}, "reachMm": {"min": 300, "max": 360},
              "handle": {"form": {"value": "split", "need": "nice", "steps": 2}, "foreGrip": true, "trigger": true,
                         "movingHood": {"value": "front", "need": "hard"},
                         "keeper": {"value": false, "need": "nice", "steps": 1},
                         "action": {"value": "fast", "need": "nice", "steps": 3}, "mixedGrips": true},
              "look": {"theme": "stealth", "likedMaterials": ["eva", "carbon"], "refusedMaterials": ["cork"],
                       "likedColours": ["#101010", [40, 0, -20.5]], "inscription": "Harbour 7"},
              "budgetMinor": 75000, "wantedBy": "2026-06-30",
              "priorities": {"weight": 2, "balance": 1, "swingWeight": 1, "price": 0.5, "style": 1, "durability": 3},
              "balanceZone": {"nearMm": 30, "farMm": 100},
              "steps": {"weightG": 4, "balanceNmm": 20, "swingWeightKgM2": 0.002, "priceMinor": 3000, "stylePoints": 10, "durabilityClasses": 1},
              "insisted": ["tip-top-one", {"part": "seat-one", "need": "nice", "steps": 5}],
              "owned": ["seat-two"], "refused": ["guide-one", {"part": "grip-one", "need": "nice", "steps": 1}],
              "counterweightAsked": true, "guidesByClearance": true
            }
            """;

    private FullBrief() {}
}
