package withy.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.junit.jupiter.api.Test;
import withy.fixture.Fixtures;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** A build written down and read again. */
class BuildReaderTest {
    @Test
    void aSheetTellsTheSameBuildAsItsText() {
        Fixtures shop = Fixtures.legal();
        var catalog = shop.catalog();
        Answer answer = Propose.run(
                catalog,
                shop.theBrief(),
                new SearchChooser(catalog),
                new QuantityText(UnitSystem.METRIC),
                Progress.NONE);
        assertFalse(answer.builds().isEmpty());
        for (BuildSheet sheet : answer.builds()) {
            BuildReader.Reading text = BuildReader.read(AnswerJson.write(sheet), catalog);
            assertEquals(List.of(), text.faults());
            assertEquals(text.build(), BuildReader.written(sheet, catalog));
        }
    }
}
