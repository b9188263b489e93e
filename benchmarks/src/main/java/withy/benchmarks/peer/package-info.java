/**
 * What else could pick the parts: general-purpose solvers and a builder's habit, on the same rules and the same score. May import every package of
 * the optimizer and its tests' oracles; each solver's library stays in the one class named after it.
 */
@NullMarked
package withy.benchmarks.peer;

import org.jspecify.annotations.NullMarked;
