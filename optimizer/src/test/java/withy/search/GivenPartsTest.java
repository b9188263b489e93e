package withy.search;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.catalog.Arbor;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.PartKind;
import withy.catalog.ReelSeat;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.Layout;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;
import withy.rules.Rulebook;
import withy.rules.Seams;

/** An arbor that is said to go on nowhere fills no seat of the shelf at any place of the reel, a grip that is said to reach no seat is joined to none. */
class GivenPartsTest {

    @ParameterizedTest
    @ValueSource(strings = {"brook-trout-cork", "kayak-estuary", "beach-surf"})
    void whatIsSaidToGoNowhereGoesNowhere(String scenario) throws Exception {
        Catalog catalog = SampleCatalogs.bench();
        Brief brief = Scenarios.brief(scenario, catalog);
        int nowhere = 0;
        int somewhere = 0;
        for (Arbor arbor : catalog.all(PartKind.ARBOR, Arbor.class)) {
            Task task =
                    SmallShop.task(catalog, Query.of(brief, Rulebook.standard()).forcing(Set.of(arbor.id())));
            for (Site site : task.sites()) {
                boolean goes = false;
                for (int foot : task.ground.feet) {
                    Layout layout = new Layout(site.shape().blank().id(), foot, HandleForm.SPLIT, 5);
                    goes |= goes(site, arbor, Setting.of(catalog, brief, site.shape(), layout));
                }
                boolean may = site.mayHaveGiven();
                assertFalse(
                        goes && !may, arbor.id() + " on " + site.shape().blank().id());
                nowhere += may ? 0 : 1;
                somewhere += goes ? 1 : 0;
            }
        }
        assertTrue(nowhere > 0 && somewhere > 0, nowhere + " nowhere, " + somewhere + " somewhere");
    }

    /** A seat that is said to be out of a grip's reach is joined to it by no ring that goes on, at no place of the reel. */
    @ParameterizedTest
    @ValueSource(strings = {"brook-trout-cork", "kayak-estuary", "beach-surf"})
    void whatIsSaidToReachNoSeatReachesNone(String scenario) throws Exception {
        Catalog catalog = SampleCatalogs.bench();
        Brief brief = Scenarios.brief(scenario, catalog);
        Reach reach = new Reach();
        for (Grip grip : catalog.all(PartKind.GRIP, Grip.class)) {
            if (grip.place() == Grip.Place.FORE || grip.place() == Grip.Place.REAR) {
                reach.look(catalog, brief, grip, 1);
            }
        }
        assertTrue(reach.reached > 0 && reach.out > 0, reach.reached + " reached, " + reach.out + " out of reach");
    }

    /** Grips so thick that no seat for the reel joins them without a ring. */
    @ParameterizedTest
    @CsvSource({
        "quay-squid-nice-wishes, ostermoor-surf-fore-200-nop437, 20",
        "salt-flats-wading, hollinbeck-surf-rear-150-nop365, 40",
        "pier-mackerel-garfish, hollinbeck-surf-rear-150-nop365, 20"
    })
    void noRingOfManyThatGoesOnIsPassedOver(String scenario, String grip, int every) throws Exception {
        Catalog catalog = SampleCatalogs.wide();
        Grip thick = (Grip) Objects.requireNonNull(catalog.find(grip));
        Reach reach = new Reach();
        reach.look(catalog, Scenarios.brief(scenario, catalog), thick, every);
        assertTrue(reach.out > 0, reach.reached + " reached, " + reach.out + " out of reach");
    }

    /** A seat that is given as well, which a grip joins with a ring alone. */
    @ParameterizedTest
    @EnumSource(names = {"FORE", "REAR"})
    void aRingBringsAGripToASeat(Grip.Place place) throws Exception {
        Catalog catalog = SampleCatalogs.bench();
        Brief brief = Scenarios.brief("kayak-estuary", catalog);
        Reach reach = new Reach();
        for (ReelSeat seat : catalog.all(PartKind.REEL_SEAT, ReelSeat.class)) {
            for (Grip grip : catalog.all(PartKind.GRIP, Grip.class)) {
                Query query = Query.of(brief, Rulebook.standard()).forcing(Set.of(grip.id(), seat.id()));
                List<Site> sites =
                        grip.place() == place ? SmallShop.task(catalog, query).sites() : List.of();
                if (!sites.isEmpty() && onlyWithARing(sites.get(0).shelf(HandleForm.SPLIT), seat, place)) {
                    reach.look(catalog, query, grip, 10);
                }
            }
        }
        assertTrue(reach.reached > 0, reach.reached + " reached, " + reach.out + " out of reach");
    }

    private static boolean onlyWithARing(Shelf shelf, ReelSeat seat, Grip.Place place) {
        if (place == Grip.Place.FORE) {
            BitSet between = shelf.foreJoins.between(seat);
            return !between.isEmpty() && !between.get(shelf.checks.length);
        }
        return shelf.joinsOf(seat).stream()
                .allMatch(joins -> Arrays.stream(shelf.rears)
                        .allMatch(rear -> joins.some(rear) && !joins.rings(rear).get(0)));
    }

    /** Seats looked at, of some of the blanks. */
    private static final class Reach {
        private int reached;
        private int out;

        void look(Catalog catalog, Brief brief, Grip grip, int every) {
            look(catalog, Query.of(brief, Rulebook.standard()).forcing(Set.of(grip.id())), grip, every);
        }

        void look(Catalog catalog, Query query, Grip grip, int every) {
            boolean fore = grip.place() == Grip.Place.FORE;
            Task task = SmallShop.task(catalog, query);
            for (int s = 0; s < task.sites().size(); s += every) {
                Site site = task.sites().get(s);
                boolean any = false;
                for (int foot : task.ground.feet) {
                    Layout layout = new Layout(site.shape().blank().id(), foot, HandleForm.SPLIT, 5);
                    for (Stand stand : site.stands(Setting.of(catalog, query.brief(), site.shape(), layout))) {
                        any |= look(stand, grip, fore);
                    }
                }
                String told = grip.id() + " on " + site.shape().blank().id();
                assertFalse(any && !site.mayHaveGiven(), told);
            }
        }

        private boolean look(Stand stand, Grip grip, boolean fore) {
            BesideSeat beside = new BesideSeat(stand);
            boolean any = false;
            for (ReelSeat seat : stand.shelf.seats) {
                double from = stand.setting.footMm() - seat.footCentreMm();
                boolean may = beside.mayStand(seat, from);
                boolean reaches = !may && (fore ? ahead(stand, seat, from) : behind(stand, seat, from));
                assertFalse(reaches, grip.id() + " beside " + seat.id() + " on " + stand.setting.layout());
                reached += may ? 1 : 0;
                out += may ? 0 : 1;
                any |= may;
            }
            return any;
        }
    }

    private static List<SeatSet> sets(Stand stand, ReelSeat seat, double fromMm) {
        List<SeatSet> sets = new ArrayList<>(List.of(new SeatSet(seat, null, null, fromMm)));
        stand.shelf.hoodsFor(seat).forEach(hood -> sets.add(new SeatSet(seat, hood, null, fromMm)));
        return sets;
    }

    /** True where a fore grip goes on ahead of a seat, with some rear grip joined to the seat behind. */
    private static boolean ahead(Stand stand, ReelSeat seat, double fromMm) {
        Refusal refusal = new Refusal();
        for (SeatSet set : sets(stand, seat, fromMm)) {
            for (int ring = -1; ring < stand.shelf.checks.length; ring++) {
                for (int fore = 0; fore < stand.shelf.fores.length; fore++) {
                    Check check = ring < 0 ? null : stand.shelf.checks[ring];
                    double at = set.toMm() + (check == null ? 0 : check.widthMm());
                    Cut cut = stand.shelf.fores[fore];
                    stand.ground.seams.aheadOfSeat(stand.setting, set, check, cut.grip(), refusal.reset());
                    boolean joins = !refusal.refused() && (ring < 0 || stand.foreCheck(ring, set.toMm()) != null);
                    BitSet beside = stand.shelf.neighbours.rears(fore);
                    if (joins
                            && stand.mayReach(at + cut.lengthMm())
                            && stand.foreGrip(fore, at) != null
                            && Arrays.stream(stand.shelf.rears)
                                    .anyMatch(rear -> beside.get(rear.index())
                                            && stand.shelf.joins(set).some(rear))) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** True where a rear grip goes on behind a seat, with some butt grip and its cap behind that. */
    private static boolean behind(Stand stand, ReelSeat seat, double fromMm) {
        Refusal refusal = new Refusal();
        for (SeatSet set : sets(stand, seat, fromMm)) {
            for (int ring = -1; ring < stand.shelf.checks.length; ring++) {
                for (int rear = 0; rear < stand.shelf.rears.length; rear++) {
                    Check check = ring < 0 ? null : stand.shelf.checks[ring];
                    double front = fromMm - (check == null ? 0 : check.widthMm());
                    Cut cut = stand.shelf.rears[rear];
                    stand.ground.seams.behindSeat(stand.setting, cut.grip(), check, set, refusal.reset());
                    boolean joins = !refusal.refused() && (ring < 0 || stand.rearCheck(ring, fromMm) != null);
                    if (joins && stand.rearGrip(rear, front) != null && leadsOn(stand, cut, front - cut.lengthMm())) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private static boolean leadsOn(Stand stand, Cut rear, double roomMm) {
        Refusal refusal = new Refusal();
        BitSet beside = stand.ground.gripMatch.buttsBeside(stand.setting, rear.grip());
        for (int b = 0; b < stand.shelf.butts.length; b++) {
            Cut butt = stand.shelf.butts[b];
            boolean goes = beside.get(butt.index()) && stand.buttGrip(b) != null;
            for (Option<ButtCap> cap :
                    goes && butt.lengthMm() + Seams.BARE_MM <= roomMm ? stand.caps() : List.<Option<ButtCap>>of()) {
                stand.ground.seams.butt(stand.setting, cap.part, Station.BUTT_GRIP, butt.grip(), refusal.reset());
                if (!refusal.refused()) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean goes(Site site, Arbor arbor, Setting setting) {
        Refusal refusal = new Refusal();
        for (ReelSeat seat : site.shelf(HandleForm.SPLIT).seats) {
            double from = setting.footMm() - seat.footCentreMm();
            Rulebook.standard().onSeat(setting, new SeatSet(seat, null, arbor, from), refusal.reset());
            if (!refusal.refused()) {
                return true;
            }
        }
        return false;
    }
}
