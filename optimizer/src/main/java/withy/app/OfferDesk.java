package withy.app;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import withy.app.OfferSheet.Against;
import withy.app.OfferSheet.Choice;
import withy.app.OfferSheet.Difference;
import withy.app.OfferSheet.Seen;
import withy.app.OfferSheet.Terms;
import withy.app.Offers.Weighed;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.explain.Phrases;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rod.Station.Place;
import withy.rules.Rulebook;
import withy.units.QuantityText;

/** Writes an offer for a customer from builds already chosen; one that breaks a rule is never offered. */
public final class OfferDesk {
    private static final List<Place> SEEN =
            List.of(Place.BLANK, Place.SEAT, Place.REAR_GRIP, Place.GUIDE, Place.TIP_TOP);

    private OfferDesk() {}

    /**
     * What is to be printed beside the builds.
     *
     * @param terms what the builder promises
     * @param units units of what is said
     */
    public record Order(Terms terms, QuantityText units) {}

    /** The offer of an answer just made. */
    static OfferSheet of(Catalog catalog, Brief brief, Answer answer, Order order) {
        BuildsReader.Reading reading = BuildsReader.read(AnswerJson.write(answer), catalog);
        return of(catalog, brief, reading.builds(), order.terms(), order.units());
    }

    /** The offer of builds, best first. */
    public static OfferSheet of(Catalog catalog, Brief brief, List<Build> builds, Terms terms, QuantityText units) {
        Offers offers = new Offers(catalog, brief, Rulebook.standard(), units);
        List<Weighed> weighed = new ArrayList<>();
        for (Build build : builds) {
            Weighed one = offers.own(weighed.size() + 1, build);
            BenchDesk.refuseIllegal(one.sheet());
            weighed.add(one);
        }
        List<BuildSheet> sheets = offers.compared(weighed);
        List<String> names = names(weighed);
        List<Choice> choices = new ArrayList<>();
        for (int i = 0; i < sheets.size(); i++) {
            choices.add(choice(weighed.get(i).side().rod(), sheets.get(i), names.get(i), against(sheets, i), terms));
        }
        return new OfferSheet(
                Answer.SCHEMA,
                terms.customer().isEmpty() ? brief.customer() : terms.customer(),
                brief.name(),
                terms.date().toString(),
                terms.date().plusDays(terms.validDays()).toString(),
                terms.depositPercent(),
                choices,
                Cautions.forCustomer(weighed.stream().map(w -> w.side().rod()).toList()));
    }

    /** As they are called side by side; two of one name still are told apart by the first part that differs to the eye. */
    private static List<String> names(List<Weighed> weighed) {
        List<String> names = BuildNames.of(weighed.stream().map(Weighed::side).toList());
        List<List<Seen>> parts =
                weighed.stream().map(one -> seen(one.side().rod())).toList();
        List<String> told = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            List<List<Seen>> alike = IntStream.range(0, names.size())
                    .filter(other -> names.get(other).equals(name))
                    .mapToObj(parts::get)
                    .toList();
            told.add(name
                    + parts.get(i).stream()
                            .filter(part -> alike.stream().anyMatch(other -> !other.contains(part)))
                            .findFirst()
                            .map(part -> ", " + part.name())
                            .orElse(""));
        }
        return told;
    }

    private static List<Against> against(List<BuildSheet> sheets, int mine) {
        BuildSheet sheet = sheets.get(mine);
        List<Against> all = new ArrayList<>();
        for (BuildSheet other : sheets) {
            if (other.rank() != sheet.rank()) {
                all.add(new Against(
                        other.rank(),
                        sheet.tradeOffs().stream()
                                .filter(line -> line.against() == other.rank() && line.noticeable())
                                .map(line -> difference(line, other))
                                .toList()));
            }
        }
        return all;
    }

    private static Difference difference(BuildSheet.TradeOffLine line, BuildSheet other) {
        Objective objective = Arrays.stream(Objective.values())
                .filter(one -> one.key().equals(line.objective()))
                .findFirst()
                .orElseThrow();
        boolean better = line.difference() > 0 == objective.moreIsBetter();
        double size = Math.abs(line.difference());
        return new Difference(
                objective,
                better,
                switch (objective) {
                    case WEIGHT -> Sheets.rounded(size, 1);
                    case PRICE, DURABILITY -> size;
                    case SWING_WEIGHT -> Math.rint(100 * size / other.figures().swingWeightKgM2());
                    case BALANCE, STYLE -> 0;
                });
    }

    private static Choice choice(Rod rod, BuildSheet sheet, String name, List<Against> against, Terms terms) {
        BuildSheet.FigureLines figures = sheet.figures();
        Waited waited = waited(rod);
        return new Choice(
                sheet.rank(),
                name,
                figures.priceMinor(),
                sheet.price().taxMinor(),
                (figures.priceMinor() * terms.depositPercent() + 99) / 100,
                figures.currency(),
                terms.date().plusDays((long) waited.days() + terms.benchDays()).toString(),
                waited.days(),
                waited.days() == 0 ? null : waited.what(),
                figures.weightG(),
                figures.finishedLengthMm(),
                figures.packedLengthMm(),
                figures.balanceFromReelFootMm(),
                seen(rod),
                against,
                Outlines.of(rod),
                Outlines.colours(rod));
    }

    private record Waited(int days, String what) {}

    /** What is on the shelf in too few pieces for the rod's stations together is waited for. */
    private static Waited waited(Rod rod) {
        Map<String, Integer> pieces = new TreeMap<>();
        for (Station station : rod.build().choices().keySet()) {
            Part part = rod.partAt(station);
            if (part != null) {
                pieces.merge(part.id(), rod.pieces(station), Integer::sum);
            }
        }
        pieces.merge(rod.setting().blank().id(), 1, Integer::sum);
        Waited longest = new Waited(0, "");
        for (Map.Entry<String, Integer> need : pieces.entrySet()) {
            Part part = rod.setting().catalog().find(need.getKey());
            if (part == null
                    || need.getValue() <= part.facts().stock()
                    || part.facts().leadDays() == null) {
                continue;
            }
            int days = part.facts().leadDays();
            if (days > longest.days() && !rod.brief().owned().contains(part.id())) {
                longest = new Waited(days, part.facts().name());
            }
        }
        return longest;
    }

    private static List<Seen> seen(Rod rod) {
        List<Seen> seen = new ArrayList<>();
        for (Place place : SEEN) {
            Station station = place == Place.GUIDE ? Station.guide(1) : new Station(place, 0);
            Part part = place == Place.BLANK ? rod.setting().blank() : rod.partAt(station);
            if (part != null && place == Place.GUIDE) {
                String guides = Phrases.of(
                        "paper.offer.guides",
                        rod.build().layout().guideCount(),
                        part.facts().name());
                seen.add(new Seen(Phrases.of("paper.guides"), guides));
            } else if (part != null) {
                seen.add(new Seen(
                        Phrases.of("station." + Stations.key(place)),
                        part.facts().name()));
            }
        }
        return seen;
    }
}
