package withy.web;

import java.util.List;

/**
 * A request that was refused.
 *
 * @param frame around it
 * @param lines what is wrong, then what helps
 */
public record RefusalView(Frame frame, List<String> lines) {
    public RefusalView {
        lines = List.copyOf(lines);
    }
}
