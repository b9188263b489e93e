package withy.cli;

import picocli.CommandLine.Option;
import withy.report.Sheet;

/** Size of the paper. */
final class SheetOption {
    @Option(
            names = "--sheet",
            paramLabel = "SHEET",
            defaultValue = "a4",
            description = "Size of the paper: a4 or letter (${DEFAULT-VALUE} unless told).")
    private Sheet sheet = Sheet.A4;

    Sheet size() {
        return sheet;
    }
}
