/** The planning engine's plain slot model: every station a variable, the layout another. May import peer's Question and the engine. */
@NullMarked
package withy.benchmarks.peer.engine;

import org.jspecify.annotations.NullMarked;
