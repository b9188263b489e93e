package withy.oracle;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.fixture.Changed;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Rod;
import withy.rod.Station;
import withy.search.Search;

/**
 * The questions asked of small catalogues: a third with a budget that binds, the others in turn plain, short of stock, with ceilings, with parts
 * forced, refused, stations given. Limits are put between what the plain answer has and the best that can be had, which the search itself is asked
 * for; whatever it says, the question is a fair one.
 */
final class SmallQuestion {
    private final Random random;
    private final long seed;
    private Catalog catalog;
    private Query query;

    private SmallQuestion(long seed, long mostBuilds) {
        this.seed = seed;
        this.random = new Random(seed * 31 + 5);
        SmallShop.Case shop = SmallShop.of(seed, mostBuilds);
        this.catalog = shop.catalog();
        this.query = shop.query();
    }

    static SmallShop.Case of(long seed, long mostBuilds) {
        SmallQuestion question = new SmallQuestion(seed, mostBuilds);
        question.ask();
        return new SmallShop.Case(question.catalog, question.query);
    }

    private void ask() {
        if (seed % 3 == 0) {
            if (random.nextInt(3) == 0) {
                scarce();
            }
            budget();
            return;
        }
        switch ((int) (seed / 3 % 6)) {
            case 1 -> scarce();
            case 2 -> ceilings();
            case 3 -> force();
            case 4 -> refuse();
            case 5 -> give();
            default -> {
                // plain
            }
        }
        if (random.nextInt(8) == 0) {
            scarce();
        }
    }

    private Solution plain() {
        return new Search(catalog).solve(query, Watch.NONE);
    }

    private Solution best(Objective objective) {
        Map<Objective, Double> only = new EnumMap<>(Objective.class);
        only.put(objective, 1.0);
        return new Search(catalog).solve(query.withPriorities(only), Watch.NONE);
    }

    private void budget() {
        Build plain = plain().build();
        Build cheapest = best(Objective.PRICE).build();
        if (plain == null || cheapest == null) {
            return;
        }
        long high = price(plain);
        long low = price(cheapest);
        long budget = low + Math.round((high - low) * random.nextDouble() * 0.9);
        Brief brief = Changed.with(query.brief(), "budgetMinor", budget - (random.nextInt(20) == 0 ? 1 : 0));
        query = query.withBrief(brief);
    }

    private long price(Build build) {
        return Rod.measure(catalog, query.brief(), build).figures().priceMinor();
    }

    /** Of some parts few pieces are left, and no more come in time. */
    private void scarce() {
        Build plain = plain().build();
        if (plain == null) {
            return;
        }
        Set<String> used = new TreeSet<>();
        plain.choices().values().forEach(choice -> used.add(choice.partId()));
        List<Part> changed = new ArrayList<>();
        for (Part part : catalog.byId().values()) {
            boolean several =
                    part.kind() == PartKind.GUIDE || part.kind() == PartKind.CHECK || part.kind() == PartKind.ARBOR;
            if (several && (used.contains(part.id()) || random.nextInt(3) == 0) && random.nextInt(3) > 0) {
                int stock = 1 + (part.kind() == PartKind.GUIDE ? random.nextInt(3) : 0);
                Record scarce = Changed.with((Record) part, "facts.stock", stock);
                changed.add((Part) Changed.with(scarce, "facts.leadDays", null));
            } else {
                changed.add(part);
            }
        }
        catalog = new Catalog(catalog.rates(), catalog.asOf(), catalog.hash(), changed);
    }

    private void ceilings() {
        ObjectiveVector plain = plain().objectives();
        Map<Objective, Long> ceilings = new EnumMap<>(Objective.class);
        int count = 1 + random.nextInt(2);
        for (int i = 0; i < count; i++) {
            Objective objective = Objective.values()[random.nextInt(6)];
            ObjectiveVector best = best(objective).objectives();
            if (plain != null && best != null) {
                long high = plain.loss(objective);
                long low = best.loss(objective);
                ceilings.put(objective, low + (long) ((high - low) * random.nextDouble()));
            }
        }
        query = query.under(ceilings);
    }

    private void force() {
        Set<String> forced = new TreeSet<>();
        int count = 1 + random.nextInt(2);
        for (int i = 0; i < count; i++) {
            forced.add(any().id());
        }
        query = query.forcing(forced);
    }

    private void refuse() {
        Build plain = plain().build();
        Set<String> refused = new TreeSet<>();
        if (plain != null) {
            List<Choice> used = List.copyOf(plain.choices().values());
            refused.add(used.get(random.nextInt(used.size())).partId());
        }
        refused.add(any().id());
        query = query.refusing(refused);
    }

    private void give() {
        Build plain = plain().build();
        Map<Station, Choice> given = new TreeMap<>();
        Set<Station> empty = new TreeSet<>();
        Integer foot = null;
        if (plain != null) {
            for (Map.Entry<Station, Choice> entry : plain.choices().entrySet()) {
                if (random.nextInt(5) == 0) {
                    given.put(entry.getKey(), entry.getValue());
                }
            }
            foot = random.nextBoolean() ? Integer.valueOf(plain.layout().reelFootMm()) : null;
        }
        Station[] optional = {
            Station.REAR_CHECK,
            Station.FORE_CHECK,
            Station.WINDING_CHECK,
            Station.HOOD,
            Station.KEEPER,
            Station.FORE_GRIP,
            Station.SEAT_ARBORS,
            Station.BUTT_CAP
        };
        for (Station station : optional) {
            if (random.nextInt(5) == 0 && !given.containsKey(station)) {
                empty.add(station);
            }
        }
        query = query.fixing(given, empty, foot);
    }

    private Part any() {
        List<Part> all = List.copyOf(catalog.byId().values());
        return all.get(random.nextInt(all.size()));
    }
}
