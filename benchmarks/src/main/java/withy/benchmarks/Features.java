package withy.benchmarks;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.benchmarks.peer.Question;
import withy.benchmarks.peer.Question.Judged;
import withy.benchmarks.peer.Question.Slot;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rules.Rule;
import withy.rules.Rulebook;
import withy.search.Search;

/** What an instance is like: how many builds there are, how many of them are legal, what each rule takes away. */
final class Features {
    private static final int PROBES = 60;

    /** How much a choice that breaks one check more is drawn less often. */
    private static final double SHY = 3;

    private static final long FAILED = 1_000;

    private Features() {}

    /**
     * One question.
     *
     * @param scenario its name
     * @param parts size of the catalogue
     * @param layouts layouts
     * @param menu parts that brief and house leave
     * @param log10All logarithm of the number of builds
     * @param log10Legal logarithm of the estimate of legal ones, or null where no probe ended in one
     * @param legalProbes probes that ended in a legal build
     * @param refused parts refused by brief alone, by rule
     * @param dearer what each rule costs the best score, steps; null = with it there is no legal build, or not proven
     */
    record Instance(
            String scenario,
            int parts,
            int layouts,
            int menu,
            double log10All,
            @Nullable Double log10Legal,
            int legalProbes,
            Map<String, Integer> refused,
            Map<String, @Nullable Double> dearer) {}

    static Instance of(Shop shop, Scenario scenario) {
        Query query = scenario.query();
        Question question = new Question(shop.catalog(), query);
        Map<String, Integer> refused = new TreeMap<>();
        Search search = new Search(shop.catalog());
        search.candidates(query)
                .refused()
                .forEach(one -> refused.merge(one.why().rule(), 1, Integer::sum));
        Solution with = search.solve(query, new Cap(Cap.SECONDS).watch());
        Map<String, @Nullable Double> dearer = new LinkedHashMap<>();
        for (Rule rule : Rulebook.standard().rules()) {
            List<Rule> others = new ArrayList<>(Rulebook.standard().rules());
            others.remove(rule);
            Solution without =
                    search.solve(query.withRulebook(new Rulebook(others)), new Cap(Cap.SECONDS / 10).watch());
            boolean known = with.proven() && with.build() != null && without.build() != null && without.proven();
            dearer.put(rule.code(), known ? Double.valueOf(Scoring.steps(with.score() - without.score())) : null);
        }
        double all = 0;
        for (Layout layout : question.layouts()) {
            all += Math.pow(10, log10Builds(question, layout) - SCALE);
        }
        Probe probe = new Probe(question);
        Double legal = probe.log10Legal();
        return new Instance(
                scenario.name(),
                shop.parts(),
                question.layouts().size(),
                question.menu().size(),
                question.layouts().isEmpty() ? 0 : Math.log10(all) + SCALE,
                legal,
                probe.hits,
                refused,
                dearer);
    }

    /** Keeps the sum of so many builds within what a double holds. */
    private static final double SCALE = 20;

    private static double log10Builds(Question question, Layout layout) {
        double sum = 0;
        for (Slot slot : question.slots()) {
            sum += slot.station().number() > layout.guideCount()
                    ? 0
                    : Math.log10(slot.choices().size());
        }
        return sum;
    }

    /**
     * Estimates the legal builds without bias (Knuth, Estimating the efficiency of backtrack programs, 1975): walks down the stations, drawing what breaks less more
     * often, and weighs each legal end by one over its chance.
     */
    private static final class Probe {
        private final Question question;
        private final Random random = new Random(RandomBriefs.SEED);
        private int hits;

        Probe(Question question) {
            this.question = question;
        }

        @Nullable
        Double log10Legal() {
            double sum = 0;
            for (int i = 0; i < PROBES && !question.layouts().isEmpty(); i++) {
                Double one = walk();
                if (one != null) {
                    hits++;
                    sum += Math.pow(10, one - SCALE);
                }
            }
            return hits == 0 ? null : Double.valueOf(Math.log10(sum / PROBES) + SCALE);
        }

        private @Nullable Double walk() {
            Layout layout =
                    question.layouts().get(random.nextInt(question.layouts().size()));
            double log = Math.log10(question.layouts().size());
            List<@Nullable Choice> chosen = new ArrayList<>();
            question.slots().forEach(slot -> chosen.add(null));
            for (int i = 0; i < question.slots().size(); i++) {
                Slot slot = question.slots().get(i);
                if (slot.station().number() <= layout.guideCount()) {
                    log += draw(layout, chosen, i, slot);
                }
            }
            Judged judged = question.judge(question.build(layout, chosen));
            return judged.legal() ? Double.valueOf(log) : null;
        }

        /** Draws one station; the logarithm of one over the chance. */
        private double draw(Layout layout, List<@Nullable Choice> chosen, int i, Slot slot) {
            double[] weights = new double[slot.choices().size()];
            double least = Double.POSITIVE_INFINITY;
            for (int c = 0; c < weights.length; c++) {
                chosen.set(i, slot.choices().get(c));
                weights[c] =
                        (double) question.judge(question.build(layout, chosen)).broken() / FAILED;
                least = Math.min(least, weights[c]);
            }
            double sum = 0;
            for (int c = 0; c < weights.length; c++) {
                weights[c] = Math.exp(-SHY * (weights[c] - least));
                sum += weights[c];
            }
            double at = random.nextDouble() * sum;
            int c = 0;
            while (c < weights.length - 1 && at >= weights[c]) {
                at -= weights[c];
                c++;
            }
            chosen.set(i, slot.choices().get(c));
            return Math.log10(sum / weights[c]);
        }
    }

    static String text(List<Instance> instances) {
        StringBuilder text = new StringBuilder("## What the instances are like\n\n");
        if (instances.isEmpty()) {
            return text.append("Not run: no time was left.\n\n").toString();
        }
        text.append(
                        "All builds: the product of what may stand at each station, over all layouts. Legal ones: an unbiased estimate from ")
                .append(PROBES)
                .append(" weighted probes (seed " + RandomBriefs.SEED
                        + "); an order of magnitude, too low rather than too high where few probes end legally.\n\n");
        Table table = new Table(
                "scenario",
                "parts",
                "layouts",
                "parts left",
                "log10 of all builds",
                "log10 of legal builds",
                "legal probes");
        for (Instance one : instances) {
            table.row(
                    one.scenario(),
                    one.parts() + "",
                    one.layouts() + "",
                    one.menu() + "",
                    String.format(Locale.ROOT, "%.1f", one.log10All()),
                    one.log10Legal() == null ? "none seen" : String.format(Locale.ROOT, "%.1f", one.log10Legal()),
                    one.legalProbes() + " of " + PROBES);
        }
        text.append(table.text());
        text.append(
                "How binding each rule is: parts it refuses by the brief alone / by how many steps the best build would score better without it (? = not proven within 2 s, or nothing legal).\n\n");
        List<String> head = new ArrayList<>(List.of("rule"));
        instances.forEach(one -> head.add(one.scenario() + ", " + one.parts()));
        Table rules = new Table(head.toArray(String[]::new));
        for (Rule rule : Rulebook.standard().rules()) {
            List<String> row = new ArrayList<>(List.of(rule.code()));
            for (Instance one : instances) {
                Double cost = one.dearer().get(rule.code());
                row.add(one.refused().getOrDefault(rule.code(), 0) + " / " + (cost == null ? "?" : Table.number(cost)));
            }
            rules.row(row.toArray(String[]::new));
        }
        return text.append(rules.text()).toString();
    }
}
