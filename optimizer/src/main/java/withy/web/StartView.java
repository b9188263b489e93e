package withy.web;

import java.util.List;

/**
 * Where a talk begins.
 *
 * @param frame around it
 * @param starts waters and fish to begin with
 * @param talks latest talks, newest first
 * @param jobs open jobs
 * @param fault what is wrong with what was pasted, line by line; empty for nothing
 * @param pasted what was pasted
 */
public record StartView(
        Frame frame, List<Start> starts, List<Talk> talks, int jobs, List<String> fault, String pasted) {
    public StartView {
        starts = List.copyOf(starts);
        talks = List.copyOf(talks);
        fault = List.copyOf(fault);
    }

    /** A beginning. */
    public record Start(String key, String title, String words) {}

    /** A talk to go on with. */
    public record Talk(String step, String name, String said) {}
}
