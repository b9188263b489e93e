package withy.rod;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A place on the rod that takes one part. Ordered from butt to tip, then what has no place of its own.
 *
 * @param place which
 * @param number 1 … n for guides (guide-1 is the stripper), 0 otherwise
 */
public record Station(Place place, int number) implements Comparable<Station> {
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Station that && place == that.place && number == that.number;
    }

    @Override
    public int hashCode() {
        return 31 * place.ordinal() + number;
    }

    /** The places, from butt to tip. */
    public enum Place {
        BUTT_CAP("buttCap"),
        BUTT_GRIP("buttGrip"),
        REAR_GRIP("rearGrip"),
        REAR_CHECK("rearCheck"),
        SEAT("seat"),
        HOOD("hood"),
        SEAT_ARBORS("seatArbors"),
        FORE_CHECK("foreCheck"),
        FORE_GRIP("foreGrip"),
        WINDING_CHECK("windingCheck"),
        KEEPER("keeper"),
        GUIDE("guide"),
        TIP_TOP("tipTop"),
        THREAD("thread"),
        FINISH("finish"),
        ADHESIVE("adhesive"),
        DECAL("decal"),
        BLANK("blank");

        private final String key;

        Place(String key) {
            this.key = key;
        }
    }

    public static final Station BUTT_CAP = new Station(Place.BUTT_CAP, 0);
    public static final Station BUTT_GRIP = new Station(Place.BUTT_GRIP, 0);
    public static final Station REAR_GRIP = new Station(Place.REAR_GRIP, 0);
    public static final Station REAR_CHECK = new Station(Place.REAR_CHECK, 0);
    public static final Station SEAT = new Station(Place.SEAT, 0);
    public static final Station HOOD = new Station(Place.HOOD, 0);
    public static final Station SEAT_ARBORS = new Station(Place.SEAT_ARBORS, 0);
    public static final Station FORE_CHECK = new Station(Place.FORE_CHECK, 0);
    public static final Station FORE_GRIP = new Station(Place.FORE_GRIP, 0);
    public static final Station WINDING_CHECK = new Station(Place.WINDING_CHECK, 0);
    public static final Station KEEPER = new Station(Place.KEEPER, 0);
    public static final Station TIP_TOP = new Station(Place.TIP_TOP, 0);
    public static final Station THREAD = new Station(Place.THREAD, 0);
    public static final Station FINISH = new Station(Place.FINISH, 0);
    public static final Station ADHESIVE = new Station(Place.ADHESIVE, 0);
    public static final Station DECAL = new Station(Place.DECAL, 0);
    public static final Station BLANK = new Station(Place.BLANK, 0);

    /** Most guides a rod may carry. */
    public static final int MOST_GUIDES = 20;

    private static final List<Station> GUIDES = guides();

    public Station {
        if (place == Place.GUIDE ? number < 1 || number > MOST_GUIDES : number != 0) {
            throw new IllegalArgumentException("no such station: " + place + " " + number);
        }
    }

    /** The guide station of this number, 1 = stripper. */
    public static Station guide(int number) {
        return GUIDES.get(number - 1);
    }

    /** Name used in files and answers: {@code seat}, {@code guide-3}. */
    public String key() {
        return place == Place.GUIDE ? place.key + "-" + number : place.key;
    }

    /** The station of this name, or null. */
    public static @Nullable Station parse(String key) {
        for (Place place : Place.values()) {
            if (place != Place.GUIDE && place.key.equals(key)) {
                return new Station(place, 0);
            }
        }
        for (Station guide : GUIDES) {
            if (guide.key().equals(key)) {
                return guide;
            }
        }
        return null;
    }

    @Override
    public int compareTo(Station other) {
        int byPlace = place.compareTo(other.place);
        return byPlace != 0 ? byPlace : Integer.compare(number, other.number);
    }

    @Override
    public String toString() {
        return key();
    }

    private static List<Station> guides() {
        List<Station> list = new ArrayList<>();
        for (int n = 1; n <= MOST_GUIDES; n++) {
            list.add(new Station(Place.GUIDE, n));
        }
        return List.copyOf(list);
    }
}
