package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import withy.catalog.Guide;
import withy.catalog.PartKind;
import withy.catalog.TipTop;
import withy.rod.Placed;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * The guides still offered, in groups of which one train is made, with which guide may follow which. Worked out once a question: whether one
 * guide may follow another depends on brief and number only, never on the layout.
 */
final class GuideTable {
    /** Guide numbers from here on are all runners and asked alike. */
    static final int RUNNER = 4;

    private final Task task;
    private final List<Group> groups = new ArrayList<>();

    GuideTable(Task task) {
        this.task = task;
        boolean oneFinish =
                task.rules.rules().stream().anyMatch(rule -> rule.code().equals("guide-train"));
        Map<String, List<Guide>> byFinish = new LinkedHashMap<>();
        for (Guide guide : task.candidates.of(PartKind.GUIDE, Guide.class)) {
            String key = oneFinish ? guide.frameFinish() + "|" + guide.ringMaterial() : "";
            byFinish.computeIfAbsent(key, k -> new ArrayList<>()).add(guide);
        }
        byFinish.forEach((key, guides) -> groups.add(new Group(guides, tipTops(key, oneFinish))));
    }

    private List<TipTop> tipTops(String key, boolean oneFinish) {
        List<TipTop> fitting = new ArrayList<>();
        for (TipTop tipTop : task.candidates.of(PartKind.TIP_TOP, TipTop.class)) {
            if (!oneFinish || key.equals(tipTop.frameFinish() + "|" + tipTop.ringMaterial())) {
                fitting.add(tipTop);
            }
        }
        return fitting;
    }

    List<Group> groups() {
        return groups;
    }

    /** Guides and tip-tops of which one train can be made. */
    final class Group {
        final Guide[] guides;
        final TipTop[] tipTops;
        final long[] massMg;
        final long[] costMilli;
        /** Index of the guide's foot shape (feet, foot length) in {@link #footShapes}. */
        final int[] footShape;

        final List<double[]> footShapes = new ArrayList<>();
        private final Map<Integer, boolean[][]> follows = new LinkedHashMap<>();
        private final Map<Integer, int[]> standing = new LinkedHashMap<>();
        private boolean[][] tipFollows = new boolean[0][0];

        Group(List<Guide> members, List<TipTop> tips) {
            List<Guide> sorted = new ArrayList<>(members);
            sorted.sort(Comparator.comparingDouble(guide -> -guide.ringSize()));
            guides = sorted.toArray(Guide[]::new);
            tipTops = tips.toArray(TipTop[]::new);
            massMg = new long[guides.length];
            costMilli = new long[guides.length];
            footShape = new int[guides.length];
            for (int g = 0; g < guides.length; g++) {
                massMg[g] = guides[g].massMg();
                footShape[g] = shapeOf(guides[g]);
                costMilli[g] = task.tariff.partMilli(guides[g], 1) + task.tariff.workMilli(guides[g]);
            }
        }

        /** Guides that may stand at a number, each at least of a class; asked of the rules once a question. */
        synchronized int[] standing(Setting any, int number, int leastClass) {
            int asked = Math.min(number, RUNNER);
            return standing.computeIfAbsent(asked * 100 + leastClass, key -> {
                Refusal refusal = new Refusal();
                int[] fitting = new int[guides.length];
                int n = 0;
                for (int g = 0; g < guides.length; g++) {
                    if (guides[g].facts().durabilityClass() >= leastClass) {
                        Station station = Station.guide(asked);
                        task.rules.onPart(any, new Placed(station, guides[g], any.guideMm(1), 0), refusal.reset());
                        if (!refusal.refused()) {
                            fitting[n++] = g;
                        }
                    }
                }
                return Arrays.copyOf(fitting, n);
            });
        }

        /** Whether guide j may stand at number + 1 where guide i stands at number. */
        synchronized boolean[][] follows(Setting any, int number) {
            int asked = Math.min(number, RUNNER);
            return follows.computeIfAbsent(asked, key -> {
                Refusal refusal = new Refusal();
                boolean[][] may = new boolean[guides.length][guides.length];
                for (int i = 0; i < guides.length; i++) {
                    for (int j = 0; j < guides.length; j++) {
                        task.rules.onGuides(any, guides[i], asked, guides[j], refusal.reset());
                        may[i][j] = !refusal.refused();
                    }
                }
                return may;
            });
        }

        /** Whether tip-top j may stand ahead of guide i. */
        synchronized boolean[][] tipFollows(Setting any) {
            if (tipFollows.length != guides.length) {
                Refusal refusal = new Refusal();
                boolean[][] may = new boolean[guides.length][tipTops.length];
                for (int i = 0; i < guides.length; i++) {
                    for (int j = 0; j < tipTops.length; j++) {
                        task.rules.onTip(any, guides[i], tipTops[j], refusal.reset());
                        may[i][j] = !refusal.refused();
                    }
                }
                tipFollows = may;
            }
            return tipFollows;
        }

        private int shapeOf(Guide guide) {
            for (int s = 0; s < footShapes.size(); s++) {
                if (footShapes.get(s)[0] == guide.feet() && footShapes.get(s)[1] == guide.footLengthMm()) {
                    return s;
                }
            }
            footShapes.add(new double[] {guide.feet(), guide.footLengthMm()});
            return footShapes.size() - 1;
        }
    }
}
