package withy.app;

import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.BriefWriter;
import withy.catalog.Catalog;
import withy.machine.BlankStiffness;
import withy.machine.HandleFit.NamedReel;
import withy.machine.Pose;
import withy.machine.RodMachine;
import withy.rod.Build;
import withy.rod.Rod;

/** A build measured as a machine. */
public final class Bend {
    private Bend() {}

    /**
     * What else is asked.
     *
     * @param buttDeg butt above level, or null for the usual
     * @param pullDeg line beyond the tip above level, or null for the usual
     * @param pullN pull, or null for the brief's drag
     * @param reels reels to try beside the brief's
     */
    public record Question(
            @Nullable Double buttDeg,
            @Nullable Double pullDeg,
            @Nullable Double pullN,
            List<NamedReel> reels) {
        public Question {
            reels = List.copyOf(reels);
        }

        Pose pose(Brief brief) {
            Pose usual = Pose.working(brief);
            return new Pose(
                    buttDeg == null ? usual.buttDeg() : buttDeg,
                    pullDeg == null ? usual.pullDeg() : pullDeg,
                    pullN == null ? usual.pullN() : pullN);
        }
    }

    /** Answers for one build. */
    public static BendAnswer run(Catalog catalog, Brief brief, Build build, Question question) {
        Rod rod = Rod.measure(catalog, brief, build);
        RodMachine machine =
                RodMachine.of(rod, BlankStiffness.of(rod.setting().shape()), question.pose(brief), question.reels());
        return new BendAnswer(
                Answer.SCHEMA,
                catalog.hash(),
                BriefWriter.write(brief),
                brief.defaultsUsed(),
                Sheets.name(rod),
                rod.figures().weightG(),
                Machines.of(machine),
                Cautions.of(List.of(rod)));
    }
}
