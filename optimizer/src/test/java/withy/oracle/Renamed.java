package withy.oracle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import withy.brief.Brief.PartWish;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.Rates;
import withy.fixture.Changed;
import withy.objectives.Solver.Query;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Station;

/** The same shop and question with every id renamed and every file in another order. */
final class Renamed {
    private final Map<String, String> names = new HashMap<>();
    private final Map<String, String> back = new HashMap<>();
    private final SmallShop.Case shop;

    Renamed(SmallShop.Case from, long seed) {
        Random random = new Random(seed);
        List<Part> parts = new ArrayList<>(from.catalog().byId().values());
        Collections.shuffle(parts, random);
        for (int i = 0; i < parts.size(); i++) {
            names.put(parts.get(i).id(), "q" + (1000 + i));
            back.put("q" + (1000 + i), parts.get(i).id());
        }
        List<Part> renamed = new ArrayList<>();
        for (Part part : parts) {
            renamed.add((Part) Changed.with((Record) part, "facts.id", name(part.id())));
        }
        Rates rates = from.catalog().rates();
        rates = Changed.with(rates, "houseFinish", name(rates.houseFinish()));
        rates = Changed.with(rates, "houseAdhesive", name(rates.houseAdhesive()));
        Catalog catalog =
                new Catalog(rates, from.catalog().asOf(), from.catalog().hash(), renamed);
        shop = new SmallShop.Case(catalog, query(from.query()));
    }

    SmallShop.Case shop() {
        return shop;
    }

    /** A build of the renamed shop in the first one's names. */
    Build inFirstNames(Build build) {
        SortedMap<Station, Choice> choices = new TreeMap<>();
        build.choices()
                .forEach((station, choice) ->
                        choices.put(station, new Choice(back.getOrDefault(choice.partId(), "?"), choice.cutMm())));
        Layout layout = build.layout();
        String blank = back.getOrDefault(layout.blankId(), "?");
        return new Build(new Layout(blank, layout.reelFootMm(), layout.form(), layout.guideCount()), choices);
    }

    private String name(String id) {
        return names.getOrDefault(id, id);
    }

    private Query query(Query q) {
        Map<Station, Choice> fixed = new TreeMap<>();
        q.fixed().forEach((station, choice) -> fixed.put(station, new Choice(name(choice.partId()), choice.cutMm())));
        var brief = Changed.with(q.brief(), "insisted", wishes(q.brief().insisted()));
        brief = Changed.with(brief, "refused", wishes(q.brief().refused()));
        brief = Changed.with(brief, "owned", all(q.brief().owned()));
        return q.withBrief(brief)
                .forcing(all(q.forced()))
                .refusing(all(q.refused()))
                .fixing(fixed, q.empty(), q.reelFootMm());
    }

    private List<PartWish> wishes(List<PartWish> wishes) {
        return wishes.stream()
                .map(wish -> new PartWish(name(wish.partId()), wish.hard(), wish.steps()))
                .toList();
    }

    private Set<String> all(Set<String> ids) {
        Set<String> renamed = new TreeSet<>();
        ids.forEach(id -> renamed.add(name(id)));
        return renamed;
    }
}
