package withy.search;

import java.util.HashMap;
import java.util.Map;
import withy.objectives.Scoring;

/**
 * The multipliers that a search has learnt: of a blank on which a layout was worked its own, since what is dear on one may be cheap on another, and of
 * all others those learnt last.
 */
final class Learnt {
    private final Scoring scoring;
    private final Map<Site, Known> own = new HashMap<>();
    private Known last;

    Learnt(Scoring scoring) {
        this.scoring = scoring;
        this.last = new Known(Prices.start(scoring), 0);
    }

    /**
     * Multipliers, numbered.
     *
     * @param version no two others have it
     */
    record Known(Prices prices, int version) {}

    /** Those of a blank. */
    Known of(Site site) {
        return own.getOrDefault(site, last);
    }

    /** Other multipliers make other floors; small changes are not worth new ones. */
    void learn(Site site, Prices better) {
        if (better.differs(of(site).prices, scoring)) {
            last = new Known(better, last.version + 1);
            own.put(site, last);
        }
    }
}
