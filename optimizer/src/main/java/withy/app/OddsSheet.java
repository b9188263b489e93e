package withy.app;

/**
 * How likely the build is the lighter of two, their weights drawn within the tolerances.
 *
 * @param against what the other build is called
 * @param probabilityLighter 0 to 1
 * @param differenceG this build less the other, as expected, g
 * @param spreadG standard deviation of the difference, g
 * @param draws how often weights were drawn
 * @param seed what the draws began with
 */
public record OddsSheet(
        String against, double probabilityLighter, double differenceG, double spreadG, int draws, long seed) {}
