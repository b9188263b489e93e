package withy.benchmarks;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.BriefDraft;
import withy.brief.Objective;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Curve;
import withy.explain.Found;
import withy.explain.Impossible;
import withy.explain.Inquiry;
import withy.explain.Ledger;
import withy.explain.WhyNot;
import withy.objectives.Solver.Query;
import withy.rod.Build;
import withy.search.Search;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** The questions asked of an offer. The best build is known before the clock starts, as it is where they are asked. */
final class Why {
    /** A budget nothing can be built for: this share of what the best build costs. */
    private static final double TOO_LITTLE = 0.25;

    /** As many parts of a kind are spread over its list before one is asked about again. */
    private static final int ROUNDS = 3;

    private Why() {}

    /** Null where there is no best build to ask about. */
    static @Nullable Sample once(Job job, Shop shop, Query query, int run) {
        Cap before = new Cap(Cap.WARM_SECONDS);
        Search search = new Search(shop.catalog());
        Inquiry known = inquiry(shop, query.brief(), search, before);
        Found first = known.first();
        if (first == null || before.reached()) {
            return null;
        }
        if (job == Job.CONFLICT) {
            return conflict(shop, query.brief(), first, search);
        }
        Cap cap = new Cap(Cap.WARM_SECONDS);
        Inquiry inquiry = inquiry(shop, query.brief(), search, cap);
        inquiry.first();
        String asked = job == Job.REASONS ? ofAKind(shop, first.build(), run) : other(shop, first.build());
        Set<String> part = new TreeSet<>(Set.of(asked));
        if (job == Job.FLIPS) {
            WhyNot.reason(inquiry, part);
        }
        Found lightest = job == Job.CURVE ? inquiry.best(query.withPriorities(Inquiry.only(Objective.WEIGHT))) : null;
        double cpu = Cpu.ms();
        long start = System.nanoTime();
        work(job, inquiry, part, first, lightest);
        double ms = Job.millisSince(start);
        Sample sample = new Sample(ms, Cpu.ms() - cpu, Sample.NOT_COUNTED, 1, !inquiry.open(), cap.reached());
        return job == Job.REASONS ? sample.about(kind(shop, asked)) : sample;
    }

    private static void work(Job job, Inquiry inquiry, Set<String> part, Found first, @Nullable Found lightest) {
        switch (job) {
            case REASON, REASONS -> WhyNot.soonest(inquiry, part);
            case FLIPS -> WhyNot.of(inquiry, part);
            case LEDGER -> Ledger.of(inquiry, first);
            default -> Curve.of(inquiry, first, lightest == null ? first : lightest, point -> {});
        }
    }

    private static Sample conflict(Shop shop, Brief brief, Found first, Search search) {
        long little = Math.round(first.rod().figures().priceMinor() * TOO_LITTLE);
        Cap cap = new Cap(Cap.WARM_SECONDS);
        Inquiry inquiry = inquiry(shop, new BriefDraft(brief).budget(little).brief(), search, cap);
        double cpu = Cpu.ms();
        long start = System.nanoTime();
        Impossible impossible = Impossible.of(inquiry);
        double ms = Job.millisSince(start);
        return new Sample(
                ms, Cpu.ms() - cpu, Sample.NOT_COUNTED, impossible.repairs().size(), !inquiry.open(), cap.reached());
    }

    private static Inquiry inquiry(Shop shop, Brief brief, Search search, Cap cap) {
        return new Inquiry(
                shop.catalog(),
                brief,
                catalog -> catalog == shop.catalog() ? search : new Search(catalog),
                cap.watch(),
                new QuantityText(UnitSystem.METRIC));
    }

    /** The first seat by id that is not the one chosen. */
    private static String other(Shop shop, Build build) {
        return shop.catalog().all(PartKind.REEL_SEAT).stream()
                .map(Part::id)
                .filter(id -> !build.choices().values().stream()
                        .map(Build.Choice::partId)
                        .toList()
                        .contains(id))
                .sorted()
                .findFirst()
                .orElse(build.layout().blankId());
    }

    /** Of the next kind of part the build has one that it has not: with each round through the kinds another, spread over the list by id. */
    private static String ofAKind(Shop shop, Build build, int run) {
        List<List<String>> kinds = others(shop, build);
        List<String> parts = kinds.get(run % kinds.size());
        int round = run / kinds.size();
        return parts.get((int) ((round + 0.5) * parts.size() / ROUNDS) % parts.size());
    }

    /** Parts by id that a build has not, of each kind of which it has one and there are others. */
    static List<List<String>> others(Shop shop, Build build) {
        Set<PartKind> kinds = EnumSet.noneOf(PartKind.class);
        for (String id : build.partIds()) {
            kinds.add(Objects.requireNonNull(shop.catalog().find(id)).kind());
        }
        return kinds.stream()
                .map(kind -> shop.catalog().all(kind).stream()
                        .map(Part::id)
                        .filter(id -> !build.partIds().contains(id))
                        .sorted()
                        .toList())
                .filter(parts -> !parts.isEmpty())
                .toList();
    }

    static String kind(Shop shop, String id) {
        PartKind kind = Objects.requireNonNull(shop.catalog().find(id)).kind();
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
