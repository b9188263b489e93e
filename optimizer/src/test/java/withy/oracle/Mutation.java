package withy.oracle;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import withy.brief.Brief.HandleForm;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Station;

/** Builds a few random changes away from a given one, legal or not. */
final class Mutation {
    private static final Map<Station, PartKind> KINDS = Map.ofEntries(
            Map.entry(Station.BUTT_CAP, PartKind.BUTT_CAP),
            Map.entry(Station.BUTT_GRIP, PartKind.GRIP),
            Map.entry(Station.REAR_GRIP, PartKind.GRIP),
            Map.entry(Station.REAR_CHECK, PartKind.CHECK),
            Map.entry(Station.SEAT, PartKind.REEL_SEAT),
            Map.entry(Station.HOOD, PartKind.HOOD),
            Map.entry(Station.SEAT_ARBORS, PartKind.ARBOR),
            Map.entry(Station.FORE_CHECK, PartKind.CHECK),
            Map.entry(Station.FORE_GRIP, PartKind.GRIP),
            Map.entry(Station.WINDING_CHECK, PartKind.CHECK),
            Map.entry(Station.KEEPER, PartKind.KEEPER),
            Map.entry(Station.TIP_TOP, PartKind.TIP_TOP),
            Map.entry(Station.THREAD, PartKind.THREAD),
            Map.entry(Station.FINISH, PartKind.FINISH),
            Map.entry(Station.ADHESIVE, PartKind.ADHESIVE),
            Map.entry(Station.DECAL, PartKind.DECAL));
    private static final List<Station> STATIONS =
            KINDS.keySet().stream().sorted().toList();

    private final Catalog catalog;
    private final Random random;

    Mutation(Catalog catalog, Random random) {
        this.catalog = catalog;
        this.random = random;
    }

    Build of(Build build) {
        Layout layout = build.layout();
        SortedMap<Station, Choice> choices = new TreeMap<>(build.choices());
        int changes = 1 + random.nextInt(4);
        for (int i = 0; i < changes; i++) {
            switch (random.nextInt(6)) {
                case 0 -> layout = layout(layout);
                case 1 -> guide(layout, choices);
                case 2 -> choices.remove(STATIONS.get(random.nextInt(13)));
                default -> station(choices);
            }
        }
        for (int number = layout.guideCount() + 1; number <= Station.MOST_GUIDES; number++) {
            choices.remove(Station.guide(number));
        }
        if (!choices.containsKey(Station.SEAT)) {
            choices.remove(Station.HOOD);
            choices.remove(Station.SEAT_ARBORS);
        }
        return new Build(layout, choices);
    }

    private Layout layout(Layout from) {
        String blank = random.nextInt(3) == 0 ? any(PartKind.BLANK).id() : from.blankId();
        int foot = Math.max(100, from.reelFootMm() + 5 * (random.nextInt(21) - 10));
        HandleForm form = random.nextInt(4) == 0 ? HandleForm.values()[random.nextInt(2)] : from.form();
        int count = Math.max(3, from.guideCount() + random.nextInt(3) - 1);
        return new Layout(blank, foot, form, count);
    }

    private void guide(Layout layout, SortedMap<Station, Choice> choices) {
        Station station = Station.guide(1 + random.nextInt(layout.guideCount()));
        choices.put(station, Choice.of(any(PartKind.GUIDE).id()));
    }

    private void station(SortedMap<Station, Choice> choices) {
        Station station = STATIONS.get(random.nextInt(STATIONS.size()));
        PartKind kind = KINDS.getOrDefault(station, PartKind.GRIP);
        if (catalog.all(kind).isEmpty()) {
            return;
        }
        Part part = any(kind);
        Choice before = choices.get(station);
        if (part instanceof Grip grip) {
            Part kept = before == null ? null : catalog.find(before.partId());
            Part used = kept != null && random.nextBoolean() ? kept : grip;
            double cut = random.nextInt(3) == 0 ? 0 : 20 + random.nextInt(120);
            choices.put(station, new Choice(used.id(), cut));
        } else {
            choices.put(station, Choice.of(part.id()));
        }
    }

    private Part any(PartKind kind) {
        List<Part> all = catalog.all(kind);
        return all.get(random.nextInt(all.size()));
    }
}
