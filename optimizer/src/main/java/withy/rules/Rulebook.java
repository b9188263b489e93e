package withy.rules;

import java.util.List;

/**
 * The rules in force, in the order they are told.
 *
 * @param rules the rules
 */
public record Rulebook(List<Rule> rules) {
    public Rulebook {
        rules = List.copyOf(rules);
    }
}
