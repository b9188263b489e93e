package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import withy.explain.Drawer;
import withy.explain.Drawer.Line;
import withy.explain.Found;
import withy.explain.Inquiry;
import withy.rod.Station;

/**
 * What else may be the blank, the best first. One question a blank has to be asked to put all in order; the best of all but those that were told needs one
 * question only, so that the first few stand where they will stay long before the others are looked through.
 */
final class BlanksInTurn {
    /** Blanks told in turn; asking for each further one takes longer than looking all others through. ASSUMED. */
    private static final int MOST = 4;

    private BlanksInTurn() {}

    /**
     * Finds the first few.
     *
     * @param build whose blank it is about
     * @param soFar told of the drawer as far as it is known, each time one is found: what the brief alone refuses is in it, and no line comes to stand
     *     above one that was told
     */
    static void find(Inquiry inquiry, Found build, Consumer<Drawer> soFar) {
        Set<String> told = new TreeSet<>(Set.of(build.build().layout().blankId()));
        for (int i = 0; i < MOST; i++) {
            Found next = inquiry.best(inquiry.query().refusing(told));
            if (next == null || !next.proven() || inquiry.stopped()) {
                return;
            }
            told.add(next.build().layout().blankId());
            Drawer drawer = Drawer.of(inquiry, build, Station.BLANK, told);
            soFar.accept(new Drawer(
                    drawer.station(),
                    build,
                    settled(drawer.lines(), next.build().layout().blankId())));
        }
    }

    /** The blank that is in the build has no place yet where nothing worse is known. */
    private static List<Line> settled(List<Line> lines, String last) {
        List<Line> settled = new ArrayList<>();
        boolean open = false;
        for (Line line : lines) {
            if (line.breach() != null || !open) {
                settled.add(line);
            }
            open |= line.part().equals(last);
        }
        return settled;
    }
}
