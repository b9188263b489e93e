package withy.rod;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.PartKind;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;

/** Guides that are kept in mind sit where they would be worked out to sit, whatever briefs, blanks and reel places were asked about before. */
class GuideSpotsTest {
    private static final int ASKED = 4000;
    private static final int BLANKS = 12;

    @Test
    void asWorkedOut() throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        List<Brief> briefs = new ArrayList<>();
        for (String scenario : List.of(
                "kayak-estuary", "tiny-stream-ultralight", "beach-surf", "pier-mackerel-garfish", "sea-trout-travel")) {
            briefs.add(Scenarios.brief(scenario, catalog));
        }
        List<Blank> blanks = catalog.all(PartKind.BLANK, Blank.class);
        GuideSpots spots = new GuideSpots();
        Random random = new Random(1);
        for (int i = 0; i < ASKED; i++) {
            Brief brief = briefs.get(random.nextInt(briefs.size()));
            BlankShape shape = BlankShape.of(blanks.get(random.nextInt(BLANKS) * (blanks.size() / BLANKS)));
            Layout layout = new Layout(
                    shape.blank().id(),
                    250 + 10 * random.nextInt(3),
                    random.nextBoolean() ? HandleForm.SPLIT : HandleForm.FULL,
                    6 + random.nextInt(3));
            Setting fresh = Setting.of(catalog, brief, shape, layout);
            Setting known = Setting.of(catalog, brief, shape, layout, spots);
            same(fresh, known);
            same(fresh.withGuides(7), known.withGuides(7));
        }
    }

    private static void same(Setting fresh, Setting known) {
        assertEquals(fresh.spaced(), known.spaced());
        for (int number = 1; number <= fresh.guideCount(); number++) {
            assertEquals(fresh.guideMm(number), known.guideMm(number), 0.0, known.layout() + ", guide " + number);
        }
    }
}
