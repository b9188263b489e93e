package withy.web;

import java.util.List;

/**
 * A question back.
 *
 * @param frame around it
 * @param key names the words of yes and no
 * @param question what is odd
 * @param action where yes goes
 * @param back where no leads
 * @param kept what was typed
 */
public record SureView(Frame frame, String key, String question, String action, String back, List<Kept> kept) {
    public SureView {
        kept = List.copyOf(kept);
    }

    /** A field of the form that is sent again. */
    public record Kept(String name, String value) {}
}
