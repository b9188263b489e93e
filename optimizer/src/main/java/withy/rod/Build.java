package withy.rod;

import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * A rod as ids: the layout and the part at each station that is filled. Immutable. The blank is in the layout, not among the choices.
 *
 * @param layout master choice
 * @param choices part by station, in station order
 */
public record Build(Layout layout, SortedMap<Station, Choice> choices) {

    public Build {
        choices = Collections.unmodifiableSortedMap(new TreeMap<>(choices));
    }

    /**
     * One station's choice.
     *
     * @param partId catalogue id
     * @param cutMm length a grip is cut to, mm; 0 = its length follows from its place (full grip) or it is not cut
     */
    public record Choice(String partId, double cutMm) {
        /** A part that is used as it is. */
        public static Choice of(String partId) {
            return new Choice(partId, 0);
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Choice that && partId.equals(that.partId) && Double.compare(cutMm, that.cutMm) == 0;
        }

        @Override
        public int hashCode() {
            return 31 * partId.hashCode() + Double.hashCode(cutMm);
        }
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Build that && layout.equals(that.layout) && choices.equals(that.choices);
    }

    @Override
    public int hashCode() {
        return 31 * layout.hashCode() + choices.hashCode();
    }

    /** Id of the part at a station (the blank included), or null where it is empty. */
    public @Nullable String partAt(Station station) {
        if (station.equals(Station.BLANK)) {
            return layout.blankId();
        }
        Choice choice = choices.get(station);
        return choice == null ? null : choice.partId();
    }

    /** Ids of all its parts, the blank among them. */
    public Set<String> partIds() {
        Set<String> ids = new TreeSet<>(List.of(layout.blankId()));
        choices.values().forEach(choice -> ids.add(choice.partId()));
        return ids;
    }

    /** True where every one of these parts is in it. */
    public boolean holds(Set<String> ids) {
        for (String id : ids) {
            if (!holds(id)) {
                return false;
            }
        }
        return true;
    }

    private boolean holds(String id) {
        if (layout.blankId().equals(id)) {
            return true;
        }
        for (Choice choice : choices.values()) {
            if (choice.partId().equals(id)) {
                return true;
            }
        }
        return false;
    }

    /** The same build with one station filled otherwise. */
    public Build with(Station station, Choice choice) {
        SortedMap<Station, Choice> copy = new TreeMap<>(choices);
        copy.put(station, choice);
        return new Build(layout, copy);
    }

    /** The same build with one station empty. */
    public Build without(Station station) {
        SortedMap<Station, Choice> copy = new TreeMap<>(choices);
        copy.remove(station);
        return new Build(layout, copy);
    }

    /** One line that tells the whole content; equal for equal builds, whatever order they were made in. */
    public String signature() {
        StringBuilder text = new StringBuilder();
        text.append(layout.blankId())
                .append('@')
                .append(layout.reelFootMm())
                .append('/')
                .append(layout.form())
                .append('/')
                .append(layout.guideCount());
        choices.forEach((station, choice) -> text.append(' ')
                .append(station.key())
                .append('=')
                .append(choice.partId())
                .append(choice.cutMm() > 0 ? ":" + Math.round(choice.cutMm() * 100) : ""));
        return text.toString();
    }
}
