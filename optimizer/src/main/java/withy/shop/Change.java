package withy.shop;

import java.util.List;

/**
 * What a command moved.
 *
 * @param movements the new lines of the ledger
 * @param levels how the parts concerned stand now
 * @param hits jobs that lost what was promised to them
 */
public record Change(List<Movement> movements, List<Level> levels, List<Hit> hits) {
    public Change {
        movements = List.copyOf(movements);
        levels = List.copyOf(levels);
        hits = List.copyOf(hits);
    }

    /**
     * A promise broken by a loss.
     *
     * @param job the job's number
     * @param name its name
     * @param part catalogue id
     * @param pieces promised pieces that are missing now
     */
    public record Hit(long job, String name, String part, int pieces) {}
}
