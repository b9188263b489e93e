package withy.web;

import java.util.List;

/**
 * A request that was refused.
 *
 * @param frame around it
 * @param lines what is wrong, then what helps
 * @param from address of the page it was asked from, or empty
 * @param sent true where a form was refused
 * @param way address where it goes on, or empty
 * @param wayWords what it is called
 */
public record RefusalView(Frame frame, List<String> lines, String from, boolean sent, String way, String wayWords) {
    public RefusalView {
        lines = List.copyOf(lines);
    }
}
