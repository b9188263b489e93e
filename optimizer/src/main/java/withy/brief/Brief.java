package withy.brief;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.Action;
import withy.catalog.Lab;
import withy.catalog.Material;
import withy.catalog.RodType;
import withy.catalog.SeatEnd;

/**
 * A brief with nothing left open: what the customer said, and a stated default for the rest.
 *
 * @param name short name of the commission
 * @param customer who it is for, or empty
 * @param rodType kind of rod
 * @param twoHanded cast with both hands
 * @param fishedFrom where the customer stands or sits
 * @param lengthMinMm shortest finished rod, mm
 * @param lengthMaxMm longest finished rod, mm
 * @param piecesMin fewest sections
 * @param piecesMax most sections
 * @param packedMaxMm longest packed length, mm, or null for any
 * @param lure masses of the lures
 * @param line main line
 * @param leader leader, or null for none
 * @param dragKg drag the reel is set to, kg
 * @param reel the reel that will be on it
 * @param largestFishKg heaviest fish expected, kg
 * @param landing how it is landed
 * @param durabilityClass 1 to 5
 * @param corrosionClass 1 fresh … 4 salt every day
 * @param palmMm palm breadth, mm
 * @param reachMinMm shortest wanted distance from reel foot centre to the butt end, mm
 * @param reachMaxMm longest, mm
 * @param handle wishes for the handle
 * @param look wishes for the look
 * @param budgetMinor most the customer pays, tax included, minor units, or null
 * @param wantedBy date wanted, or null for no hurry
 * @param priorities weight of each objective, at least 0
 * @param zoneNearMm near edge of the wanted balance zone, mm ahead of the reel foot
 * @param zoneFarMm far edge, mm ahead of the reel foot
 * @param steps least difference worth noticing by objective; price in minor units
 * @param insisted parts that must be in
 * @param owned parts the customer brings (no price, one piece each)
 * @param refused parts that must not be in
 * @param counterweightAsked true where the customer asks for weight in the butt beyond the rule
 * @param guidesByClearance true where the line's clearance decides how many guides there are, not the handbook's fewest count
 * @param defaultsUsed one sentence for each thing left out and what was taken instead
 */
public record Brief(
        String name,
        String customer,
        RodType rodType,
        boolean twoHanded,
        FishedFrom fishedFrom,
        double lengthMinMm,
        double lengthMaxMm,
        int piecesMin,
        int piecesMax,
        @Nullable Double packedMaxMm,
        Lure lure,
        MainLine line,
        @Nullable Leader leader,
        double dragKg,
        Reel reel,
        double largestFishKg,
        Landing landing,
        int durabilityClass,
        int corrosionClass,
        double palmMm,
        double reachMinMm,
        double reachMaxMm,
        Handle handle,
        Look look,
        @Nullable Long budgetMinor,
        @Nullable LocalDate wantedBy,
        Map<Objective, Double> priorities,
        double zoneNearMm,
        double zoneFarMm,
        Map<Objective, Double> steps,
        List<PartWish> insisted,
        Set<String> owned,
        List<PartWish> refused,
        boolean counterweightAsked,
        boolean guidesByClearance,
        List<String> defaultsUsed) {

    public Brief {
        priorities = Collections.unmodifiableMap(new EnumMap<>(priorities));
        steps = Collections.unmodifiableMap(new EnumMap<>(steps));
        insisted = List.copyOf(insisted);
        owned = Collections.unmodifiableSet(new TreeSet<>(owned));
        refused = List.copyOf(refused);
        defaultsUsed = List.copyOf(defaultsUsed);
    }

    /** Priority of one objective. */
    public double priority(Objective objective) {
        Double value = priorities.get(objective);
        return value == null ? 0 : value;
    }

    /** Least difference worth noticing in one objective. */
    public double step(Objective objective) {
        Double value = steps.get(objective);
        if (value == null) {
            throw new IllegalStateException("no step for " + objective);
        }
        return value;
    }

    /** Where the rod is used. */
    public enum FishedFrom {
        BANK,
        KAYAK,
        PIER,
        WADING,
        BEACH,
        BOAT
    }

    /** How a fish is landed. LIFTED = swung aboard as a dead load. */
    public enum Landing {
        NET,
        HAND,
        LIFTED
    }

    /**
     * Masses of the lures, head and body together.
     *
     * @param lightestG g
     * @param usualG g
     * @param heaviestG g
     */
    public record Lure(double lightestG, double usualG, double heaviestG) {}

    /** What a line is made of. */
    public enum LineKind {
        BRAID,
        NYLON,
        FLUOROCARBON
    }

    /**
     * Main line.
     *
     * @param kind material
     * @param diameterMm standard (label) diameter, mm
     * @param strengthKg breaking strength, kg
     * @param gauge braid gauge number, or null where it was not told as one or the line is no braid
     */
    public record MainLine(
            LineKind kind,
            double diameterMm,
            double strengthKg,
            @Nullable Double gauge) {}

    /** Knot that joins main line and leader; trade table of knot bulk. SLIM ones count 1.5, the others 2.0 (handbook, rule 6). */
    public enum Knot {
        FG(true),
        PR(true),
        ALBRIGHT(false),
        DOUBLE_UNI(false),
        SURGEON(false),
        BLOOD(false);

        private final boolean slim;

        Knot(boolean slim) {
            this.slim = slim;
        }

        /** True for knots that pass rings easily. */
        public boolean slim() {
            return slim;
        }
    }

    /**
     * Leader.
     *
     * @param strengthKg breaking strength, kg
     * @param diameterMm diameter, mm
     * @param knot joining knot
     * @param castThroughRings true where the knot is cast through the rings
     */
    public record Leader(double strengthKg, double diameterMm, Knot knot, boolean castThroughRings) {}

    /**
     * The reel.
     *
     * @param sizeClass size class of the trade table (2500, say), or 0 where measured
     * @param footLengthMm length of the foot, mm
     * @param footThicknessMm thickness of the foot's ends, mm
     * @param footWidthMm width of the foot, mm
     * @param massG mass with line, g
     * @param centreOffsetMm centre of mass ahead of the foot's centre, mm
     * @param lipDiameterMm spool lip diameter, mm (casting: spool width)
     * @param stemHeightMm foot to spool axis (casting: foot to line guide), mm
     */
    public record Reel(
            int sizeClass,
            double footLengthMm,
            double footThicknessMm,
            double footWidthMm,
            double massG,
            double centreOffsetMm,
            double lipDiameterMm,
            double stemHeightMm) {}

    /** Handle in one run of grip, or split with bare blank between. */
    public enum HandleForm {
        SPLIT,
        FULL
    }

    /**
     * A wish that is hard, or nice to have. A nice wish that is not met costs {@code steps} noticeable steps in the score.
     *
     * @param value what is wished
     * @param hard true where a build without it is not offered
     * @param steps price of missing a nice wish, in steps
     */
    public record Wish<T>(T value, boolean hard, double steps) {}

    /**
     * Handle wishes; null = no wish.
     *
     * @param form split or full
     * @param foreGrip wanted or not
     * @param trigger wanted or not (casting)
     * @param movingHood which end's hood moves
     * @param keeper hook keeper wanted or not
     * @param action action of the blank
     * @param mixedGrips true where grips of different materials are asked for
     */
    public record Handle(
            @Nullable Wish<HandleForm> form,
            @Nullable Wish<Boolean> foreGrip,
            @Nullable Wish<Boolean> trigger,
            @Nullable Wish<SeatEnd> movingHood,
            @Nullable Wish<Boolean> keeper,
            @Nullable Wish<Action> action,
            boolean mixedGrips) {}

    /**
     * Look wishes.
     *
     * @param theme theme name known to the style table (classic, modern, natural, stealth, bright), or empty
     * @param likedMaterials materials liked where they show
     * @param refusedMaterials materials refused anywhere
     * @param likedColours colours liked
     * @param inscription text to be set on the blank, or empty for none
     */
    public record Look(
            String theme,
            Set<Material> likedMaterials,
            Set<Material> refusedMaterials,
            List<Lab> likedColours,
            String inscription) {
        public Look {
            likedMaterials = Collections.unmodifiableSet(new TreeSet<>(likedMaterials));
            refusedMaterials = Collections.unmodifiableSet(new TreeSet<>(refusedMaterials));
            likedColours = List.copyOf(likedColours);
        }
    }

    /**
     * A part insisted on or refused.
     *
     * @param partId catalogue id
     * @param hard false for "rather"
     * @param steps price of missing it in steps where it is not hard
     */
    public record PartWish(String partId, boolean hard, double steps) {}
}
