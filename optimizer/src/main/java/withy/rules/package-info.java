/**
 * The hard rules, one class each, and the verdicts they give. The same rule object serves the filter, the exact completion, the engine, the
 * explanation and the final judge. May import everything above: {@code units catalog brief mechanics rod machine}. No engine here.
 */
@NullMarked
package withy.rules;

import org.jspecify.annotations.NullMarked;
