package withy.cli;

import java.util.ArrayList;
import java.util.Currency;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.AnswerJson;
import withy.app.ListParts;
import withy.app.PartsAnswer;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.NearWord;
import withy.catalog.PartKind;
import withy.report.CatalogText;
import withy.units.MassUnit;
import withy.units.Money;
import withy.units.Quantities;
import withy.units.UnitsFault;

@Command(
        name = "parts",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy parts shop --kind blank%n"
                + "  withy parts shop --kind seat --max-weight 20g --in-stock%n"
                + "  withy parts shop --kind grip --liked cork --max-price 25%n"
                + "  withy parts shop --kind tip-top --fits-blank ID%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Lists what is in a catalogue.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class PartsCommand implements Callable<Integer> {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", arity = "0..1", paramLabel = "DIR", description = "The catalogue's folder.")
    private @Nullable String folder;

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            description = "Only this kind: blank, seat, hood, arbor, grip, cap, check, guide, tip-top, keeper, thread,"
                    + " finish, adhesive or decal. May be given more than once.")
    private List<String> kinds = new ArrayList<>();

    @Option(names = "--min-weight", paramLabel = "WEIGHT", description = "Only from this weight, such as 40g.")
    private @Nullable String minWeight;

    @Option(
            names = "--max-weight",
            paramLabel = "WEIGHT",
            description = "Only up to this weight, such as 20g or 0.7oz.")
    private @Nullable String maxWeight;

    @Option(names = "--max-price", paramLabel = "AMOUNT", description = "Only up to this price.")
    private @Nullable String maxPrice;

    @Option(
            names = "--liked",
            paramLabel = "TEXT",
            description = "Only with this word in id, maker, model, material or set. May be given more than once.")
    private List<String> liked = new ArrayList<>();

    @Option(names = "--in-stock", description = "Only what is on the shelf.")
    private boolean inStock;

    @Option(
            names = "--fits-blank",
            paramLabel = "ID",
            description = "Only what goes on this blank somewhere along the handle, or at its tip.")
    private @Nullable String fitsBlank;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private OutputOptions output;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    PartsCommand() {}

    @Override
    public Integer call() {
        Surroundings surroundings = main.surroundings();
        Set<PartKind> wanted = kinds();
        Double least = grams("--min-weight", minWeight);
        Double most = grams("--max-weight", maxWeight);
        Catalog catalog = catalogs.workshop(
                        folder, surroundings, spec.commandLine().getErr())
                .snapshot()
                .catalog();
        ListParts.Filter filter =
                new ListParts.Filter(wanted, least, most, minor(catalog), liked, inStock, blank(catalog));
        PartsAnswer answer = ListParts.run(catalog, filter, output.units());
        Answering.print(
                output.json() ? AnswerJson.write(answer) : CatalogText.of(answer, output.units()),
                spec.commandLine().getOut());
        return Exit.FINE;
    }

    private Set<PartKind> kinds() {
        Map<String, PartKind> words = words();
        Set<PartKind> wanted = EnumSet.noneOf(PartKind.class);
        for (String typed : kinds) {
            String key = typed.toLowerCase(Locale.ROOT).replace(' ', '-');
            PartKind kind = words.get(key);
            if (kind == null) {
                String near = NearWord.to(key, words.keySet());
                throw new Stop(
                        Exit.USAGE,
                        "--kind " + typed + ": allowed is one of " + String.join(", ", words.keySet()) + ".",
                        near.isEmpty() ? "Maybe leave it out to see all." : "Maybe \"" + near + "\" was meant.");
            }
            wanted.add(kind);
        }
        return wanted;
    }

    /** A kind by its short word, its file's name or the builder's word, singular or plural. */
    private static Map<String, PartKind> words() {
        Map<String, PartKind> words = new TreeMap<>();
        for (PartKind kind : PartKind.values()) {
            String file = kind.fileName().replace(".csv", "");
            words.put(file, kind);
            words.put(kind.name().toLowerCase(Locale.ROOT).replace('_', '-'), kind);
        }
        words.put("seat", PartKind.REEL_SEAT);
        words.put("seats", PartKind.REEL_SEAT);
        words.put("cap", PartKind.BUTT_CAP);
        words.put("caps", PartKind.BUTT_CAP);
        return words;
    }

    private static @Nullable Double grams(String option, @Nullable String typed) {
        if (typed == null) {
            return null;
        }
        try {
            return Quantities.mass(typed, MassUnit.GRAM).grams();
        } catch (UnitsFault e) {
            throw new Stop(Exit.USAGE, option + " " + typed + ": allowed is " + e.allowed() + ".", e.maybe());
        }
    }

    private @Nullable Long minor(Catalog catalog) {
        if (maxPrice == null) {
            return null;
        }
        try {
            return Money.minor(maxPrice, Currency.getInstance(catalog.rates().currency()));
        } catch (UnitsFault e) {
            throw new Stop(Exit.USAGE, "--max-price " + maxPrice + ": allowed is " + e.allowed() + ".", e.maybe());
        }
    }

    private @Nullable Blank blank(Catalog catalog) {
        if (fitsBlank == null) {
            return null;
        }
        if (catalog.find(fitsBlank) instanceof Blank blank) {
            return blank;
        }
        List<String> ids = catalog.all(PartKind.BLANK).stream().map(p -> p.id()).toList();
        String near = NearWord.to(fitsBlank, ids);
        throw new Stop(
                Exit.USAGE,
                "--fits-blank " + fitsBlank + ": allowed is the id of a blank.",
                near.isEmpty() ? "Maybe look it up with --kind blank." : "Maybe \"" + near + "\" was meant.");
    }
}
