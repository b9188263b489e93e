package withy.oracle;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.brief.Objective;
import withy.catalog.Gloss;
import withy.catalog.Lab;
import withy.catalog.Material;
import withy.catalog.Part;
import withy.mechanics.ColourDifference;

/** Style, nice wishes and score a second time, in points, steps and plain decimals. */
final class SecondStyle {
    private final SecondRod rod;
    private final Brief brief;
    private final Set<Material> themed;
    private final @Nullable Gloss gloss;
    private final List<Lab> liked = new ArrayList<>();

    SecondStyle(SecondRod rod) {
        this.rod = rod;
        this.brief = rod.brief;
        String theme = brief.look().theme().toLowerCase(Locale.ROOT);
        liked.addAll(brief.look().likedColours());
        switch (theme) {
            case "classic" -> {
                themed = Set.of(Material.CORK, Material.WOOD, Material.NICKEL_SILVER, Material.SILK, Material.BRASS);
                gloss = Gloss.GLOSS;
                like(38, 14, 28, 62, 8, 30, 30, 4, 10, 74, 2, 8);
            }
            case "modern" -> {
                themed = Set.of(
                        Material.CARBON, Material.EVA, Material.TITANIUM, Material.CARBON_FILLED, Material.ALUMINIUM);
                gloss = Gloss.MATT;
                like(22, 0, -2, 45, 0, -4, 60, 0, -3);
            }
            case "natural" -> {
                themed = Set.of(Material.CORK, Material.WOOD, Material.RUBBER_CORK);
                gloss = Gloss.SATIN;
                like(62, 8, 30, 40, -8, 18, 45, 10, 26);
            }
            case "stealth" -> {
                themed = Set.of(Material.EVA, Material.CARBON, Material.CARBON_FILLED, Material.TITANIUM);
                gloss = Gloss.MATT;
                like(18, 0, 0, 26, 0, -1);
            }
            case "bright" -> {
                themed = Set.of(Material.EVA, Material.ALUMINIUM);
                gloss = Gloss.GLOSS;
                like(55, 60, 35, 45, 5, -55, 75, 10, 75, 60, -50, 40);
            }
            default -> {
                themed = Set.of();
                gloss = null;
            }
        }
    }

    private void like(double... lab) {
        for (int i = 0; i < lab.length; i += 3) {
            liked.add(new Lab(lab[i], lab[i + 1], lab[i + 2]));
        }
    }

    /** Points of 100. */
    double points() {
        double points = 14 * suits(rod.blank) + 14 * suits(rod.seat) + 3 * suits(rod.cap);
        points += (rod.split ? 16 : 24) * suits(rod.rearGrip) + 8 * suits(rod.buttGrip);
        points += 2 * suits(rod.rearCheck) + 3 * suits(rod.windingCheck) + 2 * suits(rod.tip);
        for (int n = 1; n <= rod.count; n++) {
            points += 12.0 / rod.count * suits(rod.guide(n));
        }
        points += 8 * suits(rod.thread) + 6 * together(rod.blank, rod.thread);
        return points + 4 * together(rod.blank, rod.seat) + 8 * together(rod.rearGrip, rod.seat);
    }

    private double suits(@Nullable Part part) {
        if (part == null) {
            return 0;
        }
        boolean wished = gloss != null || !brief.look().likedMaterials().isEmpty();
        boolean likes = themed.contains(part.facts().material())
                || brief.look().likedMaterials().contains(part.facts().material());
        double material = wished ? (likes ? 1 : 0) : 0.5;
        Gloss own = part.facts().gloss();
        double surface = gloss == null || own == null ? 0.5 : own == gloss ? 1 : 0;
        Lab colour = part.facts().colour();
        double nearest = 0.5;
        if (colour != null && !liked.isEmpty()) {
            double least = liked.stream()
                    .mapToDouble(lab -> difference(lab, colour))
                    .min()
                    .orElse(40);
            nearest = Math.max(0, 1 - least / 40);
        }
        return 0.4 * material + 0.2 * surface + 0.4 * nearest;
    }

    private static double difference(Lab a, Lab b) {
        return ColourDifference.between(a.l(), a.a(), a.b(), b.l(), b.a(), b.b());
    }

    private static double together(@Nullable Part one, @Nullable Part other) {
        if (one == null || other == null) {
            return 0;
        }
        Lab a = one.facts().colour();
        Lab b = other.facts().colour();
        if (a == null || b == null) {
            return 0.5;
        }
        double d = difference(a, b);
        double[][] curve = {{0, 1}, {4, 1}, {15, 0.3}, {45, 0.8}, {1000, 0.8}};
        for (int i = 1; i < curve.length; i++) {
            if (d <= curve[i][0]) {
                double share = (d - curve[i - 1][0]) / (curve[i][0] - curve[i - 1][0]);
                return curve[i - 1][1] + share * (curve[i][1] - curve[i - 1][1]);
            }
        }
        return 0.8;
    }

    /** Steps owed for nice wishes. */
    double missedSteps() {
        double missed = missed(brief.handle().form(), rod.build.layout().form())
                + missed(brief.handle().action(), rod.blank.action())
                + missed(brief.handle().keeper(), rod.keeper != null)
                + missed(brief.handle().foreGrip(), rod.foreGrip != null);
        if (rod.seat != null) {
            missed += missed(brief.handle().trigger(), rod.seat.trigger())
                    + missed(brief.handle().movingHood(), rod.seat.movingHood());
        }
        Map<String, Double> uses = new TreeMap<>();
        Map<String, Integer> stations = new TreeMap<>();
        uses.put(rod.blank.id(), 1.0);
        stations.put(rod.blank.id(), 1);
        rod.build.choices().forEach((station, choice) -> {
            double share = station.number() > 0 ? 1.0 / rod.count : 1;
            uses.merge(choice.partId(), share, Double::sum);
            stations.merge(choice.partId(), 1, Integer::sum);
        });
        for (PartWish wish : brief.insisted()) {
            missed += wish.hard() ? 0 : wish.steps() * Math.max(0, 1 - uses.getOrDefault(wish.partId(), 0.0));
        }
        for (PartWish wish : brief.refused()) {
            missed += wish.hard() ? 0 : wish.steps() * stations.getOrDefault(wish.partId(), 0);
        }
        return missed;
    }

    private static <T> double missed(@Nullable Wish<T> wish, T actual) {
        return wish == null || wish.hard() || wish.value().equals(actual) ? 0 : wish.steps();
    }

    /** Score in steps at mean priority. */
    double score(SecondFigures figures, int margin) {
        Map<Objective, Double> value = new EnumMap<>(Objective.class);
        value.put(Objective.WEIGHT, figures.weightG());
        value.put(Objective.BALANCE, figures.outsideNmm());
        value.put(Objective.SWING_WEIGHT, figures.swingWeightKgM2());
        value.put(Objective.PRICE, figures.priceMinor().doubleValue());
        value.put(Objective.STYLE, -points());
        value.put(Objective.DURABILITY, -(double) margin);
        double mean = 0;
        for (Objective objective : Objective.values()) {
            mean += brief.priority(objective) / 6;
        }
        double score = missedSteps();
        for (Objective objective : Objective.values()) {
            double weight = weight(objective, mean);
            double step = brief.step(objective);
            if (objective == Objective.DURABILITY) {
                double gram = weight(Objective.WEIGHT, mean) / brief.step(Objective.WEIGHT);
                score += value.get(objective) * Math.max(weight / step, gram);
            } else {
                score += weight * value.get(objective) / step;
            }
        }
        return score;
    }

    private double weight(Objective objective, double mean) {
        return Math.max(1e-4, mean > 0 ? brief.priority(objective) / mean : 0);
    }
}
