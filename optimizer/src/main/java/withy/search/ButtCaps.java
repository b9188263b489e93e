package withy.search;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.catalog.ButtCap;
import withy.catalog.Grip;
import withy.rod.Station;

/** Caps that may close the butt end of a stand, whatever grip stands before it. */
final class ButtCaps {
    private final Stand stand;
    private final List<Grip> last;

    ButtCaps(Stand stand) {
        this.stand = stand;
        this.last = lastGrips(stand.split ? stand.shelf.butts : stand.shelf.rears);
    }

    /** All of them, the empty choice first (closed grips need none). */
    List<Option<ButtCap>> all() {
        List<Option<ButtCap>> all = new ArrayList<>();
        if (stand.stations.optional(Station.BUTT_CAP) && stand.ends.withoutCap() && closes(null)) {
            all.add(new Option<>(null, 0, 0, Sums.NONE, 0, 0));
        }
        BitSet on = stand.shelf.capsOn(stand.setting.shape());
        for (int c = on.nextSetBit(0); c >= 0; c = on.nextSetBit(c + 1)) {
            ButtCap cap = stand.ground.caps.get(c);
            if (stand.ends.has(cap) && closes(cap)) {
                all.add(Work.option(
                        stand.ground,
                        stand.setting,
                        Station.BUTT_CAP,
                        cap,
                        -cap.addedMm(),
                        cap.addedMm(),
                        stand.fitter.cap(cap)));
            }
        }
        return all;
    }

    /** A grip with a closed end and one with an open end, of those that may stand at the butt. */
    private static List<Grip> lastGrips(Cut[] cuts) {
        List<Grip> last = new ArrayList<>();
        for (Cut cut : cuts) {
            if (last.isEmpty()
                    || last.size() == 1
                            && last.get(0).rearClosed() != cut.grip().rearClosed()) {
                last.add(cut.grip());
            }
        }
        return last;
    }

    private boolean closes(@Nullable ButtCap cap) {
        for (Grip grip : last) {
            stand.ground.rules.onButtEnd(stand.setting, cap, grip, stand.refusal.reset());
            if (!stand.refusal.refused()) {
                return true;
            }
        }
        return false;
    }
}
