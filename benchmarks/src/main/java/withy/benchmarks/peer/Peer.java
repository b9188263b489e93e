package withy.benchmarks.peer;

/** A way to pick the parts. */
public interface Peer {
    /** Cores every peer may use, as the product does. */
    int CORES = 2;

    /** Seed of every random choice; a second run in parallel takes the next. */
    long SEED = 20_261_125L;

    /** As the tables name it. */
    String name();

    /** Version and settings, one line. */
    String setUp();

    /** True where it can prove that nothing is better. */
    boolean proves();

    /** Works until the race is over, or it knows no better. */
    void run(Question question, Race race) throws Exception;
}
