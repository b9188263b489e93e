package withy.app;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet.TradeOffLine;
import withy.app.BuildSheet.VerdictLine;
import withy.brief.Brief;
import withy.explain.Breach;
import withy.explain.Conflict;
import withy.explain.Conflict.Asked;
import withy.explain.Evidence;
import withy.explain.Flip;
import withy.explain.Found;
import withy.explain.Impossible;
import withy.explain.Phrases;
import withy.explain.Repair;
import withy.explain.TradeOffs.TradeOff;
import withy.rod.Figures;

/** Explanations written down as answers have them. */
public final class Reasons {
    private Reasons() {}

    /**
     * A build an explanation speaks of.
     *
     * @param name a few words to call it by
     * @param weightG finished weight without reel, g
     * @param priceMinor what the customer pays, minor units
     * @param balanceFromReelFootMm balance point ahead of the reel foot, mm
     * @param proven true where none is better for the question it was found with
     * @param mayBeOffSteps how much better one could be, in noticeable steps; 0 where proven
     * @param build what it is made of, as a build file has it
     */
    public record BuildLine(
            String name,
            double weightG,
            long priceMinor,
            double balanceFromReelFootMm,
            boolean proven,
            double mayBeOffSteps,
            BuildFile build) {
        /** The same by another name, beside builds that share the few words of its own. */
        BuildLine called(String words) {
            return new BuildLine(words, weightG, priceMinor, balanceFromReelFootMm, proven, mayBeOffSteps, build);
        }

        /** The same with what is known of its proof. */
        BuildLine proven(boolean known, double offSteps) {
            return new BuildLine(name, weightG, priceMinor, balanceFromReelFootMm, known, offSteps, build);
        }
    }

    /**
     * What a customer asks.
     *
     * @param wish field of the brief
     * @param about part or material it is about, or empty
     * @param words as said on the phone
     */
    public record AskedLine(String wish, String about, String words) {}

    /**
     * What a reason rests on.
     *
     * @param kind wish, rule or fact
     * @param ref field of the brief, code of the rule, or id of the part
     */
    public record GroundLine(String kind, String ref) {}

    /**
     * What would have to change for a part to win.
     *
     * @param kind priority, price, weight or wish
     * @param subject objective, part or field of the brief
     * @param now what it is; null where it is no number
     * @param loses nearest value with which it does not win; null likewise
     * @param wins value with which it does; null where none was found
     * @param unit unit of the three
     * @param sentence the same in words
     */
    public record FlipLine(
            String kind,
            String subject,
            @Nullable Double now,
            @Nullable Double loses,
            @Nullable Double wins,
            String unit,
            String sentence) {}

    /**
     * Wishes that cannot be had together.
     *
     * @param wishes none of them could be left out
     * @param sentence the same in words
     * @param breaks what the nearest build breaks; null where there is no near one
     * @param nearest that build; null likewise
     */
    public record ConflictLine(
            List<AskedLine> wishes,
            String sentence,
            @Nullable VerdictLine breaks,
            @Nullable BuildLine nearest) {
        public ConflictLine {
            wishes = List.copyOf(wishes);
        }
    }

    /**
     * One thing that gives way.
     *
     * @param wish field of the brief
     * @param about part or material, or empty
     * @param knob which end of the wish, or empty where it is given up as a whole
     * @param from what the brief says; null where it is no number
     * @param to what it would have to say; null likewise
     * @param shy nearest value with which nothing can be built; null likewise
     * @param unit unit of the three
     */
    public record ChangeLine(
            String wish,
            String about,
            String knob,
            @Nullable Double from,
            @Nullable Double to,
            @Nullable Double shy,
            String unit) {}

    /**
     * A way out, verified by solving.
     *
     * @param changes what gives way
     * @param sentence the same in words
     * @param build the best build that is then legal
     * @param brief the changed brief; not written down
     */
    public record RepairLine(
            List<ChangeLine> changes,
            String sentence,
            BuildLine build,
            @JsonIgnore Brief brief) {
        public RepairLine {
            changes = List.copyOf(changes);
        }
    }

    /**
     * Why nothing can be built.
     *
     * @param currency of the prices
     * @param wishesAreToBlame false where the lists hold nothing that goes together even without any wish
     * @param conflicts smallest first
     * @param allConflicts true where there are no others
     * @param repairs cheapest first
     */
    public record ImpossibleLines(
            String currency,
            boolean wishesAreToBlame,
            List<ConflictLine> conflicts,
            boolean allConflicts,
            List<RepairLine> repairs) {
        public ImpossibleLines {
            conflicts = List.copyOf(conflicts);
            repairs = List.copyOf(repairs);
        }
    }

    static @Nullable BuildLine build(@Nullable Found found) {
        if (found == null) {
            return null;
        }
        Figures figures = found.rod().figures();
        return new BuildLine(
                Sheets.name(found.rod()),
                figures.weightG(),
                figures.priceMinor(),
                Sheets.rounded(figures.balanceFromReelFootMm(), 2),
                found.proven(),
                Sheets.rounded(found.mayBeOffSteps(), 6),
                BuildFile.of(found.build()));
    }

    static AskedLine asked(Asked asked) {
        return new AskedLine(asked.field(), asked.about(), asked.words());
    }

    static GroundLine ground(Evidence ground) {
        return new GroundLine(ground.kind().key(), ground.ref());
    }

    static FlipLine flip(Flip flip) {
        return new FlipLine(
                flip.kind().key(),
                flip.subject(),
                Sheets.number(flip.now()),
                Sheets.number(flip.loses()),
                Sheets.number(flip.wins()),
                flip.unit(),
                flip.sentence());
    }

    static TradeOffLine tradeOff(TradeOff t) {
        return new TradeOffLine(
                t.against(),
                t.objective().key(),
                Sheets.rounded(t.difference(), 8),
                t.unit(),
                t.noticeable(),
                t.sentence());
    }

    static @Nullable VerdictLine breach(@Nullable Breach breach) {
        return breach == null ? null : Verdicts.line(breach.verdict(), breach.sentence());
    }

    static ImpossibleLines impossible(Impossible impossible, String currency) {
        return new ImpossibleLines(
                currency,
                impossible.wishesAreToBlame(),
                impossible.conflicts().stream().map(Reasons::conflict).toList(),
                impossible.allConflicts(),
                impossible.repairs().stream().map(Reasons::repair).toList());
    }

    private static ConflictLine conflict(Conflict conflict) {
        return new ConflictLine(
                conflict.wishes().stream().map(Reasons::asked).toList(),
                conflict.sentence(),
                breach(conflict.breach()),
                build(conflict.nearest()));
    }

    private static RepairLine repair(Repair repair) {
        BuildLine build = build(repair.build());
        if (build == null) {
            throw new IllegalStateException("a repair without a build");
        }
        List<ChangeLine> changes = repair.changes().stream()
                .map(c -> new ChangeLine(
                        c.field(),
                        c.about(),
                        c.knob(),
                        Sheets.number(c.from()),
                        Sheets.number(c.to()),
                        Sheets.number(c.shy()),
                        c.unit()))
                .toList();
        return new RepairLine(changes, Phrases.sentence(repair.sentence()), build, repair.brief());
    }
}
