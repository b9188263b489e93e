package withy.rod;

import java.util.EnumSet;
import java.util.Set;
import withy.catalog.Part;
import withy.catalog.PartKind;

/** Which parts carry the load of a fish: their weakest durability class is the rod's. */
public final class LoadBearing {
    private static final Set<PartKind> KINDS =
            EnumSet.of(PartKind.BLANK, PartKind.REEL_SEAT, PartKind.HOOD, PartKind.GUIDE, PartKind.TIP_TOP);

    private LoadBearing() {}

    /** True for blank, reel seat, hood, guides and tip-top. */
    public static boolean is(Part part) {
        return KINDS.contains(part.kind());
    }

    /** Weakest class of a rod's load-bearing parts. */
    public static int weakestClass(Rod rod) {
        return rod.placed().values().stream()
                .filter(p -> is(p.part()))
                .mapToInt(p -> p.part().facts().durabilityClass())
                .min()
                .orElse(0);
    }
}
