package withy.oracle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ObjLongConsumer;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.PartWish;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Style;
import withy.oracle.EveryTable.Table;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Judge;

/**
 * Every build of a small catalogue, one after the other, measured and judged: the oracle the search is held against. Left out are only builds
 * that a layout, one part at its place or two guides in a row already make illegal, and, where told so, all trains of a handle that its own rules
 * refuse.
 */
public final class Enumeration {
    private final Catalog catalog;
    private final Query query;
    private final Brief brief;
    private final EveryTrain trains;
    private final EveryTable tables;
    private final Style style;
    private final NiceWishes wishes;
    private final Scoring scoring;
    private final Set<String> forced = new HashSet<>();
    private final boolean prune;

    private Predicate<Build> among = build -> true;
    private @Nullable ObjLongConsumer<Build> visitor;
    private long measured;
    private long bestScore = Long.MAX_VALUE;
    private @Nullable Build best;
    private final List<Legal> legal = new ArrayList<>();
    private int keep;

    /**
     * @param prune true to judge a handle once with one train and to leave out its other trains where its own rules refuse it
     */
    public Enumeration(Catalog catalog, Query query, boolean prune) {
        this.catalog = catalog;
        this.query = query;
        this.brief = query.brief();
        Menu menu = new Menu(catalog, query);
        this.trains = new EveryTrain(query, menu);
        this.tables = new EveryTable(catalog, query, menu, trains);
        this.style = new Style(catalog, brief);
        this.wishes = new NiceWishes(brief);
        this.scoring = Scoring.of(brief, catalog.rates(), query.priorities());
        this.prune = prune;
        forced.addAll(query.forced());
        if (query.rulebook().rules().stream().anyMatch(rule -> rule.code().equals("must"))) {
            brief.insisted().stream().filter(PartWish::hard).forEach(wish -> forced.add(wish.partId()));
        }
    }

    /**
     * What was found.
     *
     * @param best a best legal build, or null where none is legal
     * @param score its score
     * @param builds builds there are
     * @param measured builds measured one by one
     */
    record Found(@Nullable Build best, long score, long builds, long measured) {}

    /** A legal build with its objectives. */
    public record Legal(Build build, ObjectiveVector vector) {}

    /** Every legal build that answers the question. */
    public List<Legal> legal() {
        legal.clear();
        keep = Integer.MAX_VALUE;
        run();
        return List.copyOf(legal);
    }

    /** One of them, or none. */
    List<Legal> some() {
        legal.clear();
        keep = 1;
        run();
        return List.copyOf(legal);
    }

    /** Looks among some builds only. */
    Enumeration among(Predicate<Build> wanted) {
        among = wanted;
        return this;
    }

    /** Tells every legal build with its score. */
    void eachLegal(ObjLongConsumer<Build> told) {
        visitor = told;
        run();
    }

    /** How many builds there are. */
    public long count() {
        return tables.all().stream().mapToLong(Table::builds).sum();
    }

    /** Measures them all. */
    Found run() {
        long builds = 0;
        for (Table table : tables.all()) {
            builds += table.builds();
            if (enough()) {
                break;
            }
            handle(table, trains.of(table.setting()), List.copyOf(table.handle().keySet()), 0, new TreeMap<>());
        }
        return new Found(best, bestScore, builds, measured);
    }

    /** True where one was asked for and is found. */
    private boolean enough() {
        return keep == 1 && !legal.isEmpty();
    }

    private void handle(
            Table table, List<List<Choice>> trains, List<Station> stations, int i, SortedMap<Station, Choice> chosen) {
        if (i == stations.size()) {
            trains(table, trains, chosen);
            return;
        }
        Station station = stations.get(i);
        for (Choice choice : Objects.requireNonNull(table.handle().get(station))) {
            if (enough()) {
                return;
            }
            if (choice == null) {
                handle(table, trains, stations, i + 1, chosen);
            } else {
                chosen.put(station, choice);
                handle(table, trains, stations, i + 1, chosen);
                chosen.remove(station);
            }
        }
    }

    private void trains(Table table, List<List<Choice>> trains, SortedMap<Station, Choice> chosen) {
        boolean first = true;
        for (List<Choice> train : trains) {
            for (int n = 0; n + 1 < train.size(); n++) {
                chosen.put(Station.guide(n + 1), train.get(n));
            }
            chosen.put(Station.TIP_TOP, train.get(train.size() - 1));
            for (Choice thread : table.threads()) {
                if (enough()) {
                    drop(chosen, table.setting().guideCount());
                    return;
                }
                chosen.put(Station.THREAD, Objects.requireNonNull(thread));
                boolean kept = build(table.setting(), new Build(table.setting().layout(), chosen), first && prune);
                if (first && prune && !kept) {
                    drop(chosen, table.setting().guideCount());
                    return;
                }
                first = false;
            }
        }
        drop(chosen, table.setting().guideCount());
    }

    private static void drop(SortedMap<Station, Choice> chosen, int count) {
        chosen.remove(Station.TIP_TOP);
        chosen.remove(Station.THREAD);
        for (int n = 1; n <= count; n++) {
            chosen.remove(Station.guide(n));
        }
    }

    /** Measures one build; false where its handle is refused whatever train it carries. */
    private boolean build(Setting setting, Build build, boolean askHandle) {
        if (!askHandle && !among.test(build)) {
            return true;
        }
        measured++;
        Rod rod = Rod.measure(setting, build);
        if (askHandle) {
            HandleFaults faults = new HandleFaults();
            Judge.ask(rod, query.rulebook(), faults);
            if (faults.found()) {
                return false;
            }
        }
        ObjectiveVector vector = ObjectiveVector.of(rod, style, wishes);
        long score = scoring.score(vector);
        if (legal.size() < keep && asked(build, vector) && Judge.legal(rod, query.rulebook())) {
            legal.add(new Legal(build, vector));
        }
        ObjLongConsumer<Build> told = visitor;
        if (told != null) {
            if (asked(build, vector) && Judge.legal(rod, query.rulebook())) {
                told.accept(build, score);
            }
            return true;
        }
        if (score < bestScore && among.test(build) && asked(build, vector) && Judge.legal(rod, query.rulebook())) {
            bestScore = score;
            best = build;
        }
        return true;
    }

    private boolean asked(Build build, ObjectiveVector vector) {
        Set<String> used = new HashSet<>(Arrays.asList(build.layout().blankId()));
        build.choices().values().forEach(choice -> used.add(choice.partId()));
        boolean keeps = used.containsAll(forced);
        for (Map.Entry<Objective, Long> ceiling : query.ceilings().entrySet()) {
            keeps &= vector.loss(ceiling.getKey()) <= ceiling.getValue();
        }
        return keeps;
    }
}
