package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withy.app.BuildReader;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Part;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Style;
import withy.rod.Build;
import withy.rod.Figures;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Protocol;
import withy.rules.Rulebook;
import withy.rules.Unit;
import withy.rules.Verdict;

/** Numbers that may be said: of builds measured and judged here again, of the brief, of values that were tried. */
final class MaySay {
    private static final Pattern NUMBER = Pattern.compile("(?<![\\w.])-?\\d+(\\.\\d+)?");

    private final SmallShop.Case shop;
    private final Brief brief;
    private final Set<String> may = new HashSet<>();
    private final int digits;
    private int numbers;

    MaySay(SmallShop.Case shop) {
        this.shop = shop;
        this.brief = shop.query().brief();
        this.digits = Currency.getInstance(shop.catalog().rates().currency()).getDefaultFractionDigits();
    }

    /** Numbers compared so far. */
    int numbers() {
        return numbers;
    }

    /** A build as it is written in an answer, measured. */
    Rod read(JsonNode file) throws Exception {
        BuildReader.Reading reading = BuildReader.read(file.toString(), shop.catalog());
        assertEquals(List.of(), reading.faults());
        Build build = Objects.requireNonNull(reading.build());
        return Rod.measure(shop.catalog(), brief, build);
    }

    void holds(String text) {
        String bare = text.replaceAll("\\s+", " ");
        List<String> names = new ArrayList<>();
        shop.catalog().byId().values().forEach(part -> names.add(part.facts().name()));
        names.add(brief.name());
        names.sort(Comparator.comparingInt(String::length).reversed());
        for (String name : names) {
            bare = bare.replace(name, "#");
        }
        bare = bare.replaceAll("Guides? \\d+( to \\d+)?", "")
                .replaceAll("from class \\d|class \\d asks|of size \\d+", "");
        Matcher matcher = NUMBER.matcher(bare);
        while (matcher.find()) {
            numbers++;
            String said =
                    bare.substring(Math.max(0, matcher.start() - 60), Math.min(bare.length(), matcher.end() + 30));
            assertTrue(may.contains(plain(matcher.group())), () -> matcher.group() + " in: " + said);
        }
    }

    void rod(Rod rod) {
        say(1, rod.figures().weightG());
        money(rod.figures().priceMinor());
        Judge.judge(rod, Rulebook.standard()).forEach(this::verdict);
    }

    void pair(Rod one, Rod other) {
        for (Objective objective : Objective.values()) {
            pair(objective, one, other);
        }
    }

    /** What two rods differ by in one thing. */
    void pair(Objective objective, Rod one, Rod other) {
        Figures a = one.figures();
        Figures b = other.figures();
        switch (objective) {
            case WEIGHT -> {
                between(1, a.weightG(), b.weightG());
                say(1, Math.hypot(a.weightToleranceG(), b.weightToleranceG()));
            }
            case BALANCE -> between(0, a.balanceOutsideZoneNmm(), b.balanceOutsideZoneNmm());
            case SWING_WEIGHT -> between(4, a.swingWeightKgM2(), b.swingWeightKgM2());
            case PRICE -> money(Math.abs(a.priceMinor() - b.priceMinor()));
            case STYLE ->
                between(0, vector(one).styleCenti() / 100.0, vector(other).styleCenti() / 100.0);
            case DURABILITY ->
                say(0, Math.abs(vector(one).durabilityClasses() - vector(other).durabilityClasses()));
        }
    }

    private ObjectiveVector vector(Rod rod) {
        return ObjectiveVector.of(rod, new Style(shop.catalog(), brief), new NiceWishes(brief));
    }

    void part(Part part) {
        Protocol protocol = new Protocol();
        Rulebook.standard().onCandidate(brief, shop.catalog(), part, protocol);
        protocol.verdicts(Rulebook.standard()).forEach(this::verdict);
    }

    void verdict(Verdict verdict) {
        double miss = Math.abs(verdict.measured() - verdict.limit());
        for (double value : new double[] {verdict.measured(), verdict.limit(), miss}) {
            if (verdict.unit() == Unit.MINOR) {
                money(Math.round(value));
            } else if (!Double.isNaN(value)) {
                for (int decimals = 0; decimals <= 3; decimals++) {
                    say(decimals, value);
                }
                if (verdict.unit() == Unit.RATIO) {
                    say(0, value * 100);
                    say(1, value * 100);
                }
            }
        }
    }

    /** Values that were tried: priorities and weights as they are, prices in the currency, changes as differences. */
    void flip(JsonNode flip) {
        for (String which : List.of("now", "wins")) {
            if (flip.path(which).isNumber()) {
                double value = flip.path(which).asDouble();
                double difference =
                        Math.abs(flip.path("wins").asDouble() - flip.path("now").asDouble());
                for (double one : new double[] {value, difference, value / 1000, difference / 1000}) {
                    for (int decimals = 0; decimals <= 2; decimals++) {
                        say(decimals, one);
                    }
                }
                money(Math.round(value));
                money(Math.round(difference));
            }
        }
    }

    /** What the customer told. */
    void brief() {
        for (double mm : new double[] {
            brief.lengthMinMm(), brief.lengthMaxMm(), brief.reachMinMm(), brief.reachMaxMm(), brief.palmMm()
        }) {
            say(1, mm);
            say(2, mm / 1000);
        }
        if (brief.packedMaxMm() != null) {
            say(1, brief.packedMaxMm());
        }
        for (int count :
                new int[] {brief.piecesMin(), brief.piecesMax(), brief.durabilityClass(), brief.corrosionClass()}) {
            say(0, count);
        }
        say(1, brief.lure().usualG());
        say(1, brief.lure().heaviestG());
        say(1, brief.line().strengthKg());
        say(1, brief.reel().footLengthMm());
        if (brief.leader() != null) {
            say(1, brief.leader().strengthKg());
        }
    }

    void money(long minor) {
        say(digits, minor / Math.pow(10, digits));
    }

    void say(int decimals, double value) {
        may.add(plain(String.format(Locale.ROOT, "%." + decimals + "f", value)));
    }

    /** What a reader gets who subtracts one figure from the other as they are printed. */
    private void between(int decimals, double value, double other) {
        String print = "%." + decimals + "f";
        BigDecimal printed = new BigDecimal(String.format(Locale.ROOT, print, value));
        BigDecimal less = new BigDecimal(String.format(Locale.ROOT, print, other));
        may.add(plain(printed.subtract(less).abs().toPlainString()));
    }

    /** Without needless noughts. */
    private static String plain(String number) {
        return new BigDecimal(number).stripTrailingZeros().toPlainString();
    }
}
