package withy.search;

import java.lang.ref.WeakReference;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Adhesive;
import withy.catalog.TipTop;
import withy.rod.BlankShape;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.GuidePlan;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Station;

/** A blank under one placing of the forced parts, with what is the same for all its layouts or is asked again and again. Not for several threads at once. */
final class Site {
    /** No rod has fewer, whatever the rules. */
    private static final int FEWEST_GUIDES = 3;

    private final Ground ground;
    private final BlankShape shape;
    private final Stations stations;
    private final Function<HandleForm, Shelf> shelves;
    private final Spacings spacings;
    /** Those that are not held any more are made anew: an answer never depends on what is kept. */
    private final Map<Integer, WeakReference<List<Stand>>> stands = new HashMap<>();

    private final Shared shared;
    private @Nullable TrainFloors trains;
    private @Nullable BlankCost blankCost;
    private @Nullable List<Ends.Group> ends;
    private @Nullable List<Integer> counts;
    private @Nullable Threads threads;

    /**
     * @param spacings where the guides of the blank stand
     * @param shelves what lies ready for the handle, by form
     */
    Site(Ground ground, Spacings spacings, Stations stations, Function<HandleForm, Shelf> shelves) {
        this(ground, spacings, stations, shelves, new Shared());
    }

    /** With what it has in common with others of its ground. */
    Site(Ground ground, Spacings spacings, Stations stations, Function<HandleForm, Shelf> shelves, Shared shared) {
        this.ground = ground;
        this.spacings = spacings;
        this.shape = spacings.shape();
        this.stations = stations;
        this.shelves = shelves;
        this.shared = shared;
    }

    BlankShape shape() {
        return shape;
    }

    Stations stations() {
        return stations;
    }

    Spacings spacings() {
        return spacings;
    }

    Shelf shelf(HandleForm form) {
        return shelves.apply(form);
    }

    /** What the blank costs under any prices. */
    BlankCost blankCost() {
        BlankCost known = blankCost;
        if (known == null) {
            known = BlankCost.of(ground, shape);
            blankCost = known;
        }
        return known;
    }

    /**
     * Caps and tip-tops that go together, and some of those go on; none where no pair makes a rod of the length wanted or nothing closes the butt end.
     */
    List<Ends.Group> ends() {
        List<Ends.Group> known = ends;
        if (known == null) {
            known = new Ends(ground, ground.anySetting(shape)).groups();
            known = known.size() == 1
                    ? known.stream().filter(this::mayClose).toList()
                    : known.stream().filter(this::mayClose).filter(this::tipped).toList();
            ends = known;
        }
        return known;
    }

    /** False where no tip-top goes on the blank beside guides that may stand where they must: told by the parts, wherever the reel stands. */
    boolean mayHaveTrain() {
        Setting any = ground.anySetting(shape);
        for (GuideGroup group : ground.guides.groups()) {
            if (ends().stream().anyMatch(of -> tipped(group, any, of)) && guided(group, any)) {
                return true;
            }
        }
        return false;
    }

    /** False where a guide that is given may not stand at its number, or there are never so many guides. */
    boolean mayHaveGuides() {
        if (!spacings.mayNumber(stations.lastGivenGuide())) {
            return false;
        }
        Setting any = ground.anySetting(shape);
        for (Station station : stations.given().keySet()) {
            boolean may = station.place() != Station.Place.GUIDE
                    || ground.guides.groups().stream().anyMatch(group -> allows(group, any, station));
            if (!may) {
                return false;
            }
        }
        return true;
    }

    private boolean allows(GuideGroup group, Setting any, Station station) {
        return Arrays.stream(group.standing(any, station.number()))
                .anyMatch(g -> stations.allows(station, group.guides[g]));
    }

    /** False where a part of the handle that is given goes nowhere on the blank. */
    boolean mayHaveGiven() {
        return shelf(HandleForm.SPLIT).given.mayStand(shape)
                || shelf(HandleForm.FULL).given.mayStand(shape);
    }

    /** False where nothing joins the one seat there is to a grip on the blank, wherever the reel stands. */
    boolean mayJoinSeat() {
        return shelf(HandleForm.SPLIT).oneSeat.mayJoin(shape)
                || shelf(HandleForm.FULL).oneSeat.mayJoin(shape);
    }

    private boolean mayClose(Ends.Group of) {
        return shelf(HandleForm.SPLIT).mayClose(shape, of)
                || shelf(HandleForm.FULL).mayClose(shape, of);
    }

    private boolean tipped(Ends.Group of) {
        Setting any = ground.anySetting(shape);
        return ground.guides.groups().stream().anyMatch(group -> tipped(group, any, of));
    }

    private boolean tipped(GuideGroup group, Setting any, Ends.Group of) {
        for (int t : group.tips.on(any)) {
            TipTop tip = group.tips.tops[t];
            if (of.has(tip) && stations.allows(Station.TIP_TOP, tip)) {
                return true;
            }
        }
        return false;
    }

    private boolean guided(GuideGroup group, Setting any) {
        for (int number = 1; number <= Math.max(FEWEST_GUIDES, stations.lastGivenGuide()); number++) {
            Station station = Station.guide(number);
            if (!allows(group, any, station)) {
                return false;
            }
        }
        return true;
    }

    /**
     * True where weight is a burden under these prices wherever a guide, the tip or a joint may be with the reel at whatever place: then no train costs less than the
     * cheapest with every guide as near as it comes, and no thread than none.
     */
    boolean burdens(Linear k) {
        boolean weightless = k.perMg() == 0 && k.perMgMm() == 0 && k.perMgMm2() == 0;
        return weightless || ground.burdens(k, spacings.nearestMm(counts()));
    }

    /** Guide counts that can be spaced evenly somewhere. */
    List<Integer> counts() {
        List<Integer> known = counts;
        if (known == null) {
            known = countsNow();
            counts = known;
        }
        return known;
    }

    private List<Integer> countsNow() {
        boolean ruled = ground.ruled("guide-train");
        int fewest = GuidePlan.fewestGuides(ground.brief, shape.blank().lengthMm());
        List<Integer> possible = new ArrayList<>();
        for (int count = Math.max(ruled ? fewest : FEWEST_GUIDES, stations.lastGivenGuide());
                count <= Station.MOST_GUIDES;
                count++) {
            if (!ruled && count <= fewest + 2 || spacings.evenly(count)) {
                possible.add(count);
            } else if (!possible.isEmpty()) {
                break;
            }
        }
        return possible;
    }

    /** Threads worth looking at, with finish and adhesive, the likeliest first. */
    List<Consumables> threads() {
        return dressed().all();
    }

    /** The same with which of them beats which. */
    Threads dressed() {
        Threads known = threads;
        if (known == null) {
            known = ground.threadChoice.dressed(stations, shape);
            threads = known;
        }
        return known;
    }

    /** Every layout that leaves room for a handle. */
    List<Layout> layouts() {
        List<Layout> layouts = new ArrayList<>();
        for (int count : counts()) {
            for (int foot : ground.feet) {
                for (HandleForm form : HandleForm.values()) {
                    if (shelf(form).room.at(foot)) {
                        layouts.add(new Layout(shape.blank().id(), foot, form, count));
                    }
                }
            }
        }
        return layouts;
    }

    /** The handle's side of a layout: one stand for each adhesive and each group of ends. */
    List<Stand> stands(Setting setting) {
        int key = setting.footMm() * 2 + setting.layout().form().ordinal();
        WeakReference<List<Stand>> kept = stands.get(key);
        List<Stand> known = kept == null ? null : kept.get();
        if (known == null) {
            known = standsNow(setting);
            stands.put(key, new WeakReference<>(known));
            ground.lastStands.hold(known);
        }
        return known;
    }

    private List<Stand> standsNow(Setting setting) {
        List<Stand> list = new ArrayList<>();
        for (Adhesive adhesive : ground.adhesives) {
            if (stations.allows(Station.ADHESIVE, adhesive)) {
                Consumables with = new Consumables(ground.threads.get(0), ground.finishes.get(0), adhesive);
                Fitter fitter = new Fitter(setting, with, ground.tariff);
                for (Ends.Group group : ends()) {
                    Shelf shelf = shelf(setting.layout().form());
                    list.add(shared.stand(shelf, setting, fitter, group, stations));
                }
            }
        }
        return list;
    }

    /** Floors of the trains here, shared with others that leave the train as open. */
    TrainFloors floors() {
        TrainFloors known = trains;
        if (known == null) {
            known = shared.trains(this, () -> new TrainFloors(ground, this));
            trains = known;
        }
        return known;
    }

    /** Numbers no guide train with its thread costs less than, thread by thread, wherever the reel stands. */
    long[] trains(int count, int leastClass, Linear k) {
        return floors().of(count, leastClass, k);
    }

    /** The same with the reel foot near one place. */
    long[] trainsNear(int foot, int count, int leastClass, Linear k) {
        return floors().near(foot, count, leastClass, k);
    }

    /** The same of one layout with the ends of one of its stands. */
    long[] trains(Stand stand, Setting setting, int leastClass, Linear k) {
        return floors().at(stand, setting, leastClass, k);
    }
}
