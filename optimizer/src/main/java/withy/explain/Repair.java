package withy.explain;

import java.util.List;
import withy.brief.Brief;

/**
 * A way out of a brief that asks too much, verified by solving.
 *
 * @param changes what gives way, one or two things
 * @param sentence told as on the phone
 * @param size how much is given up, as a share of what was asked; 1 for what is given up as a whole
 * @param build the best build that is then legal, measured for the changed brief
 * @param brief the changed brief
 */
public record Repair(List<Change> changes, String sentence, double size, Found build, Brief brief) {
    public Repair {
        changes = List.copyOf(changes);
    }

    /**
     * One thing that gives way.
     *
     * @param field field of the brief
     * @param about part or material, or empty
     * @param knob which end of the wish is turned, or empty where it is given up as a whole
     * @param from what the brief says; NaN where it is no number
     * @param to what it would have to say; NaN likewise
     * @param shy the nearest value to it with which nothing can be built; NaN likewise
     * @param unit unit of the three
     * @param words as said on the phone
     */
    public record Change(
            String field, String about, String knob, double from, double to, double shy, String unit, String words) {}
}
