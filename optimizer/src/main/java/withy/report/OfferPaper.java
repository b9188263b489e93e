package withy.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import withy.app.OfferFile;
import withy.app.OfferSheet;
import withy.app.OfferSheet.Against;
import withy.app.OfferSheet.Choice;
import withy.app.OfferSheet.Difference;
import withy.explain.Phrases;
import withy.shop.Job;

/** The offer a customer is handed: up to three builds on one sheet. */
public final class OfferPaper {
    private static final double PICTURE_MM = 160;

    private static final Picture.Table NONE = new Picture.Table(0, List.of(), List.of());

    private final OfferSheet offer;
    private final Reader reader;
    private final Markup page = new Markup();

    private OfferPaper(OfferSheet offer, Reader reader) {
        this.offer = offer;
        this.reader = reader;
    }

    /** The offer as HTML for a browser and its printer. */
    public static String of(OfferSheet offer, Reader reader, Sheet sheet) {
        return of(offer, List.of(), reader, sheet);
    }

    /**
     * The same of an offer that a job keeps.
     *
     * @param ended what {@link #ended} tells of it, under the title
     */
    public static String of(OfferSheet offer, List<String> ended, Reader reader, Sheet sheet) {
        OfferPaper paper = new OfferPaper(offer, reader);
        paper.page.care(ended);
        paper.write();
        return paper.page.document(
                offer.customer().isEmpty()
                        ? Phrases.of("paper.offer.title")
                        : Phrases.of("paper.offer.titleFor", offer.customer()),
                sheet);
    }

    /** In a sentence that an offer was withdrawn or lapsed, and when; nothing of one that stands. */
    public static List<String> ended(Job.Offer given, OfferSheet offer, Reader reader) {
        String day = given.ended();
        if (day == null) {
            return List.of();
        }
        return List.of(
                given.lapsed()
                        ? Phrases.of("paper.offer.lapsed", reader.day(LocalDate.parse(offer.validUntil())))
                        : Phrases.of("paper.offer.withdrawn", reader.day(LocalDate.parse(day))));
    }

    private void write() {
        if (!offer.name().isEmpty()) {
            page.line(offer.name());
        }
        page.line(Phrases.of("paper.offer.dates", day(offer.date()), day(offer.validUntil())));
        for (Choice choice : offer.builds()) {
            page.kept(() -> choice(choice));
        }
        page.care(offer.cautions()).line(Phrases.of("paper.offer.choose")).data(OfferFile.element(offer));
    }

    private void choice(Choice choice) {
        page.heading(choice.rank() + "  " + choice.name());
        page.picture(
                new Picture(
                        "whole", choice.name(), WholeRod.of(choice.outline(), choice.colours(), choice.name()), NONE),
                PICTURE_MM);
        page.sum(
                reader.money(choice.priceMinor(), choice.currency()),
                Phrases.of(
                        choice.depositMinor() == 0 ? "paper.offer.tax" : "paper.offer.deposit",
                        reader.money(choice.taxMinor(), choice.currency()),
                        reader.money(choice.depositMinor(), choice.currency())));
        page.line(Phrases.of(
                "paper.offer.figures",
                reader.decimals(reader.units().rodLength(choice.finishedLengthMm())),
                reader.decimals(reader.units().rodLength(choice.packedLengthMm())),
                reader.mass(choice.weightG()),
                reader.length(Math.rint(choice.balanceFromReelFootMm()))));
        page.places(choice.parts().stream()
                .map(part -> Map.entry(Phrases.sentence(part.station()), part.name()))
                .toList());
        page.line(ready(choice));
        choice.against().forEach(other -> page.line(against(choice, other)));
    }

    private String ready(Choice choice) {
        return choice.waitFor() == null
                ? Phrases.of("paper.offer.ready", day(choice.ready()))
                : Phrases.of("paper.offer.waits", day(choice.ready()), choice.waitFor(), choice.waitDays());
    }

    private String against(Choice choice, Against other) {
        String gains = differences(choice, other, true);
        String gives = differences(choice, other, false);
        if (gains.isEmpty() && gives.isEmpty()) {
            return Phrases.of("paper.offer.alike", other.rank());
        }
        String key = gains.isEmpty() ? "paper.offer.gives" : gives.isEmpty() ? "paper.offer.gains" : "paper.offer.both";
        return Phrases.of(key, other.rank(), gains, gives);
    }

    private String differences(Choice choice, Against other, boolean better) {
        return Phrases.list(other.differences().stream()
                .filter(one -> one.better() == better)
                .map(one -> words(one, choice, other.rank()))
                .toList());
    }

    private String words(Difference one, Choice choice, int otherRank) {
        String size = switch (one.objective()) {
            case WEIGHT ->
                reader.massBetween(choice.weightG(), offer.build(otherRank).weightG());
            case PRICE -> reader.money(Math.round(one.size()), choice.currency());
            case SWING_WEIGHT -> reader.number(one.size(), 0);
            case DURABILITY, BALANCE, STYLE -> "";
        };
        return Phrases.of("paper.offer." + one.objective().key() + (one.better() ? ".better" : ".worse"), size);
    }

    private String day(String iso) {
        return reader.day(LocalDate.parse(iso));
    }
}
