package withy.app;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartFacts;
import withy.catalog.PartKind;
import withy.units.QuantityText;

/** Lists the parts of a catalogue that pass every filter. */
public final class ListParts {
    private ListParts() {}

    /**
     * What to list; a null or empty filter lets everything pass.
     *
     * @param kinds kinds wanted
     * @param leastG lightest weight, g
     * @param mostG heaviest weight, g
     * @param mostMinor highest price, minor units
     * @param liked words that each occur in id, maker, model, material or set
     * @param inStock true for what is on the shelf only
     * @param fitsBlank the blank the part must go on
     */
    public record Filter(
            Set<PartKind> kinds,
            @Nullable Double leastG,
            @Nullable Double mostG,
            @Nullable Long mostMinor,
            List<String> liked,
            boolean inStock,
            @Nullable Blank fitsBlank) {
        public Filter {
            kinds = Set.copyOf(kinds);
            liked = List.copyOf(liked);
        }
    }

    /** Answers. */
    public static PartsAnswer run(Catalog catalog, Filter filter, QuantityText units) {
        Blank blank = filter.fitsBlank();
        FitsBlank fits = blank == null ? null : new FitsBlank(catalog, blank);
        List<PartsAnswer.Line> lines = new ArrayList<>();
        for (PartKind kind : PartKind.values()) {
            for (Part part : catalog.all(kind)) {
                if (passes(part, filter) && (fits == null || fits.takes(part))) {
                    lines.add(line(part, units));
                }
            }
        }
        return new PartsAnswer(Answer.SCHEMA, catalog.hash(), catalog.rates().currency(), lines);
    }

    private static boolean passes(Part part, Filter filter) {
        double grams = part.massMg() / 1000.0;
        Double least = filter.leastG();
        Double most = filter.mostG();
        Long dearest = filter.mostMinor();
        return (filter.kinds().isEmpty() || filter.kinds().contains(part.kind()))
                && (least == null || grams >= least)
                && (most == null || grams <= most)
                && (dearest == null || part.facts().priceMinor() <= dearest)
                && (!filter.inStock() || part.facts().stock() > 0)
                && filter.liked().stream().allMatch(word -> mentions(part, word));
    }

    private static boolean mentions(Part part, String word) {
        PartFacts facts = part.facts();
        return Stream.of(facts.id(), facts.name(), facts.material().word(), facts.setCode())
                .anyMatch(text -> text.toLowerCase(Locale.ROOT).contains(word.toLowerCase(Locale.ROOT)));
    }

    private static PartsAnswer.Line line(Part part, QuantityText units) {
        PartFacts facts = part.facts();
        LocalDate priced = facts.priceDate();
        return new PartsAnswer.Line(
                part.id(),
                part.kind().word(),
                facts.name(),
                PartText.about(part, units),
                facts.material().word(),
                part.massMg() / 1000.0,
                facts.weightTolG(),
                facts.weighed(),
                facts.priceMinor(),
                priced == null ? null : priced.toString(),
                facts.stock(),
                facts.leadDays(),
                facts.durabilityClass(),
                facts.corrosionClass());
    }
}
