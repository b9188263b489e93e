package withy.app;

import java.util.List;
import java.util.Objects;
import withy.app.LighterAnswer.PartLine;
import withy.app.LighterAnswer.PointLine;
import withy.brief.BriefWriter;
import withy.explain.Curve;
import withy.explain.Found;
import withy.explain.Inquiry;
import withy.explain.Ledger;
import withy.explain.Lighter;

/** Whether the best build could be lighter, as an answer. */
final class LighterLines {
    private LighterLines() {}

    /** Where nothing can be built. */
    static LighterAnswer none(Inquiry inquiry) {
        return new LighterAnswer(
                Answer.SCHEMA,
                inquiry.catalog().hash(),
                BriefWriter.write(inquiry.brief()),
                null,
                null,
                "",
                List.of(),
                List.of(),
                List.of(),
                Explain.impossible(inquiry),
                inquiry.stopped());
    }

    /** As far as it is known. */
    static LighterAnswer of(Inquiry inquiry, Lighter lighter) {
        return new LighterAnswer(
                Answer.SCHEMA,
                inquiry.catalog().hash(),
                BriefWriter.write(inquiry.brief()),
                Reasons.build(lighter.first()),
                Reasons.build(lighter.lightest()),
                lighter.sentence(),
                lighter.tradeOffs().stream().map(Reasons::tradeOff).toList(),
                lighter.curve().stream().map(LighterLines::point).toList(),
                lighter.ledger().stream()
                        .map(line -> part(lighter.first(), line))
                        .toList(),
                null,
                inquiry.stopped());
    }

    private static PointLine point(Curve.Point point) {
        return new PointLine(
                point.mostG(),
                Objects.requireNonNull(Reasons.build(point.found())),
                point.tradeOffs().stream().map(Reasons::tradeOff).toList(),
                point.sentence());
    }

    private static PartLine part(Found first, Ledger.Line line) {
        Found found = line.found();
        return new PartLine(
                line.station().key(),
                Objects.requireNonNull(first.build().partAt(line.station())),
                line.part(),
                line.name(),
                line.partSavesG(),
                Sheets.number(line.savesG()),
                Reasons.breach(line.breach()),
                found == null ? null : BuildFile.of(found.build()),
                line.tradeOffs().stream().map(Reasons::tradeOff).toList(),
                line.sentence());
    }
}
