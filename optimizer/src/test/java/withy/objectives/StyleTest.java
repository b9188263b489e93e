package withy.objectives;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.Gloss;
import withy.catalog.Lab;
import withy.catalog.Material;
import withy.catalog.Part;
import withy.fixture.Fixtures;
import withy.rod.Station;

/** Points of the look, worked out by hand from the shares and weights that {@link Style} states. The fixture's parts are satin and of one grey. */
class StyleTest {
    private static final Lab GREY = new Lab(30, 0, 0);

    private static Style style(Fixtures fixture) {
        return new Style(fixture.catalog(), fixture.theBrief());
    }

    private static Fixtures looking(String theme, Set<Material> materials, List<Lab> colours) {
        return Fixtures.legal().brief("look", new Brief.Look(theme, materials, Set.of(), colours, ""));
    }

    private static long points(Fixtures fixture, HandleForm form, Station station, String id, int guides) {
        return style(fixture).part((Blank) fixture.partOf("blank"), form, station, fixture.partOf(id), guides);
    }

    private static long blank(Fixtures fixture) {
        return points(fixture, HandleForm.SPLIT, Station.BLANK, "blank", 7);
    }

    @Test
    void whereNothingIsWishedEveryPartHalfSuits() {
        Fixtures fixture = Fixtures.legal();
        // half of 14 + 14 + 16 + 8 + 3 + 3 + 2 + 8, seven guides of 0.85, and 4 + 6 + 8 for one colour
        assertEquals(3400 + 7 * 85 + 1800, style(fixture).of(fixture.rod()));
        Fixtures full = Fixtures.legal().fullHandle();
        assertEquals(3400 + 7 * 85 + 1800, style(full).of(full.rod()));
    }

    @Test
    void withoutAGripBesideTheSeatNothingGoesTogetherThere() {
        Fixtures fixture = Fixtures.legal().empty(Station.REAR_GRIP);
        assertEquals(3400 - 800 + 7 * 85 + 1000, style(fixture).of(fixture.rod()));
    }

    @Test
    void aThemeWithItsColourGivesCorkAllAndTheRestSixTenths() {
        Fixtures fixture = looking("natural", Set.of(), List.of(GREY));
        // cork 16 + 8; six tenths of 14 + 14 + 3 + 3 + 2 + 8; guides of 1.02; one colour
        assertEquals(2400 + 2640 + 7 * 102 + 1800, style(fixture).of(fixture.rod()));
    }

    @Test
    void everyPlaceHasItsWeight() {
        Set<Material> all = EnumSet.allOf(Material.class);
        Fixtures fixture = looking("natural", all, List.of(GREY));
        Map<Station, Long> weights = Map.ofEntries(
                Map.entry(Station.BLANK, 1400L),
                Map.entry(Station.SEAT, 1400L + 400),
                Map.entry(Station.REAR_GRIP, 1600L),
                Map.entry(Station.BUTT_GRIP, 800L),
                Map.entry(Station.BUTT_CAP, 300L),
                Map.entry(Station.REAR_CHECK, 200L),
                Map.entry(Station.WINDING_CHECK, 300L),
                Map.entry(Station.guide(2), 150L),
                Map.entry(Station.TIP_TOP, 200L),
                Map.entry(Station.THREAD, 800L + 600),
                Map.entry(Station.HOOD, 0L),
                Map.entry(Station.SEAT_ARBORS, 0L),
                Map.entry(Station.FORE_CHECK, 0L),
                Map.entry(Station.FORE_GRIP, 0L),
                Map.entry(Station.KEEPER, 0L),
                Map.entry(Station.FINISH, 0L),
                Map.entry(Station.ADHESIVE, 0L),
                Map.entry(Station.DECAL, 0L));
        weights.forEach((station, weight) ->
                assertEquals(weight, points(fixture, HandleForm.SPLIT, station, "cap", 8), station.key()));
        assertEquals(2400, points(fixture, HandleForm.FULL, Station.REAR_GRIP, "full-grip", 8));
        assertEquals(171, points(fixture, HandleForm.SPLIT, Station.guide(1), "cap", 7), "1200 / 7, cut off");
    }

    @Test
    void aSurfaceSuitsItsThemeOnly() {
        Fixtures natural = looking("natural", Set.of(Material.CARBON), List.of(GREY));
        assertEquals(1400, blank(natural));
        assertEquals(1120, blank(natural.part("blank", "facts.gloss", Gloss.MATT)), "a fifth less");
        assertEquals(1260, blank(natural.part("blank", "facts.gloss", null)), "half of a fifth where it is not told");
        assertEquals(1260, blank(looking("", Set.of(Material.CARBON), List.of(GREY))), "nor where there is no theme");
    }

    @Test
    void likedMaterialsCountWithoutATheme() {
        assertEquals(1260, blank(looking("", Set.of(Material.CARBON), List.of(GREY))));
        assertEquals(700, blank(looking("", Set.of(Material.CORK), List.of(GREY))));
        assertEquals(980, blank(looking("", Set.of(), List.of(GREY))), "half of the material where none is wished");
        Fixtures modern = looking("modern", Set.of(Material.CORK), List.of(GREY));
        assertEquals(1120, blank(modern), "the theme's own materials stay liked");
    }

    /** Differences: Sharma, Wu, Dalal, Color Research and Application 30 (2005) 21–30, table 1, pairs 1 and 23. */
    @Test
    void theNearestOfTheWishedColoursCounts() {
        Lab own = new Lab(50, 2.6772, -79.7751);
        Lab near = new Lab(50, 0, -82.7485);
        Fixtures fixture = looking("", Set.of(Material.CARBON), List.of(new Lab(50, 50, 0), near));
        fixture.part("blank", "facts.colour", own);
        assertEquals(Math.round(1400 * (0.4 + 0.1 + 0.4 * (1 - 2.0425 / 40))), blank(fixture));
        Fixtures other = looking("", Set.of(Material.CARBON), List.of(new Lab(56, -27, -3)));
        other.part("blank", "facts.colour", new Lab(50, 2.5, 0));
        assertEquals(Math.round(1400 * (0.4 + 0.1 + 0.4 * (1 - 31.9030 / 40))), blank(other));
        Fixtures far = looking("", Set.of(Material.CARBON), List.of(new Lab(100, 0, 0)));
        far.part("blank", "facts.colour", new Lab(0, 0, 0));
        assertEquals(700, blank(far), "from 40 on a colour recalls nothing");
    }

    @Test
    void aPartThatShowsNoColourHalfSuits() {
        Fixtures fixture = looking("", Set.of(Material.CARBON), List.of(new Lab(100, 0, 0)));
        assertEquals(980, blank(fixture.part("blank", "facts.colour", null)));
    }

    @Test
    void coloursGoTogetherWhereTheyAreNearOrFranklyDifferent() {
        double[][] curve = {{0, 1}, {4, 1}, {9.5, 0.65}, {15, 0.3}, {30, 0.55}, {45, 0.8}, {46, 0.8}, {110, 0.8}};
        for (double[] point : curve) {
            assertEquals(point[1], Style.harmonyOf(point[0]), 1e-12, "" + point[0]);
        }
        assertEquals(1 - 0.7 * 0.5 / 11, Style.harmonyOf(4.5), 1e-12);
        assertEquals(0.3 + 0.5 * 0.5 / 30, Style.harmonyOf(15.5), 1e-12);
    }

    /** Black and white differ by 100 (CIE 142-2001, L* alone from 0 to 100 at the mean of 50). */
    @Test
    void neighboursAreLookedAtInPairs() {
        Fixtures fixture = Fixtures.legal().part("seat", "facts.colour", new Lab(0, 0, 0));
        fixture.part("blank", "facts.colour", new Lab(100, 0, 0)).part("thread", "facts.colour", new Lab(100, 0, 0));
        fixture.part("rear-grip", "facts.colour", null);
        Style style = style(fixture);
        Part seat = fixture.partOf("seat");
        assertEquals(640, style.gripAndSeat(fixture.partOf("blank"), seat));
        assertEquals(640, style.gripAndSeat(seat, fixture.partOf("blank")));
        assertEquals(800, style.gripAndSeat(seat, seat));
        assertEquals(400, style.gripAndSeat(fixture.partOf("rear-grip"), seat));
        assertEquals(400, style.gripAndSeat(seat, fixture.partOf("rear-grip")));
        assertEquals(700 + 320, points(fixture, HandleForm.SPLIT, Station.SEAT, "seat", 7));
        assertEquals(400 + 600, points(fixture, HandleForm.SPLIT, Station.THREAD, "thread", 7));
        assertEquals(800, Style.mostGripAndSeat());
    }

    @Test
    void aPartFromElsewhereIsLookedAtLikeAnyOther() {
        Fixtures fixture = looking("natural", Set.of(), List.of(GREY));
        Style style = style(fixture);
        Fixtures other = Fixtures.legal().copy("butt-grip", "from-elsewhere");
        Blank blank = (Blank) fixture.partOf("blank");
        assertEquals(800, style.part(blank, HandleForm.SPLIT, Station.BUTT_GRIP, other.partOf("from-elsewhere"), 7));
    }

    @Test
    void themesAreFoundByNameInAnyCase() {
        for (Theme theme : Theme.values()) {
            assertEquals(theme, Theme.of(theme.name()));
            assertEquals(theme, Theme.of(theme.name().toLowerCase(java.util.Locale.ROOT)));
            assertEquals(theme == Theme.NONE, theme.palette().isEmpty());
        }
        assertEquals(Theme.NONE, Theme.of(""));
        assertEquals(Theme.NONE, Theme.of("rustic"));
        assertTrue(Theme.STEALTH.likes(Material.TITANIUM));
        assertFalse(Theme.STEALTH.likes(Material.CORK));
        assertEquals(
                List.of(Gloss.GLOSS, Gloss.MATT, Gloss.SATIN, Gloss.MATT, Gloss.GLOSS, Gloss.SATIN),
                List.of(Theme.values()).stream().map(Theme::gloss).toList());
    }
}
