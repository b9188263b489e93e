package withyfixture.mechanics;

import withyfixture.brief.Wish;

/** Wrong on purpose: formulas know no wishes, and the name says nothing. */
public final class BeamManager {
    public double lengthMm(Wish wish) {
        return wish.hashCode();
    }
}
