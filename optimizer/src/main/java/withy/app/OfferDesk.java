package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import withy.app.OfferSheet.Choice;
import withy.app.OfferSheet.Seen;
import withy.app.OfferSheet.Terms;
import withy.app.Offers.Weighed;
import withy.brief.Brief;
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
        List<Choice> choices = new ArrayList<>();
        for (int i = 0; i < sheets.size(); i++) {
            choices.add(choice(weighed.get(i).side().rod(), sheets.get(i), terms));
        }
        return new OfferSheet(
                Answer.SCHEMA,
                terms.customer(),
                terms.date(),
                terms.date().plusDays(terms.validDays()),
                terms.depositPercent(),
                choices,
                Cautions.forCustomer(weighed.stream().map(w -> w.side().rod()).toList()));
    }

    private static Choice choice(Rod rod, BuildSheet sheet, Terms terms) {
        BuildSheet.FigureLines figures = sheet.figures();
        Waited waited = waited(rod);
        return new Choice(
                sheet.rank(),
                sheet.name(),
                figures.priceMinor(),
                sheet.price().taxMinor(),
                (figures.priceMinor() * terms.depositPercent() + 99) / 100,
                figures.currency(),
                terms.date().plusDays((long) waited.days() + terms.benchDays()),
                waited.days(),
                waited.days() == 0 ? null : waited.what(),
                figures.weightG(),
                figures.finishedLengthMm(),
                figures.packedLengthMm(),
                figures.balanceFromReelFootMm(),
                seen(rod),
                sheet.summaries(),
                Outlines.of(rod));
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
            if (part != null) {
                seen.add(new Seen(
                        Phrases.of("station." + Stations.key(place)),
                        part.facts().name()));
            }
        }
        return seen;
    }
}
