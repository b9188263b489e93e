package withy.search;

import java.util.ArrayDeque;
import java.util.List;

/** The stands laid out last, held so that they need not be laid out anew; the rest are let go with the first collection. Of very many parts few are held. */
final class LastStands {
    /** Memory there is for each part open to a stand that is held, bytes; as much is seldom needed. */
    private static final long BYTES_PER_PART = 1_500;

    private final long most;
    private final ArrayDeque<List<Stand>> held = new ArrayDeque<>();

    /**
     * @param parts parts of the catalogue
     * @param memory what there is for everything, bytes
     */
    LastStands(int parts, long memory) {
        this.most = memory / (BYTES_PER_PART * Math.max(1, parts));
    }

    /** Holds those of one layout. */
    void hold(List<Stand> stands) {
        held.addLast(stands);
        if (held.size() > most) {
            held.removeFirst();
        }
    }

    /** How many layouts are held. */
    int size() {
        return held.size();
    }
}
