package withy.rod;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;

/** Where the guides of one shop's blanks sit, kept in mind: most briefs that are asked about one after another have the same tables. For several threads. */
public final class GuideSpots {
    /** Layouts kept in mind; then all are forgotten. */
    private static final int MOST = 20_000;

    private final Map<Key, GuidePositions> known = new ConcurrentHashMap<>();

    /** All of blank, brief and layout that decides; mm. */
    private record Key(String blank, int footMm, int count, double stripperMm, double firstMinMm, double firstMaxMm) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Key that
                    && footMm == that.footMm
                    && count == that.count
                    && blank.equals(that.blank)
                    && Double.compare(stripperMm, that.stripperMm) == 0
                    && Double.compare(firstMinMm, that.firstMinMm) == 0
                    && Double.compare(firstMaxMm, that.firstMaxMm) == 0;
        }

        @Override
        public int hashCode() {
            return 31 * (31 * (31 * blank.hashCode() + footMm) + count) + Double.hashCode(stripperMm);
        }
    }

    GuidePositions of(Brief brief, BlankShape shape, Layout layout) {
        Key key = new Key(
                layout.blankId(),
                layout.reelFootMm(),
                layout.guideCount(),
                GuidePlan.stripperDistanceMm(brief),
                GuidePlan.firstSpaceMinMm(brief),
                GuidePlan.firstSpaceMaxMm(brief));
        GuidePositions positions = known.get(key);
        if (positions == null) {
            positions = GuidePositions.of(brief, shape, layout);
            if (known.size() >= MOST) {
                known.clear();
            }
            known.put(key, positions);
        }
        return positions;
    }
}
