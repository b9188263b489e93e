package withy.oracle;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.PartKind;
import withy.objectives.Solver.Query;
import withy.rod.BlankShape;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;
import withy.rules.Unit;

/** Every layout of a question, each with all that may stand on it. */
final class EveryTable {
    /** Longest butt cap the menu of reel positions reckons with, mm. */
    private static final int LONGEST_CAP_MM = 60;

    private final Catalog catalog;
    private final Query query;
    private final Brief brief;
    private final Menu menu;
    private final EveryTrain trains;
    private final Refusal refusal = new Refusal();

    EveryTable(Catalog catalog, Query query, Menu menu, EveryTrain trains) {
        this.catalog = catalog;
        this.query = query;
        this.brief = query.brief();
        this.menu = menu;
        this.trains = trains;
    }

    /** One layout with everything that may stand on it. */
    record Table(
            Setting setting, Map<Station, List<@Nullable Choice>> handle, long trains, List<@Nullable Choice> threads) {
        long builds() {
            double product = (double) trains * threads.size();
            for (List<@Nullable Choice> choices : handle.values()) {
                product *= choices.size();
            }
            return (long) product;
        }
    }

    List<Table> all() {
        List<Table> tables = new ArrayList<>();
        for (Blank blank : menu.open(PartKind.BLANK, Blank.class)) {
            if (menu.allowed(Station.BLANK, blank)) {
                BlankShape shape = BlankShape.of(blank);
                for (int foot : feet()) {
                    for (HandleForm form : HandleForm.values()) {
                        counts(tables, shape, foot, form);
                    }
                }
            }
        }
        return tables;
    }

    private void counts(List<Table> tables, BlankShape shape, int foot, HandleForm form) {
        for (int count = 3; count <= Station.MOST_GUIDES; count++) {
            Layout layout = new Layout(shape.blank().id(), foot, form, count);
            Setting setting = Setting.of(catalog, brief, shape, layout);
            query.rulebook().onLayout(setting, refusal.reset());
            if (!refusal.refused()) {
                Table table = table(setting);
                if (table.builds() > 0) {
                    tables.add(table);
                }
            }
        }
    }

    private List<Integer> feet() {
        Integer given = query.reelFootMm();
        if (given != null) {
            return List.of(given);
        }
        List<Integer> feet = new ArrayList<>();
        for (int foot = 5; foot <= brief.reachMaxMm(); foot += 5) {
            if (foot >= brief.reachMinMm() - LONGEST_CAP_MM) {
                feet.add(foot);
            }
        }
        return feet;
    }

    private Table table(Setting setting) {
        boolean split = setting.layout().form() == HandleForm.SPLIT;
        Map<Station, List<@Nullable Choice>> handle = new LinkedHashMap<>();
        handle.put(Station.BUTT_CAP, caps(setting));
        handle.put(Station.BUTT_GRIP, menu.buttGrips(setting.layout().form()));
        handle.put(Station.REAR_GRIP, menu.grips(Station.REAR_GRIP, split ? Grip.Place.REAR : Grip.Place.FULL, false));
        handle.put(Station.REAR_CHECK, menu.at(Station.REAR_CHECK, PartKind.CHECK, true));
        handle.put(Station.SEAT, menu.at(Station.SEAT, PartKind.REEL_SEAT, false));
        handle.put(Station.HOOD, menu.at(Station.HOOD, PartKind.HOOD, true));
        handle.put(Station.SEAT_ARBORS, menu.at(Station.SEAT_ARBORS, PartKind.ARBOR, true));
        handle.put(Station.FORE_CHECK, menu.at(Station.FORE_CHECK, PartKind.CHECK, true));
        handle.put(Station.FORE_GRIP, menu.grips(Station.FORE_GRIP, Grip.Place.FORE, true));
        handle.put(Station.WINDING_CHECK, menu.at(Station.WINDING_CHECK, PartKind.CHECK, true));
        handle.put(Station.KEEPER, menu.at(Station.KEEPER, PartKind.KEEPER, true));
        handle.put(Station.DECAL, menu.decals());
        handle.put(Station.FINISH, menu.at(Station.FINISH, PartKind.FINISH, false));
        handle.put(Station.ADHESIVE, menu.at(Station.ADHESIVE, PartKind.ADHESIVE, false));
        boolean empty = handle.values().stream().anyMatch(List::isEmpty);
        long trains = empty ? 0 : this.trains.count(setting);
        return new Table(setting, handle, trains, menu.at(Station.THREAD, PartKind.THREAD, false));
    }

    /** Caps with which this reel position is within reach (and none), on the grid of limits; all of them where the rule that asks for the reach is left out. */
    private List<@Nullable Choice> caps(Setting setting) {
        if (query.rulebook().rules().stream().noneMatch(rule -> rule.code().equals("handle"))) {
            return menu.at(Station.BUTT_CAP, PartKind.BUTT_CAP, true);
        }
        List<@Nullable Choice> within = new ArrayList<>();
        for (Choice choice : menu.at(Station.BUTT_CAP, PartKind.BUTT_CAP, true)) {
            double added =
                    choice == null ? 0 : ((ButtCap) Objects.requireNonNull(catalog.find(choice.partId()))).addedMm();
            long reach = Unit.MM.quantise(setting.footMm() + added);
            if (reach >= Unit.MM.quantise(brief.reachMinMm()) && reach <= Unit.MM.quantise(brief.reachMaxMm())) {
                within.add(choice);
            }
        }
        return within;
    }
}
