package withy.cli;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import withy.app.PartIds;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefFault;
import withy.brief.BriefOverrides;
import withy.brief.BriefReader;
import withy.brief.BriefReading;
import withy.catalog.Catalog;

/** Changes to a brief for one answer. */
final class BriefOptions {
    @Option(
            names = "--priority",
            paramLabel = "NAME=NUMBER",
            description = "How much an objective counts: weight, balance, swingWeight, price, style or durability."
                    + " May be given more than once.")
    private List<String> priorities = new ArrayList<>();

    @Option(names = "--budget", paramLabel = "AMOUNT", description = "Most the customer pays, tax included.")
    private @Nullable String budget;

    @Option(names = "--with", paramLabel = "PART", description = "A part that must be in. May be given more than once.")
    private List<String> with = new ArrayList<>();

    @Option(
            names = "--without",
            paramLabel = "PART",
            description = "A part that must not be in. May be given more than once.")
    private List<String> without = new ArrayList<>();

    /** The brief with the changes, or the end with every fault of brief and changes. */
    Brief read(String name, Catalog catalog, Surroundings surroundings) {
        BriefContext context = new BriefContext(catalog.rates(), catalog.asOf());
        BriefReading reading = BriefReader.read(Texts.read(name, "brief", surroundings), context);
        BriefOverrides.Reading overrides = BriefOverrides.read(priorities, budget, with, without, context);
        BriefOverrides changes = overrides.overrides();
        if (changes == null) {
            throw stop(Exit.USAGE, overrides.faults());
        }
        List<BriefFault> mistyped = new ArrayList<>(PartIds.unknown("--with", with, catalog));
        mistyped.addAll(PartIds.unknown("--without", without, catalog));
        if (!mistyped.isEmpty()) {
            throw stop(Exit.USAGE, mistyped);
        }
        Brief told = reading.brief();
        if (told == null) {
            throw stop(Exit.BAD_DATA, reading.faults());
        }
        Brief brief = changes.apply(told, context);
        List<BriefFault> unknown = PartIds.unknown(brief, catalog);
        if (!unknown.isEmpty()) {
            throw stop(Exit.BAD_DATA, unknown);
        }
        return brief;
    }

    static Stop stop(int exitCode, List<BriefFault> faults) {
        return new Stop(exitCode, faults.stream().map(BriefFault::message).toList());
    }
}
