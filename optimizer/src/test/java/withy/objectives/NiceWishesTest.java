package withy.objectives;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.catalog.Action;
import withy.catalog.Blank;
import withy.catalog.ReelSeat;
import withy.catalog.SeatEnd;
import withy.fixture.Fixtures;
import withy.rod.Station;

/** What is owed for wishes that would be nice, in thousandths of a step, by hand. */
class NiceWishesTest {
    private static long missed(Fixtures fixture) {
        return new NiceWishes(fixture.theBrief()).missedMilliSteps(fixture.rod());
    }

    private static Fixtures wishing(String what, Object value) {
        return Fixtures.legal().brief("handle." + what, new Wish<>(value, false, 1.5));
    }

    @Test
    void aWishIsOwedOnlyWhereItIsMissed() {
        assertEquals(0, missed(Fixtures.legal()));
        assertEquals(0, missed(wishing("form", HandleForm.SPLIT)));
        assertEquals(1500, missed(wishing("form", HandleForm.FULL)));
        assertEquals(0, missed(wishing("action", Action.FAST)));
        assertEquals(1500, missed(wishing("action", Action.SLOW)));
        assertEquals(0, missed(wishing("trigger", false)));
        assertEquals(1500, missed(wishing("trigger", true)));
        assertEquals(0, missed(wishing("movingHood", SeatEnd.REAR)));
        assertEquals(1500, missed(wishing("movingHood", SeatEnd.FRONT)));
        assertEquals(0, missed(wishing("keeper", false)));
        assertEquals(1500, missed(wishing("keeper", true)));
        assertEquals(0, missed(wishing("keeper", true).put(Station.KEEPER, "keeper")));
        assertEquals(0, missed(wishing("foreGrip", false)));
        assertEquals(1500, missed(wishing("foreGrip", true)));
        assertEquals(0, missed(wishing("foreGrip", true).put(Station.FORE_GRIP, "fore-grip")));
    }

    @Test
    void wishesAddUpAndHardOnesAreNotOwed() {
        Fixtures both = wishing("trigger", true).brief("handle.keeper", new Wish<>(true, false, 0.25));
        both.brief("handle.form", new Wish<>(HandleForm.FULL, false, 2))
                .brief("handle.action", new Wish<>(Action.SLOW, false, 4));
        assertEquals(1500 + 250 + 2000 + 4000, missed(both));
        NiceWishes wishes = new NiceWishes(both.theBrief());
        ReelSeat seat = (ReelSeat) both.partOf("seat");
        assertEquals(1500, wishes.seat(seat));
        assertEquals(250, wishes.keeper(false));
        assertEquals(0, wishes.keeper(true));
        assertEquals(0, wishes.foreGrip(true));
        assertEquals(4000, wishes.blank((Blank) both.partOf("blank")));
        assertEquals(6000, wishes.layout(both.rod().setting()));
        assertEquals(0, missed(Fixtures.legal().brief("handle.trigger", new Wish<>(true, true, 1.5))));
        assertEquals(0, missed(Fixtures.legal().empty(Station.SEAT)), "no seat, nothing owed for one");
    }

    @Test
    void aPartThatWouldBeNiceIsCreditedWhereItIsUsed() {
        Fixtures used = Fixtures.legal()
                .brief("insisted", List.of(new PartWish("cap", false, 1), new PartWish("keeper", false, 0.5)));
        NiceWishes wishes = new NiceWishes(used.theBrief());
        assertEquals(1500, wishes.mostCredit());
        assertEquals(1500, wishes.layout(used.rod().setting()));
        assertEquals(1500, wishes.blank((Blank) used.partOf("blank")));
        assertEquals(-1000, wishes.part(Station.BUTT_CAP, used.partOf("cap"), 7));
        assertEquals(0, wishes.part(Station.SEAT, used.partOf("seat"), 7));
        assertEquals(500, missed(used));
        Fixtures blank = Fixtures.legal().brief("insisted", List.of(new PartWish("blank", false, 1)));
        assertEquals(0, missed(blank));
        Fixtures hard = Fixtures.legal().brief("insisted", List.of(new PartWish("keeper", true, 1)));
        assertEquals(0, missed(hard));
        assertEquals(0, new NiceWishes(hard.theBrief()).mostCredit());
    }

    @Test
    void guidesAreCreditedAShareEach() {
        Fixtures fixture = Fixtures.legal().brief("insisted", List.of(new PartWish("guide-5", false, 7)));
        assertEquals(-1000, new NiceWishes(fixture.theBrief()).part(Station.guide(4), fixture.partOf("guide-5"), 7));
        assertEquals(3000, missed(fixture), "four of seven stations");
    }

    @Test
    void aPartUsedTwiceIsCreditedOnce() {
        Fixtures fixture = Fixtures.legal()
                .put(Station.REAR_CHECK, "check")
                .brief("insisted", List.of(new PartWish("check", false, 1)));
        assertEquals(0, missed(fixture));
        fixture.brief("insisted", List.of(new PartWish("check", false, 1), new PartWish("check", false, 1)));
        assertEquals(0, missed(fixture), "wished twice it counts twice, at each of its places");
    }

    @Test
    void aPartRatherNotWantedCostsAtEveryPlace() {
        Fixtures fixture = Fixtures.legal()
                .brief("refused", List.of(new PartWish("guide-5", false, 0.5), new PartWish("cap", true, 9)));
        assertEquals(2000, missed(fixture));
        NiceWishes wishes = new NiceWishes(fixture.theBrief());
        assertEquals(500, wishes.part(Station.guide(4), fixture.partOf("guide-5"), 7));
        assertEquals(0, wishes.mostCredit());
        fixture.brief("refused", List.of(new PartWish("blank", false, 2), new PartWish("blank", false, 1)));
        assertEquals(3000, missed(fixture));
        fixture.brief("owned", Set.of("blank"));
        assertEquals(3000, missed(fixture));
    }
}
