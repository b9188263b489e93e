package withy.web;

import java.util.List;

/**
 * A request that was refused.
 *
 * @param frame around it
 * @param lines what is wrong, then what helps
 * @param from address of the page it was asked from, or empty
 */
public record RefusalView(Frame frame, List<String> lines, String from) {
    public RefusalView {
        lines = List.copyOf(lines);
    }
}
