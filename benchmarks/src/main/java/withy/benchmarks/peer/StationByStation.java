package withy.benchmarks.peer;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Judge;
import withy.search.planning.BrokenRules;

/**
 * How a builder picks without a tool: from the seat outward one part after the other, each the best by one measure among those that break the
 * fewest rules with what is there already. Nothing is taken back.
 */
final class StationByStation {
    /** Stations that are filled in any case; the others only where that mends a fault. */
    private static final Set<Station.Place> NEEDED = EnumSet.of(
            Station.Place.SEAT,
            Station.Place.REAR_GRIP,
            Station.Place.BUTT_GRIP,
            Station.Place.GUIDE,
            Station.Place.TIP_TOP,
            Station.Place.THREAD);

    private final Question question;
    private final Catalog catalog;
    private final ToDoubleFunction<Rod> worst;
    private final List<Part> menu;

    /**
     * @param menu parts to pick from, in the order that settles ties
     * @param worst the measure; less is better
     */
    StationByStation(Question question, List<Part> menu, ToDoubleFunction<Rod> worst) {
        this.question = question;
        this.catalog = question.catalog();
        this.menu = menu;
        this.worst = worst;
    }

    /** A whole build on a layout; it may break rules. */
    Build on(Layout layout) {
        Build build = new Build(layout, new TreeMap<>(house()));
        List<Station> order = new ArrayList<>(
                List.of(Station.SEAT, Station.SEAT_ARBORS, Station.HOOD, Station.REAR_GRIP, Station.REAR_CHECK));
        if (layout.form() == HandleForm.SPLIT) {
            order.add(Station.BUTT_GRIP);
        }
        order.addAll(List.of(Station.BUTT_CAP, Station.FORE_GRIP, Station.WINDING_CHECK, Station.KEEPER));
        for (int number = 1; number <= layout.guideCount(); number++) {
            order.add(Station.guide(number));
        }
        order.addAll(List.of(Station.TIP_TOP, Station.DECAL, Station.THREAD));
        for (Station station : order) {
            build = best(build, station);
        }
        return build;
    }

    private SortedMap<Station, Choice> house() {
        SortedMap<Station, Choice> house = new TreeMap<>();
        house.put(Station.FINISH, Choice.of(catalog.rates().houseFinish()));
        house.put(Station.ADHESIVE, Choice.of(catalog.rates().houseAdhesive()));
        return house;
    }

    private Build best(Build build, Station station) {
        Build best = build;
        int fewest = NEEDED.contains(station.place()) ? Integer.MAX_VALUE : broken(build);
        double least = Double.POSITIVE_INFINITY;
        for (Choice choice : choices(build.layout(), station)) {
            Build with = build.with(station, choice);
            Rod rod = question.measure(with);
            int faults = faults(rod);
            double measure = worst.applyAsDouble(rod);
            if (faults < fewest || faults == fewest && least < Double.POSITIVE_INFINITY && measure < least) {
                best = with;
                fewest = faults;
                least = measure;
            }
        }
        return best;
    }

    private List<Choice> choices(Layout layout, Station station) {
        List<Choice> all = new ArrayList<>();
        for (Part part : menu) {
            if (part.kind() == kind(station)) {
                if (part instanceof Grip grip) {
                    cuts(grip, layout.form(), station, all);
                } else {
                    all.add(Choice.of(part.id()));
                }
            }
        }
        return all;
    }

    /** As long as it is sold, and as short as it may be. */
    private static void cuts(Grip grip, HandleForm form, Station station, List<Choice> to) {
        Grip.Place place = switch (station.place()) {
            case BUTT_GRIP -> Grip.Place.BUTT;
            case FORE_GRIP -> Grip.Place.FORE;
            default -> form == HandleForm.FULL ? Grip.Place.FULL : Grip.Place.REAR;
        };
        if (grip.place() == place && place == Grip.Place.FULL) {
            to.add(Choice.of(grip.id()));
        } else if (grip.place() == place) {
            to.add(new Choice(grip.id(), grip.lengthMm()));
            double shortest = Math.ceil(grip.shortestMm() / Layout.GRID_MM) * Layout.GRID_MM;
            if (shortest < grip.lengthMm()) {
                to.add(new Choice(grip.id(), shortest));
            }
        }
    }

    private static @Nullable PartKind kind(Station station) {
        return switch (station.place()) {
            case SEAT -> PartKind.REEL_SEAT;
            case SEAT_ARBORS -> PartKind.ARBOR;
            case HOOD -> PartKind.HOOD;
            case REAR_GRIP, BUTT_GRIP, FORE_GRIP -> PartKind.GRIP;
            case REAR_CHECK, FORE_CHECK, WINDING_CHECK -> PartKind.CHECK;
            case BUTT_CAP -> PartKind.BUTT_CAP;
            case KEEPER -> PartKind.KEEPER;
            case GUIDE -> PartKind.GUIDE;
            case TIP_TOP -> PartKind.TIP_TOP;
            case DECAL -> PartKind.DECAL;
            case THREAD -> PartKind.THREAD;
            case BLANK, FINISH, ADHESIVE -> null;
        };
    }

    private int broken(Build build) {
        return faults(question.measure(build));
    }

    private int faults(Rod rod) {
        BrokenRules tally = new BrokenRules();
        Judge.ask(rod, question.query().rulebook(), tally);
        return tally.checks();
    }
}
