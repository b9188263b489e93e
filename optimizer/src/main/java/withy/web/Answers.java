package withy.web;

import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import withy.app.Answer;
import withy.app.Around;
import withy.app.BuildReader;
import withy.app.BuildSheet;
import withy.app.Chooser;
import withy.app.Explain;
import withy.app.Fitting;
import withy.app.LighterAnswer;
import withy.app.Progress;
import withy.app.Propose;
import withy.app.Workshop;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.explain.Inquiry;
import withy.objectives.Solver.Query;
import withy.rod.Build;
import withy.rules.Rulebook;
import withy.web.Beforehand.Aside;
import withy.web.Bench.Asked;
import withy.web.Growing.SoFar;

/**
 * What is worked out for the pages: each answer once for a question, off the thread that asks, and kept for a while; what nobody waits for makes way for
 * what somebody does.
 */
final class Answers {
    /** How long a search may take before the best so far is shown, s. */
    static final int PATIENCE_S = 15;

    /** The same where somebody asked to look longer, s. */
    static final int MOST_PATIENCE_S = 120;

    /** The same for a count while wishes are typed, s. */
    private static final int COUNT_PATIENCE_S = 4;

    private static final String LIGHTER = "lighter";
    private static final int MOST_ANSWERS = 64;
    private static final int MOST_SEARCHES = 16;

    private final Bench bench;
    private final Function<Catalog, Chooser> search;
    private final LongSupplier millis;
    private final Recent<Catalog, Remembering> choosers = new Recent<>(MOST_SEARCHES);
    private final Recent<List<Object>, Object> answers = new Recent<>(MOST_ANSWERS);
    private final Recent<List<Object>, Coming> comings = new Recent<>(MOST_ANSWERS);
    private final AtomicReference<@Nullable Patience> counting = new AtomicReference<>();
    private final ExecutorService workers = Executors.newCachedThreadPool(work -> {
        Thread thread = new Thread(work, "withy-answer");
        thread.setDaemon(true);
        return thread;
    });

    private final Soon soon = new Soon(workers, MOST_ANSWERS);
    private final Beforehand beforehand = new Beforehand(soon, () -> patience(PATIENCE_S));

    Answers(Bench bench, Function<Catalog, Chooser> search, LongSupplier millis) {
        this.bench = bench;
        this.search = search;
        this.millis = millis;
    }

    /** What stops a search after so many seconds. */
    Patience patience(int seconds) {
        return new Patience(millis, seconds);
    }

    /** Up to three builds, however long it takes. */
    Answer answer(Asked asked, int patienceS) {
        return coming(asked, patienceS).whole();
    }

    /** Up to three builds for a job, over what is free for it. */
    Answer ofJob(Catalog catalog, Brief brief) {
        return alone(() -> Propose.run(catalog, brief, chooser(catalog), bench.units(), patience(PATIENCE_S)));
    }

    /** The same if it comes in time; else it is on its way. */
    Answer answer(Asked asked, Look look) {
        Answer whole = coming(asked, PATIENCE_S).within(look.waitMs());
        if (whole == null) {
            throw new Soon.NotYet();
        }
        return whole;
    }

    /** Up to three builds, begun now or before. One that was looked for longer stands in for one that was cut short. */
    Coming coming(Asked asked, int patienceS) {
        Coming longer = comings.known(key("propose", asked, MOST_PATIENCE_S));
        if (longer != null && longer.finished()) {
            return longer;
        }
        List<Object> key = key("propose", asked, patienceS);
        Coming coming = comings.get(key, () -> {
            beforehand.giveUp();
            return new Coming(
                    workers,
                    first -> alone(() -> Propose.run(
                            asked.catalog(),
                            asked.told(),
                            chooser(asked.catalog()),
                            bench.units(),
                            patience(patienceS),
                            first)));
        });
        if (coming.failed()) {
            comings.forget(key);
        }
        return coming;
    }

    /** The builds of a brief that are known by now, the best first, whoever asked for them and however long; nothing is begun. */
    List<Build> known(Asked asked) {
        for (int patienceS : new int[] {MOST_PATIENCE_S, PATIENCE_S}) {
            Coming coming = comings.known(key("propose", asked, patienceS));
            Answer known = coming == null ? null : coming.known();
            if (known != null && !known.builds().isEmpty()) {
                return known.builds().stream()
                        .map(sheet -> BuildReader.written(sheet, asked.catalog()))
                        .toList();
            }
        }
        Build best = chooser(asked.catalog()).best(Query.of(asked.told(), Rulebook.standard()));
        return best == null ? List.of() : List.of(best);
    }

    /** What somebody waits for: nothing else is worked on meanwhile. */
    private <T> T alone(Supplier<T> work) {
        beforehand.makeWay();
        try {
            return work.get();
        } finally {
            beforehand.goOn();
        }
    }

    /** Works an answer about a brief out, and tells it as far as it is known on the way. */
    @FunctionalInterface
    interface Explaining<T> {
        T of(Inquiry inquiry, Progress progress, Consumer<T> soFar);
    }

    /** Any other answer about a brief; worked out once for a question. */
    <T> T explained(String question, Asked asked, Look look, BiFunction<Inquiry, Progress, T> how) {
        Look whole = new Look(look.patienceS(), look.waitMs(), Look.WHOLE);
        SoFar<T> answer =
                explaining(question, asked, whole, (inquiry, progress, soFar) -> how.apply(inquiry, progress));
        if (!answer.whole()) {
            throw new Soon.NotYet();
        }
        return answer.answer();
    }

    /** The same as far as it is known. */
    <T> SoFar<T> explaining(String question, Asked asked, Look look, Explaining<T> how) {
        return kept(question, asked, look, (progress, soFar) -> how.of(inquiry(asked, progress), progress, soFar));
    }

    /** What questions about a brief are put to. */
    Inquiry inquiry(Asked asked, Progress progress) {
        return Explain.inquiry(asked.catalog(), asked.told(), this::chooser, bench.units(), progress);
    }

    /** Whether the best build can be lighter, as far as it is known. */
    SoFar<LighterAnswer> lighter(Asked asked, Look look) {
        return explaining(LIGHTER, asked, look, Explain::lighter);
    }

    /** Works out what is often asked next while the builds are being read. */
    void lookAhead(Asked asked) {
        beforehand.begin(new Aside(
                key(LIGHTER, asked, PATIENCE_S),
                false,
                (patience, soFar) -> Explain.lighter(inquiry(asked, patience), patience, soFar::accept)));
    }

    /** What else there is around an offer, as far as it is known. */
    SoFar<Around> around(Asked asked, List<BuildSheet> offered, Look look) {
        return kept(
                "around",
                asked,
                look,
                (progress, soFar) -> Around.of(
                        asked.catalog(),
                        asked.told(),
                        chooser(asked.catalog()),
                        offered,
                        bench.units(),
                        progress,
                        soFar));
    }

    /** Whether anything fits still; asked while wishes change, so an earlier question is given up. */
    Fitting fitting(Asked asked, Comparator<String> turn) {
        List<Object> key = key("fitting", asked, COUNT_PATIENCE_S);
        Object known = answers.known(key);
        if (known != null) {
            return (Fitting) known;
        }
        Patience patience = patience(COUNT_PATIENCE_S);
        Patience before = counting.getAndSet(patience);
        if (before != null) {
            before.stop();
        }
        Fitting fitting = alone(() -> Fitting.of(inquiry(asked, patience), turn));
        if (!fitting.interrupted()) {
            answers.get(key, () -> fitting);
        }
        return fitting;
    }

    private static List<Object> key(String question, Asked asked, int patienceS) {
        return List.of(
                question, asked.told(), asked.catalog().hash(), asked.catalog().asOf(), patienceS);
    }

    /** An answer that was cut short is kept as well: to look again takes as long again, and there is a way to look longer. */
    @SuppressWarnings("unchecked")
    private <T> SoFar<T> kept(String question, Asked asked, Look look, BiFunction<Progress, Consumer<T>, T> how) {
        Object longer = soon.known(key(question, asked, MOST_PATIENCE_S));
        if (longer != null) {
            return new SoFar<>((T) longer, Look.WHOLE, true);
        }
        List<Object> key = key(question, asked, look.patienceS());
        beforehand.wanted(key);
        return soon.soFar(
                key, look.seen(), look.waitMs(), soFar -> alone(() -> how.apply(patience(look.patienceS()), soFar)));
    }

    /** An answer about the shop as it stands; worked out anew once anything was booked. */
    <T> T ofShop(String question, Look look, BiFunction<Workshop, Progress, T> how) {
        Workshop workshop = bench.workshop();
        List<Object> key = List.of(question, bench.memory().state(workshop), look.patienceS());
        return soon.get(key, look.waitMs(), () -> alone(() -> how.apply(workshop, patience(look.patienceS()))));
    }

    /** Works an answer about the shop out, and tells it as far as it is known on the way. */
    @FunctionalInterface
    interface OfShop<T> {
        T of(Workshop workshop, Progress progress, Consumer<T> soFar);
    }

    /** The same as far as it is known. */
    <T> SoFar<T> growingOfShop(String question, Look look, OfShop<T> how) {
        Workshop workshop = bench.workshop();
        List<Object> key = List.of(question, bench.memory().state(workshop), look.patienceS());
        return soon.soFar(
                key,
                look.seen(),
                look.waitMs(),
                soFar -> alone(() -> how.of(workshop, patience(look.patienceS()), soFar)));
    }

    /** Works out while nobody waits what is usually begun with, so that the first to ask does not wait for a cold start. */
    void prepare(FirstPages pages) {
        new BeforeAnyone(bench, this, pages).asides().forEach(beforehand::begin);
    }

    /** Stops what is being worked out. */
    void close() {
        workers.shutdownNow();
    }

    Remembering chooser(Catalog catalog) {
        return choosers.get(catalog, () -> new Remembering(search.apply(catalog)));
    }
}
