package withy.app;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withy.app.Answer.Count;
import withy.app.Answer.Lightest;
import withy.app.Chooser.Fit;
import withy.app.Offers.Weighed;
import withy.app.Reasons.ImpossibleLines;
import withy.brief.Brief;
import withy.brief.BriefWriter;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.explain.Phrases;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rod.Tariff;
import withy.rules.Rulebook;
import withy.search.Proposal;
import withy.units.QuantityText;

/** A customer's brief in, up to three measured, judged, priced and compared builds out. */
public final class Propose {
    private static final int WANTED = 3;

    private final Catalog catalog;
    private final Brief brief;
    private final Chooser chooser;
    private final QuantityText units;
    private final Progress progress;
    private final @Nullable Consumer<Answer> first;

    private Propose(
            Catalog catalog,
            Brief brief,
            Chooser chooser,
            QuantityText units,
            Progress progress,
            @Nullable Consumer<Answer> first) {
        this.catalog = catalog;
        this.brief = brief;
        this.chooser = chooser;
        this.units = units;
        this.progress = progress;
        this.first = first;
    }

    /** Answers a brief. */
    public static Answer run(Catalog catalog, Brief brief, Chooser chooser, QuantityText units, Progress progress) {
        return new Propose(catalog, brief, chooser, units, progress, null).answer();
    }

    /**
     * Answers a brief, the best build first.
     *
     * @param first told an answer of one build as soon as that is known; its others, reasons and lightest come with the whole
     */
    public static Answer run(
            Catalog catalog,
            Brief brief,
            Chooser chooser,
            QuantityText units,
            Progress progress,
            Consumer<Answer> first) {
        return new Propose(catalog, brief, chooser, units, progress, first).answer();
    }

    /**
     * Of builds that are known, the best that keeps every rule of a brief, as an answer of one build of which nobody knows how far off the best it is;
     * null where none does.
     */
    public static @Nullable Answer known(Catalog catalog, Brief brief, Collection<Build> builds, QuantityText units) {
        Offers offers = new Offers(catalog, brief, Rulebook.standard(), units);
        Weighed best = builds.stream()
                .map(build -> offers.own(1, build))
                .filter(one -> Verdicts.legal(one.sheet().verdicts()))
                .min(Comparator.comparingDouble(one -> one.sheet().figures().score()))
                .orElse(null);
        return best == null ? null : alone(catalog, brief, Map.of(), offers, best);
    }

    private Answer answer() {
        Query query = Query.of(brief, Rulebook.standard());
        Offers offers = new Offers(catalog, brief, query.rulebook(), units);
        Map<Station.Place, Fit> fits = chooser.fits(query);
        List<Weighed> weighed = new ArrayList<>();
        Watch watch = watch(catalog, brief, progress);
        Consumer<Answer> told = first;
        AtomicReference<@Nullable Beside<Solution>> byWeight = new AtomicReference<>();
        List<Proposal> offered = chooser.offer(query, watch, best -> {
            byWeight.set(new Beside<>(() -> lightest(query)));
            if (told != null) {
                told.accept(alone(catalog, brief, fits, offers, offers.proposed(best)));
            }
        });
        for (Proposal proposal : offered) {
            weighed.add(offers.proposed(proposal));
        }
        // stopped once the builds are there, only the lightest stays open, and says so itself
        boolean interrupted = progress.stopped();
        Beside<Solution> asked = byWeight.get();
        Lightest lightest = asked == null || interrupted ? null : lightest(asked.answer(), offers);
        ImpossibleLines impossible = weighed.isEmpty() && !interrupted ? impossible() : null;
        boolean explained = impossible != null && !impossible.conflicts().isEmpty();
        return new Answer(
                Answer.SCHEMA,
                catalog.hash(),
                BriefWriter.write(brief),
                brief.defaultsUsed(),
                counts(fits),
                offers.compared(weighed),
                lightest,
                reasons(weighed.size(), fits, interrupted, explained),
                Cautions.of(weighed.stream().map(w -> w.side().rod()).toList()),
                impossible,
                interrupted);
    }

    private static Answer alone(
            Catalog catalog, Brief brief, Map<Station.Place, Fit> fits, Offers offers, Weighed best) {
        return new Answer(
                Answer.SCHEMA,
                catalog.hash(),
                BriefWriter.write(brief),
                brief.defaultsUsed(),
                counts(fits),
                offers.compared(List.of(best)),
                null,
                List.of(),
                Cautions.of(List.of(best.side().rod())),
                null,
                false);
    }

    /** Tells the progress of each build that is better for the brief than any before, whatever the search looks for just then. */
    static Watch watch(Catalog catalog, Brief brief, Progress progress) {
        Tariff tariff = new Tariff(catalog.rates(), brief);
        Scoring scoring = Scoring.of(brief, catalog.rates());
        AtomicLong best = new AtomicLong(Long.MAX_VALUE);
        return new Watch(progress::stopped, (build, objectives, score) -> {
            long own = scoring.score(objectives);
            if (own < best.get()) {
                best.set(own);
                progress.better(objectives.weightMg() / 1000.0, tariff.priceMinor(objectives.costMilli()));
            }
        });
    }

    private @Nullable ImpossibleLines impossible() {
        return Explain.impossible(Explain.inquiry(catalog, brief, any -> chooser, units, progress));
    }

    /** What is best by weight alone: neither a wish that is nice to have nor sturdiness may hold it up. */
    private Solution lightest(Query query) {
        Watch watch = new Watch(progress::stopped, (build, objectives, score) -> {});
        return chooser.solve(query.withPriorities(Map.of(Objective.WEIGHT, 1.0)), watch);
    }

    private static @Nullable Lightest lightest(Solution solution, Offers offers) {
        if (solution.build() == null) {
            return null;
        }
        Rod rod = offers.legal(solution.build(), "the lightest build");
        return new Lightest(rod.figures().weightG(), solution.proven(), BuildFile.of(solution.build()));
    }

    private static Map<String, Count> counts(Map<Station.Place, Fit> fits) {
        Map<String, Count> counts = new LinkedHashMap<>();
        fits.forEach((place, fit) -> counts.put(Stations.key(place), new Count(fit.offered(), fit.refused())));
        return counts;
    }

    private List<String> reasons(int builds, Map<Station.Place, Fit> fits, boolean interrupted, boolean explained) {
        List<String> reasons = new ArrayList<>();
        if (interrupted) {
            reasons.add(Phrases.of("reason.interrupted"));
        }
        if (builds >= WANTED || interrupted) {
            return reasons;
        }
        boolean bestOnly = builds == 1 && !chooser.looksFurther();
        reasons.add(Phrases.of(bestOnly ? "reason.builds.best" : "reason.builds." + builds));
        if (builds == 0) {
            fits.forEach((place, fit) -> {
                if (fit.offered() == 0
                        && Stations.needed(place)
                        && !fit.refusals().isEmpty()) {
                    reasons.add(nothingFits(place, fit, explained));
                }
            });
        }
        return reasons;
    }

    /** Which rule refuses most parts is told only where nothing better is known: what decides may be another, and is told with the conflict. */
    private static String nothingFits(Station.Place place, Fit fit, boolean explained) {
        String station = Phrases.of("station." + Stations.key(place));
        if (explained) {
            return Phrases.of("reason.nothingFits.explained", station, fit.refused());
        }
        Chooser.Refusals most = fit.refusals().get(0);
        return Phrases.of(
                "reason.nothingFits", station, fit.refused(), most.parts(), Phrases.of("ruleName." + most.rule()));
    }
}
