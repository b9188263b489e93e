package withy.cli;

import picocli.CommandLine.Option;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** How an answer is shown. */
final class OutputOptions {
    @Option(names = "--json", description = "Print the answer as JSON; withy schema describes it.")
    private boolean json;

    @Option(
            names = "--units",
            paramLabel = "UNITS",
            defaultValue = "metric",
            description = "Units in texts: metric, imperial or both (${DEFAULT-VALUE} unless told).")
    private UnitSystem units = UnitSystem.METRIC;

    boolean json() {
        return json;
    }

    QuantityText units() {
        return new QuantityText(units);
    }
}
