package withy.app;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.BriefWriter;
import withy.catalog.Catalog;
import withy.machine.BlankStiffness;
import withy.machine.HandleFit.NamedReel;
import withy.machine.LighterOdds;
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
     * @param tested the blank's stiffness by the shop's own bend test, or null
     * @param against another build whose weight is compared, or null
     * @param weighed scale readings of one piece as sold, g, by part id
     * @param seed what drawing weights begins with
     */
    public record Question(
            @Nullable Double buttDeg,
            @Nullable Double pullDeg,
            @Nullable Double pullN,
            List<NamedReel> reels,
            @Nullable TestedBlank tested,
            @Nullable Build against,
            Map<String, Double> weighed,
            long seed) {
        public Question {
            reels = List.copyOf(reels);
            weighed = Collections.unmodifiableMap(new TreeMap<>(weighed));
        }

        /** Nothing else. */
        public static Question plain() {
            return new Question(null, null, null, List.of(), null, null, Map.of(), 1);
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
        TestedBlank tested = question.tested();
        BlankStiffness stiffness = tested == null
                ? BlankStiffness.of(rod.setting().shape())
                : BlankStiffness.measured(tested.stiffness(rod.setting().shape().profile()));
        Pose pose = question.pose(brief);
        return new BendAnswer(
                Answer.SCHEMA,
                catalog.hash(),
                BriefWriter.write(brief),
                brief.defaultsUsed(),
                Sheets.name(rod),
                rod.figures().weightG(),
                Machines.of(RodMachine.of(rod, stiffness, pose, question.reels())),
                Trains.of(rod, stiffness, pose),
                odds(rod, question),
                Cautions.withWeight(List.of(rod)));
    }

    private static @Nullable OddsSheet odds(Rod rod, Question question) {
        Build against = question.against();
        if (against == null) {
            return null;
        }
        Rod other = Rod.measure(rod.setting().catalog(), rod.brief(), against);
        return odds(rod, other, question.weighed(), question.seed());
    }

    /** How likely the first of two rods is the lighter one. */
    public static OddsSheet odds(Rod rod, Rod other, Map<String, Double> weighed, long seed) {
        LighterOdds odds = LighterOdds.of(rod, other, weighed, seed, LighterOdds.USUAL_DRAWS);
        return new OddsSheet(
                Sheets.name(other),
                Sheets.rounded(odds.probability(), 3),
                Sheets.rounded(odds.differenceG(), 3),
                Sheets.rounded(odds.spreadG(), 3),
                odds.draws(),
                odds.seed());
    }
}
