package withy.report;

import static withy.report.BendWords.degrees;
import static withy.report.BendWords.number;

import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.app.MachineSheet;
import withy.app.MachineSheet.Line;
import withy.app.MachineSheet.RingUnderLoad;
import withy.explain.Phrases;
import withy.units.ForceUnit;
import withy.units.QuantityText;

/** A rod under the line through its rings for a terminal of 80 columns. */
final class LineText {
    private static final Page.Column[] RINGS = {
        new Page.Column(14, false),
        new Page.Column(16, true),
        new Page.Column(14, true),
        new Page.Column(14, true),
        new Page.Column(18, true)
    };

    private final Page page;
    private final double tipMm;
    private final QuantityText units;

    LineText(Page page, MachineSheet machine, QuantityText units) {
        List<MachineSheet.Diameter> blank = machine.outline().blank();
        this.page = page;
        this.tipMm = blank.get(blank.size() - 1).xMm();
        this.units = units;
    }

    void write(String title, Line line) {
        page.heading(title);
        String pull = units.strength(line.pullKg() * ForceUnit.KILOGRAM_FORCE.newtons());
        page.paragraph("", Phrases.of("bend.line.pose", pull, direction(line.buttDeg()), direction(line.pullDeg())));
        if (line.doubt() != null) {
            page.paragraph("", Phrases.of("bend.line.doubt", line.doubt()));
            return;
        }
        page.paragraph(
                "",
                Phrases.of(
                        "bend.line.hand",
                        moment(line.handMomentNmm()),
                        line.dropMm() == null ? "–" : length(line.dropMm())));
        Double rating = line.liftRatingKg();
        Double reserve = line.reserve();
        page.paragraph(
                "",
                rating == null || reserve == null
                        ? Phrases.of("bend.line.noRating")
                        : Phrases.of(
                                reserve < 1 ? "bend.line.beyondRating" : "bend.line.rating",
                                units.strength(rating * ForceUnit.KILOGRAM_FORCE.newtons()),
                                number(reserve, 1)));
        gap(line);
        rings(line);
    }

    private void gap(Line line) {
        Double gap = line.leastGapMm();
        RingUnderLoad nearest = nearest(line);
        if (gap != null && nearest != null) {
            page.paragraph(
                    "",
                    Phrases.of(
                            gap < 0 ? "bend.line.touches" : "bend.line.clears",
                            units.partLength(Math.abs(gap)),
                            Phrases.station(nearest.station())));
        }
    }

    private static @Nullable RingUnderLoad nearest(Line line) {
        return line.rings().stream()
                .filter(ring -> ring.gapBehindMm() != null && ring.gapBehindMm().equals(line.leastGapMm()))
                .findFirst()
                .orElse(null);
    }

    private void rings(Line line) {
        page.gap()
                .row(
                        RINGS,
                        Phrases.of("bend.ring"),
                        Phrases.of("bend.ring.fromTip"),
                        Phrases.of("bend.ring.turn"),
                        Phrases.of("bend.ring.force"),
                        Phrases.of("bend.ring.gap"));
        page.rule();
        for (RingUnderLoad ring : line.rings()) {
            Double gap = ring.gapBehindMm();
            page.row(
                    RINGS,
                    Phrases.station(ring.station()),
                    length(tipMm - ring.xMm()),
                    degrees(ring.turnDeg()),
                    units.mass(ring.forceN() / ForceUnit.KILOGRAM_FORCE.newtons() * 1000),
                    gap == null ? "–" : units.partLength(Math.rint(gap * 10) / 10));
        }
        Double largest = line.largestTurnDeg();
        Double all = line.allTurnsDeg();
        if (largest != null && all != null) {
            page.paragraph("", Phrases.of("bend.ring.all", degrees(largest), degrees(all)));
        }
    }

    private String moment(@Nullable Double nmm) {
        return nmm == null ? "–" : units.moment(nmm);
    }

    private static String direction(double deg) {
        return deg == 0
                ? Phrases.of("bend.level")
                : Phrases.of(deg > 0 ? "bend.up" : "bend.down", number(Math.abs(deg), 0));
    }

    private String length(double mm) {
        return units.partLength(Math.rint(mm));
    }
}
