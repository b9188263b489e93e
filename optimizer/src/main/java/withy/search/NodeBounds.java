package withy.search;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import withy.brief.Brief.HandleForm;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * What can be said of a node before it is worked: a number no build in it costs less than under some prices.
 */
final class NodeBounds {
    /** Prices under which ceilings are hard to keep that are kept in mind. */
    private static final int MOST_HARD = 3;

    private final Ground ground;
    private final Bounds bounds;
    private final int leastClass;
    private final Map<AtClass, Floors> floors = new HashMap<>();
    /** Prices under which two ceilings could not be kept together somewhere, the last first. */
    private final ArrayDeque<TwoCeilings.Edge> hard = new ArrayDeque<>();

    NodeBounds(Task task) {
        this.ground = task.ground;
        this.bounds = task.bounds;
        this.leastClass = task.leastClass();
    }

    /**
     * A number no build of a node costs less than under some prices: cheap for a blank just opened, better once it is looked at.
     *
     * @param limit above it only "not below the limit" is of interest
     */
    long of(Node node, Linear k, long limit) {
        boolean looked = node.stage() == Node.Stage.GUIDED || node.stage().compareTo(Node.Stage.LOOKED) >= 0;
        boolean exactTrain = looked && node.site().burdens(k);
        Setting setting = node.setting();
        if (setting != null) {
            long blank = node.site().blankCost().at(setting.footMm(), k);
            if (node.stage().compareTo(Node.Stage.HANDLED) >= 0) {
                return handled(node, setting, k, blank, limit);
            }
            long train = exactTrain ? train(node, setting.layout(), k) : train(node, k);
            return TrainGraph.sum(TrainGraph.sum(handle(node, setting.layout().form(), k), train), blank);
        }
        long handle = TrainGraph.NONE;
        for (HandleForm form : HandleForm.values()) {
            handle = Math.min(handle, handle(node, form, k));
        }
        long blank = TrainGraph.NONE;
        for (int foot : ground.feet) {
            blank = Math.min(blank, node.site().blankCost().at(foot, k));
        }
        long besides = TrainGraph.sum(handle, blank);
        return TrainGraph.sum(besides, exactTrain ? train(node.site(), node.leastClass(), k) : train(node, k));
    }

    private static long train(Site site, int leastClass, Linear k) {
        long train = TrainGraph.NONE;
        for (int count : site.counts()) {
            train = Math.min(train, train(site, count, leastClass, k));
        }
        return train;
    }

    /** The same of one layout of a blank that is looked at, before it is a node of its own. */
    long of(Node node, Layout layout, Linear k) {
        long train = node.site().burdens(k) ? train(node, layout, k) : train(node, k);
        return TrainGraph.sum(
                TrainGraph.sum(node.site().blankCost().at(layout.reelFootMm(), k), train),
                handle(node, layout.form(), k));
    }

    /** The same of the builds of a layout with each of the threads worth looking at. */
    long[] dressed(Node node, Setting setting, Stand stand, Linear k, long limit) {
        long[] trains = node.site().trains(stand, setting, node.leastClass(), k);
        long blank = node.site().blankCost().at(setting.footMm(), k);
        long least = Arrays.stream(trains).min().orElse(TrainGraph.NONE);
        long handle = stand.leastUndressed(
                k, node.leastClass(), Math.min(limit, TrainGraph.NONE) - TrainGraph.sum(least, blank));
        return Arrays.stream(trains)
                .map(train -> TrainGraph.sum(TrainGraph.sum(train, blank), handle))
                .toArray();
    }

    /** False where there is one seat and it goes nowhere on a blank. */
    boolean maySeat(Node node) {
        for (HandleForm form : HandleForm.values()) {
            if (node.site().shelf(form).seats.length != 1) {
                return true;
            }
            for (int foot : ground.feet) {
                for (Stand stand : stands(node, foot, form)) {
                    if (stand.seatFits()) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** The handle's side of a layout; none where there is no room for one. */
    private List<Stand> stands(Node node, int foot, HandleForm form) {
        if (!node.site().shelf(form).room.at(foot)) {
            return List.of();
        }
        Layout layout = new Layout(node.shape().blank().id(), foot, form, Station.MOST_GUIDES);
        return node.site().stands(ground.setting(node.shape(), layout));
    }

    /** At how many places the reel may stand for what is soon told of the checks that are given, split handles and full ones counted each. */
    int feetForChecks(Node node) {
        int feet = 0;
        for (HandleForm form : HandleForm.values()) {
            for (int foot : ground.feet) {
                for (Stand stand : stands(node, foot, form)) {
                    feet += stand.shelf.given.mayStand(stand.setting) ? 1 : 0;
                }
            }
        }
        return feet;
    }

    /**
     * False where no handle goes on a blank wherever the reel stands.
     *
     * @param lately where one went on before is looked at first; told where one does
     */
    boolean mayHold(Node node, Linear k, Lately lately) {
        if (!node.site().burdens(k)) {
            return true;
        }
        String blank = node.shape().blank().id();
        Integer before = lately.foot(blank);
        if (before != null && ground.feet.contains(before) && mayHold(node, before, k)) {
            return true;
        }
        // furthest from the butt there is room for any grips
        for (int f = ground.feet.size() - 1; f >= 0; f--) {
            int foot = ground.feet.get(f);
            if (!Objects.equals(foot, before) && mayHold(node, foot, k)) {
                lately.heldAt(blank, foot);
                return true;
            }
        }
        return false;
    }

    private boolean mayHold(Node node, int foot, Linear k) {
        for (HandleForm form : HandleForm.values()) {
            for (Stand stand : stands(node, foot, form)) {
                if (stand.holds(k, node.leastClass())) {
                    return true;
                }
            }
        }
        return false;
    }

    /** False where every build of a blank just opened costs too much, by what is soon seen: the least of every station, whether or not they go together. */
    boolean mayAfford(Node node) {
        long least = leastMoney(node);
        return !TrainGraph.none(least) && least <= Prices.ceiling(bounds, Prices.Kind.COST);
    }

    /** A number no build of a blank just opened costs less than, in thousandths of a minor unit. */
    private long leastMoney(Node node) {
        Linear money = Prices.only(Prices.Kind.COST);
        long handle = TrainGraph.NONE;
        for (HandleForm form : HandleForm.values()) {
            handle = Math.min(handle, node.site().shelf(form).priced(money).moneyAnywhere());
        }
        return TrainGraph.sum(
                TrainGraph.sum(handle, train(node, money)),
                node.site().blankCost().at(ground.firstFoot(), money));
    }

    /** False where some sum is over its ceiling in every build of a node. */
    boolean mayKeepCeilings(Node node) {
        if (!hard.stream().allMatch(edge -> mayCost(node, edge.k(), edge.most() + 1))) {
            return false;
        }
        Node every = node.ofClass(leastClass); // looked at once for all classes
        for (Prices.Kind kind : Prices.Kind.values()) {
            if (Prices.bounded(bounds, kind)) {
                long ceiling = Prices.ceiling(bounds, kind);
                if (!mayCost(every, Prices.only(kind), ceiling + 1)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Prices under which two ceilings could not be kept together in some layout, the last first. */
    List<TwoCeilings.Edge> hard() {
        return List.copyOf(hard);
    }

    /** Takes more such prices: what is hard to keep in one layout is so in others. */
    void hard(TwoCeilings.Edge edge) {
        hard.remove(edge);
        hard.addFirst(edge);
        if (hard.size() > MOST_HARD) {
            hard.removeLast();
        }
    }

    /** False where every build of a node costs at least so much under some prices. */
    private boolean mayCost(Node node, Linear k, long under) {
        Setting setting = node.setting();
        boolean handled = setting != null && node.stage().compareTo(Node.Stage.HANDLED) >= 0;
        if (setting == null || !handled || !node.site().burdens(k)) {
            return of(node, k, under) < under;
        }
        long blank = node.site().blankCost().at(setting.footMm(), k);
        for (Stand stand : node.site().stands(setting)) {
            long besides = TrainGraph.sum(trainBeside(node, setting, stand, k), blank);
            if (!TrainGraph.none(besides) && stand.anyUndressed(k, node.leastClass(), under - besides)) {
                return true;
            }
        }
        return false;
    }

    /** The exact train of a stand where a node was looked at so closely, else the nearest; under prices that make weight a burden. */
    private static long trainBeside(Node node, Setting setting, Stand stand, Linear k) {
        return node.stage().compareTo(Node.Stage.TRAINED) >= 0
                ? TrainGraph.least(node.site().trains(stand, setting, node.leastClass(), k))
                : train(node, setting.layout(), k);
    }

    /** With the exact handle of a layout beside the least train, or the exact one. */
    private long handled(Node node, Setting setting, Linear k, long blank, long limit) {
        boolean works = node.site().burdens(k);
        boolean own = works && node.stage().compareTo(Node.Stage.TRAINED) >= 0;
        long nearest = works ? train(node, setting.layout(), k) : train(node, k);
        long least = TrainGraph.NONE;
        if (TrainGraph.none(nearest)) {
            return least;
        }
        for (Stand stand : node.site().stands(setting)) {
            long train = own ? TrainGraph.least(node.site().trains(stand, setting, node.leastClass(), k)) : nearest;
            long besides = TrainGraph.sum(train, blank);
            if (!TrainGraph.none(besides)) {
                long under = Math.min(Math.min(limit, least), TrainGraph.NONE) - besides;
                long handle = works
                        ? stand.leastUndressed(k, node.leastClass(), under)
                        : handle(node, setting.layout().form(), k);
                least = Math.min(least, TrainGraph.sum(besides, handle));
            }
        }
        return least;
    }

    private long handle(Node node, HandleForm form, Linear k) {
        if (!node.site().shelf(form).room.somewhere()) {
            return TrainGraph.NONE;
        }
        PriceList list = node.site().shelf(form).priced(k);
        BlankPrices prices = node.stage().compareTo(Node.Stage.OPENED) < 0 ? list.onAny() : list.on(node.shape());
        return prices.handle(node.leastClass());
    }

    private long train(Node node, Linear k) {
        return floors(node.leastClass(), k).train(node.shape());
    }

    private static long train(Node node, Layout layout, Linear k) {
        return TrainGraph.least(node.site().trainsNear(layout.reelFootMm(), layout.guideCount(), node.leastClass(), k));
    }

    private static long train(Site site, int count, int leastClass, Linear k) {
        return TrainGraph.least(site.trains(count, leastClass, k));
    }

    private Floors floors(int leastClass, Linear k) {
        return floors.computeIfAbsent(new AtClass(k, leastClass), key -> new Floors(ground, k, leastClass));
    }
}
