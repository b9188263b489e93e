package withy.fuzz;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import withy.cli.Main;
import withy.units.Dates;
import withy.units.DecimalMark;
import withy.units.ForceUnit;
import withy.units.LengthUnit;
import withy.units.MassUnit;
import withy.units.Money;
import withy.units.Quantities;
import withy.units.UnitsFault;

/** What is typed: quantities, scale readings and words of the command line. */
class WordsFuzzTest {
    private static final String LONG = "20m";

    private interface Parse {
        double of(String text);
    }

    private static final List<Parse> PARSERS = List.of(
            text -> Quantities.length(text, LengthUnit.MILLIMETRE).mm(),
            text -> Quantities.mass(text, MassUnit.GRAM).grams(),
            text -> Quantities.force(text, ForceUnit.KILOGRAM_FORCE).newtons(),
            text -> Quantities.decimal(text, DecimalMark.POINT),
            text -> Money.minor(text, Currency.getInstance("EUR")),
            text -> Dates.date(text).toEpochDay(),
            text -> Dates.byHand(text, LocalDate.of(2026, 11, 29)).date().toEpochDay());

    @FuzzTest(maxDuration = LONG)
    void quantity(FuzzedDataProvider data) {
        Parse parser = PARSERS.get(data.consumeInt(0, PARSERS.size() - 1));
        String text = data.consumeRemainingAsString();
        try {
            double value = parser.of(text);
            if (!Double.isFinite(value)) {
                throw new IllegalStateException("\"" + text + "\" is taken for " + value);
            }
        } catch (UnitsFault fault) {
            if (!String.valueOf(fault.getMessage()).contains("Maybe ")) {
                throw new IllegalStateException("no way out is told: " + fault.getMessage());
            }
        }
    }

    /** Taken apart only: nothing is run or written. */
    @FuzzTest(maxDuration = LONG)
    void commandLine(FuzzedDataProvider data) {
        List<String> words = new ArrayList<>();
        CommandLine line = Main.commandLine(new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()));
        List<String> commands = new ArrayList<>(line.getSubcommands().keySet());
        words.add(data.pickValue(commands));
        while (data.remainingBytes() > 0 && words.size() < 30) {
            words.add(data.consumeString(40));
        }
        try {
            line.parseArgs(words.toArray(String[]::new));
        } catch (ParameterException fault) {
            if (String.valueOf(fault.getMessage()).isBlank()) {
                throw new IllegalStateException("nothing is told of " + words);
            }
        }
    }
}
