/**
 * Any bytes for every reader. Each wrong input must end in a fault that names what is wrong and starts its last line with "Maybe "; no crash, no hang,
 * no memory without end. The build replays the kept inputs; with {@code JAZZER_FUZZ=1} one test at a time looks for new ones.
 */
package withy.fuzz;
