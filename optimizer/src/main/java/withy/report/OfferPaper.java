package withy.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import withy.app.BuildSheet.Summary;
import withy.app.OfferSheet;
import withy.app.OfferSheet.Choice;
import withy.explain.Phrases;

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
        OfferPaper paper = new OfferPaper(offer, reader);
        paper.write();
        return paper.page.document(
                offer.customer().isEmpty()
                        ? Phrases.of("paper.offer.title")
                        : Phrases.of("paper.offer.titleFor", offer.customer()),
                sheet);
    }

    private void write() {
        page.line(Phrases.of("paper.offer.dates", reader.day(offer.date()), reader.day(offer.validUntil())));
        for (Choice choice : offer.builds()) {
            page.kept(() -> choice(choice));
        }
        page.care(offer.cautions());
    }

    private void choice(Choice choice) {
        page.heading(choice.rank() + "  " + choice.name());
        page.picture(
                new Picture("whole", choice.name(), WholeRod.of(choice.outline(), choice.name()), NONE), PICTURE_MM);
        page.strong(Phrases.of(
                choice.depositMinor() == 0 ? "paper.offer.priceAlone" : "paper.offer.price",
                reader.money(choice.priceMinor(), choice.currency()),
                reader.money(choice.taxMinor(), choice.currency()),
                reader.money(choice.depositMinor(), choice.currency())));
        page.line(reader.decimals(Phrases.of(
                "paper.offer.figures",
                reader.units().rodLength(choice.finishedLengthMm()),
                reader.units().rodLength(choice.packedLengthMm()),
                reader.units().mass(choice.weightG()),
                reader.units().partLength(Math.rint(choice.balanceFromReelFootMm())))));
        page.line(choice.parts().stream()
                .map(part -> Phrases.sentence(part.station()) + ": " + part.name())
                .collect(Collectors.joining(" · ")));
        page.line(ready(choice));
        for (String against : against(choice)) {
            page.line(against);
        }
    }

    private String ready(Choice choice) {
        String day = reader.day(choice.ready());
        return choice.waitFor() == null
                ? Phrases.of("paper.offer.ready", day)
                : Phrases.of("paper.offer.waits", day, choice.waitFor(), choice.waitDays());
    }

    private List<String> against(Choice choice) {
        List<String> lines = new ArrayList<>();
        for (Summary summary : choice.summaries()) {
            lines.add(Phrases.of("paper.offer.against", summary.against(), reader.decimals(summary.sentence())));
        }
        return lines;
    }
}
