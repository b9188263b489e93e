package withy.machine;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.machine.Carried.Group;
import withy.mechanics.NaturalFrequency;
import withy.mechanics.NaturalFrequency.Outcome;
import withy.mechanics.TubeMass;
import withy.rod.Rod;
import withy.rod.Station;

/**
 * Lowest natural frequency of blank and finished rod, held fast at the front of the handle, and what each group of parts takes off it.
 *
 * @param heldMm where it is held, mm from the butt
 * @param blankHz the blank alone, as bought
 * @param finishedHz the finished rod
 * @param costs what leaving one group off would give back, in turn, the others staying
 * @param guides what each guide with its wraps takes off, and a gram there
 * @param tipHertzPerGram what a gram at the tip takes off
 * @param doubt why there is no number, or null
 */
public record Quickness(
        double heldMm,
        double blankHz,
        double finishedHz,
        List<GroupCost> costs,
        List<GuideCost> guides,
        double tipHertzPerGram,
        @Nullable String doubt) {
    /** Elements beside those that steps and guides add: some forty in all, which gives 0.001 %. */
    private static final int ELEMENTS = 12;

    public Quickness {
        costs = List.copyOf(costs);
        guides = List.copyOf(guides);
    }

    /**
     * One group.
     *
     * @param what guides, wraps, tip-top, ferrules, others
     * @param massG ahead of the handle, g
     * @param hertz slower for it by
     */
    public record GroupCost(Group what, double massG, double hertz) {}

    /**
     * One guide.
     *
     * @param station which
     * @param xMm from the butt, mm
     * @param massG with its wraps, g
     * @param hertzPerGram a gram more there slows the rod by
     */
    public record GuideCost(Station station, double xMm, double massG, double hertzPerGram) {
        /** Slower for this guide by, to first order. */
        public double hertz() {
            return massG * hertzPerGram;
        }
    }

    /** Works it out. */
    public static Quickness of(Rod rod, BlankStiffness stiffness) {
        double held = rod.handleFrontMm();
        String unbendable = RodBend.unbendable(rod);
        if (unbendable != null) {
            return new Quickness(held, 0, 0, List.of(), List.of(), 0, unbendable);
        }
        List<Carried> carried = Carried.of(rod);
        TubeMass tube = rod.setting().shape().tube();
        Work work = new Work(stiffness, held, tube, carried);
        Outcome bare = work.blankAlone();
        Outcome all = work.without(null);
        if (!(bare instanceof Outcome.Modes blank) || !(all instanceof Outcome.Modes finished)) {
            Outcome failed = bare instanceof Outcome.NotConverged ? bare : all;
            return new Quickness(held, 0, 0, List.of(), List.of(), 0, ((Outcome.NotConverged) failed).reason());
        }
        List<GroupCost> costs = new ArrayList<>();
        for (Group group : Group.values()) {
            double massG = work.massG(group);
            if (massG > 0 && work.without(group) instanceof Outcome.Modes without) {
                costs.add(new GroupCost(group, massG, without.firstHz() - finished.firstHz()));
            }
        }
        List<GuideCost> guides = new ArrayList<>();
        for (Carried guide : carried) {
            if (guide.what() == Group.GUIDES) {
                double wraps = carried.stream()
                        .filter(c -> c.what() == Group.WRAPS && c.station().equals(guide.station()))
                        .mapToDouble(Carried::massG)
                        .sum();
                guides.add(new GuideCost(
                        guide.station(), guide.sMm(), guide.massG() + wraps, finished.hertzPerGramAt(guide.sMm())));
            }
        }
        return new Quickness(
                held,
                blank.firstHz(),
                finished.firstHz(),
                costs,
                guides,
                finished.hertzPerGramAt(stiffness.profile().tipMm()),
                null);
    }

    /** Lowest frequency of the finished rod alone, or NaN where none can be trusted: for comparing trains. */
    static double finishedHz(Rod rod, BlankStiffness stiffness) {
        if (RodBend.unbendable(rod) != null) {
            return Double.NaN;
        }
        Work work =
                new Work(stiffness, rod.handleFrontMm(), rod.setting().shape().tube(), Carried.of(rod));
        return work.without(null) instanceof Outcome.Modes modes ? modes.firstHz() : Double.NaN;
    }

    private record Work(BlankStiffness stiffness, double heldMm, TubeMass tube, List<Carried> carried) {
        Outcome blankAlone() {
            return lowest(tube, List.of());
        }

        /** The finished rod, or without one group; the ferrules' own lumps go with their wraps. */
        Outcome without(@Nullable Group group) {
            TubeMass own = group == Group.FERRULES ? Carried.withoutLumps(tube) : tube;
            return lowest(
                    own,
                    carried.stream()
                            .filter(c -> c.what() != group)
                            .map(Carried::mass)
                            .toList());
        }

        private Outcome lowest(TubeMass own, List<NaturalFrequency.PointMass> masses) {
            return NaturalFrequency.lowest(stiffness.profile(), heldMm, own, masses, ELEMENTS, 1);
        }

        double massG(Group group) {
            double lumps = group != Group.FERRULES
                    ? 0
                    : tube.lumps().stream()
                            .filter(l -> l.xMm() > heldMm)
                            .mapToDouble(TubeMass.Lump::massG)
                            .sum();
            return lumps
                    + carried.stream()
                            .filter(c -> c.what() == group)
                            .mapToDouble(Carried::massG)
                            .sum();
        }
    }
}
