package withy.brief;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** One seeded random brief, told twice: in inches, ounces and pounds as typed text, and in millimetres, grams and kilograms as numbers. */
final class RandomBrief {
    private static final BigDecimal INCH_MM = new BigDecimal("25.4");
    private static final BigDecimal OUNCE_G = new BigDecimal("28.349523125");
    private static final BigDecimal POUND_KG = new BigDecimal("0.45359237");

    private final Random random;
    private final List<String> imperial = new ArrayList<>();
    private final List<String> metric = new ArrayList<>();

    RandomBrief(Random random) {
        this.random = random;
        int feet = 5 + random.nextInt(3);
        int inches = random.nextInt(12);
        int more = random.nextInt(8);
        both(
                "\"length\": {\"min\": \"" + feet + "'" + inches + "\\\"\", \"max\": \"" + feet + "'" + inches + " "
                        + more + "/8\\\"\"}",
                "\"lengthMm\": {\"min\": " + mm(feet * 12 + inches, 0, 8) + ", \"max\": "
                        + mm(feet * 12 + inches, more, 8) + "}");
        both("\"rodType\": \"" + (random.nextBoolean() ? "spinning" : "casting") + "\"", null);
        int sixteenths = 1 + random.nextInt(15);
        both(
                "\"lure\": {\"usual\": \"" + sixteenths + "/16 oz\"}",
                "\"lure\": {\"usualG\": " + scaled(OUNCE_G, sixteenths, 16, 3) + "}");
        int thousandths = 3 + random.nextInt(15);
        int pounds = 4 + random.nextInt(30);
        both(
                "\"line\": {\"kind\": \"nylon\", \"diameter\": \"0." + String.format("%03d", thousandths) + " in\"}",
                "\"line\": {\"kind\": \"nylon\", \"diameterMm\": " + scaled(INCH_MM, thousandths, 1000, 4) + "}");
        both(
                "\"leader\": {\"strength\": \"" + pounds + " lb\", \"length\": \"" + (1 + random.nextInt(1)) + " ft\"}",
                "\"leader\": {\"strengthKg\": " + scaled(POUND_KG, pounds, 1, 4) + ", \"lengthMm\": 304.8}");
        int drag = 1 + random.nextInt(12);
        both("\"drag\": \"" + drag + " lb\"", "\"dragKg\": " + scaled(POUND_KG, drag, 1, 4));
        int fish = 1 + random.nextInt(20);
        both("\"largestFish\": \"" + fish + " lb\"", "\"largestFishKg\": " + scaled(POUND_KG, fish, 1, 3));
        int mass = 6 + random.nextInt(10);
        int foot = 2 * 64 + random.nextInt(64);
        both(
                "\"reel\": {\"mass\": \"" + mass + " oz\", \"footLength\": \"" + foot / 64 + " " + foot % 64
                        + "/64 in\"}",
                "\"reel\": {\"massG\": " + scaled(OUNCE_G, mass, 1, 3) + ", \"footLengthMm\": "
                        + scaled(INCH_MM, foot, 64, 4) + "}");
        int palm = 45 + random.nextInt(15);
        both(
                "\"hand\": {\"palm\": \"" + palm / 16 + " " + palm % 16 + "/16 in\"}",
                "\"hand\": {\"palmMm\": " + scaled(INCH_MM, palm, 16, 4) + "}");
        if (random.nextBoolean()) {
            int reach = 8 + random.nextInt(6);
            both("\"reach\": \"" + reach + " in\"", "\"reachMm\": " + scaled(INCH_MM, reach, 1, 4));
        }
        int packed = 30 + random.nextInt(40);
        both("\"packedMax\": \"" + packed + " in\"", "\"packedMaxMm\": " + scaled(INCH_MM, packed, 1, 4));
        int near = 1 + random.nextInt(2);
        both(
                "\"balanceZone\": {\"near\": \"" + near + " in\", \"far\": \"" + (near + 3) + " in\"}",
                "\"balanceZone\": {\"nearMm\": " + scaled(INCH_MM, near, 1, 4) + ", \"farMm\": "
                        + scaled(INCH_MM, near + 3, 1, 4) + "}");
        int euros = 300 + random.nextInt(500);
        both("\"budget\": \"" + euros + ".50\"", "\"budgetMinor\": " + euros + "50");
    }

    String imperial() {
        return "{" + String.join(", ", imperial) + "}";
    }

    String metric() {
        return "{" + String.join(", ", metric) + "}";
    }

    private void both(String inImperial, String inMetric) {
        imperial.add(inImperial);
        metric.add(inMetric == null ? inImperial : inMetric);
    }

    private static String mm(int inches, int part, int parts) {
        return scaled(INCH_MM, inches * parts + part, parts, 4);
    }

    /** unit × count / parts, exactly, then rounded half up to the grid of the field as a metric customer would read it off. */
    private static String scaled(BigDecimal unit, int count, int parts, int decimals) {
        return unit.multiply(BigDecimal.valueOf(count))
                .divide(BigDecimal.valueOf(parts))
                .setScale(decimals, java.math.RoundingMode.HALF_UP)
                .toPlainString();
    }
}
