/** Small measurements with JMH. May import every package of the optimizer. */
@NullMarked
package withy.benchmarks.micro;

import org.jspecify.annotations.NullMarked;
