package withy.brief;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withy.brief.Brief.Reel;
import withy.catalog.RodType;

/** The usual reels of a rod type, one a size class: what "any reel" means. */
public final class UsualReels {
    private static final int[] SPINNING = {1000, 2500, 4000, 6000, 10_000, 14_000};
    private static final int[] CASTING = {150, 300};

    private UsualReels() {}

    /** Smallest first. */
    public static List<Reel> of(RodType type) {
        IntStream sizes = IntStream.of(type.spinningReel() ? SPINNING : CASTING);
        Stream<Reel> reels = sizes.mapToObj(size -> ReelTable.of(type, size).reel(size));
        return reels.toList();
    }
}
