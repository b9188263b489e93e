package withy.rod;

import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Keeper;
import withy.catalog.Material;
import withy.catalog.Operation;
import withy.catalog.Part;
import withy.catalog.PartKind;

/** Which operations a part brings, and which every rod needs. */
public final class Labour {
    /** Durability class from which every guide foot gets an underwrap (handbook, rule 4). */
    public static final int UNDERWRAP_CLASS = 5;

    /** Takes operations as they come. */
    public interface Tally {
        void add(Operation operation, int times);
    }

    private Labour() {}

    /** Work that no single part brings; {@code joints} ferrules. */
    public static void ofEveryRod(int joints, Tally tally) {
        tally.add(Operation.INTAKE_AND_PLAN, 1);
        tally.add(Operation.FIND_AXIS_AND_MARK, 1);
        tally.add(Operation.GLUE_HANDLE, 1);
        tally.add(Operation.LAYOUT_AND_TEST, 1);
        tally.add(Operation.WRAP_FERRULE, joints);
        tally.add(Operation.COAT_ONE, 1);
        tally.add(Operation.COAT_TWO, 1);
        tally.add(Operation.CLEAN_AND_WEIGH, 1);
    }

    /** Work one part brings at a durability class. */
    public static void ofPart(Part part, int durabilityClass, Tally tally) {
        PartKind kind = part.kind();
        switch (kind) {
            case GRIP -> tally.add(gripWork((Grip) part), 1);
            case REEL_SEAT -> tally.add(Operation.FIT_ARBORS, 1);
            case BUTT_CAP -> tally.add(Operation.FIT_CAP, 1);
            case CHECK -> tally.add(Operation.FIT_CHECK, 1);
            case TIP_TOP -> tally.add(Operation.FIT_TIP_TOP, 1);
            case KEEPER -> tally.add(Operation.WRAP_KEEPER, ((Keeper) part).feet() > 0 ? 1 : 0);
            case DECAL -> tally.add(Operation.APPLY_DECAL, 1);
            case GUIDE -> ofGuide((Guide) part, durabilityClass, tally);
            case BLANK, HOOD, ARBOR, THREAD, FINISH, ADHESIVE -> {
                // their work is in the seat's arbors, the wraps and the coats
            }
        }
    }

    private static Operation gripWork(Grip grip) {
        Material material = grip.facts().material();
        return switch (material) {
            case EVA, FOAM, RUBBER -> Operation.FIT_EVA_GRIP;
            case CARBON, PLASTIC, COMPOSITE, CARBON_FILLED -> Operation.FIT_CARBON_GRIP;
            default -> Operation.FIT_CORK_GRIP;
        };
    }

    private static void ofGuide(Guide guide, int durabilityClass, Tally tally) {
        tally.add(Operation.GRIND_FOOT, guide.feet());
        tally.add(guide.feet() == 1 ? Operation.WRAP_SINGLE_FOOT : Operation.WRAP_DOUBLE_FOOT, 1);
        if (durabilityClass >= UNDERWRAP_CLASS) {
            tally.add(Operation.UNDERWRAP, guide.feet());
        }
    }
}
