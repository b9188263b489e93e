package withy.web;

import java.util.List;

/**
 * A question back.
 *
 * @param frame around it
 * @param question what is odd
 * @param action where yes goes
 * @param back where no leads
 * @param kept what was typed
 */
public record SureView(Frame frame, String question, String action, String back, List<Kept> kept) {
    public SureView {
        kept = List.copyOf(kept);
    }

    /** A field of the form that is sent again. */
    public record Kept(String name, String value) {}
}
