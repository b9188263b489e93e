package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import withy.app.Answer;
import withy.app.Progress;
import withy.app.Propose;
import withy.app.Reasons.RepairLine;
import withy.app.SearchChooser;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefReader;
import withy.brief.BriefWriter;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** A repair done on a brief as typed reads as the brief the repair was solved for, and leaves all else as it was typed. */
class GivingWayTest {
    private static final Path HOME = Path.of(System.getProperty("withy.home"));
    /** The reader takes diameters to a ten-thousandth of a millimetre. */
    private static final double READ_MM = 1e-4;

    private static Catalog catalog;
    private static BriefContext context;

    @BeforeAll
    static void read() throws Exception {
        catalog = CatalogReader.read(HOME.resolve("catalog-samples/bench"), LocalDate.of(2026, 6, 1))
                .catalog();
        assertNotNull(catalog);
        context = new BriefContext(catalog.rates(), catalog.asOf());
    }

    private static ObjectNode scenario(String name) throws Exception {
        return (ObjectNode) new ObjectMapper()
                .readTree(
                        Files.readString(HOME.resolve("scenarios").resolve(name).resolve("brief.json")));
    }

    private static JsonNode told(Brief brief) {
        ObjectNode told = BriefWriter.write(brief);
        told.remove("defaultsUsed");
        for (String line : List.of("line", "leader")) {
            if (told.path(line) instanceof ObjectNode at) {
                at.remove("diameterMm");
            }
        }
        return told;
    }

    private static List<RepairLine> repairs(ObjectNode typed) {
        Brief brief = BriefReader.read(typed, context).brief();
        assertNotNull(brief);
        Answer answer = Propose.run(
                catalog, brief, new SearchChooser(catalog), new QuantityText(UnitSystem.METRIC), Progress.NONE);
        assertNotNull(answer.impossible(), "something can be built");
        return answer.impossible().repairs();
    }

    private static void everyRepairHolds(ObjectNode typed) {
        List<RepairLine> repairs = repairs(typed);
        assertTrue(!repairs.isEmpty());
        Brief now = BriefReader.read(typed, context).orThrow();
        for (RepairLine repair : repairs) {
            ObjectNode changed = GivingWay.of(typed, now, repair.brief());
            Brief reads = BriefReader.read(changed, context).orThrow();
            changed = GivingWay.of(changed, reads, repair.brief());
            reads = BriefReader.read(changed, context).orThrow();
            assertEquals(told(repair.brief()), told(reads), repair.sentence());
            assertEquals(repair.brief().line().diameterMm(), reads.line().diameterMm(), READ_MM, repair.sentence());
            if (reads.leader() != null) {
                assertEquals(
                        repair.brief().leader().diameterMm(), reads.leader().diameterMm(), READ_MM);
            }
            assertEquals(typed.path("name"), changed.path("name"));
            int same = 0;
            for (var fields = typed.fields(); fields.hasNext(); ) {
                var field = fields.next();
                same += field.getValue().equals(changed.path(field.getKey())) ? 1 : 0;
            }
            assertTrue(same >= typed.size() - 3, repair.sentence() + ": kept as typed " + same + " of " + typed.size());
        }
    }

    @Test
    void aLongRodInAShortBoot() throws Exception {
        everyRepairHolds(scenario("surf-two-piece-short-pack"));
    }

    @Test
    void aFishLiftedOnALightLeader() throws Exception {
        everyRepairHolds(scenario("harbour-lift-on-light-leader"));
    }

    @Test
    void moneyHandlePartAndPackTogetherInWordsAsTyped() throws Exception {
        ObjectNode typed = scenario("kayak-estuary");
        typed.remove(List.of("budgetMinor", "budget"));
        typed.put("budget", "150 EUR");
        everyRepairHolds(typed);
        ObjectNode packed = scenario("kayak-estuary");
        packed.remove(List.of("packedMaxMm", "packedMax", "budget", "budgetMinor"));
        packed.put("packedMax", "60 cm");
        everyRepairHolds(packed);
    }
}
