package withy.search.planning;

import java.util.List;
import withy.rod.Build.Choice;
import withy.rod.Station;

/**
 * A station with what may fill it.
 *
 * @param station which
 * @param choices parts (grips at each cut) that may stand there, in content order
 * @param given true where the question settles the station: by its one choice, or empty where there is none
 */
public record Slot(Station station, List<Choice> choices, boolean given) {

    public Slot {
        choices = List.copyOf(choices);
        if (given && choices.size() > 1) {
            throw new IllegalArgumentException("station " + station + " is given, but has " + choices.size()
                    + " choices; at most one is allowed.\nMaybe it is not given.");
        }
    }
}
