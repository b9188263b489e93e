package withy.app;

import java.util.EnumSet;
import java.util.Set;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.rod.Station;
import withy.rod.Station.Place;

/** What stations are called and which parts they take. */
final class Stations {
    private static final Set<Place> NEEDED = EnumSet.of(
            Place.BLANK,
            Place.SEAT,
            Place.REAR_GRIP,
            Place.GUIDE,
            Place.TIP_TOP,
            Place.THREAD,
            Place.FINISH,
            Place.ADHESIVE);

    private Stations() {}

    /** Name of a place in answers; guides of all numbers together are {@code guide}. */
    static String key(Place place) {
        return place == Place.GUIDE ? "guide" : new Station(place, 0).key();
    }

    /** True where no rod can be built with the place empty. */
    static boolean needed(Place place) {
        return NEEDED.contains(place);
    }

    /** True where a part's kind belongs at a place. */
    static boolean takes(Place place, PartKind kind) {
        return switch (place) {
            case BUTT_CAP -> kind == PartKind.BUTT_CAP;
            case BUTT_GRIP, REAR_GRIP, FORE_GRIP -> kind == PartKind.GRIP;
            case REAR_CHECK, FORE_CHECK, WINDING_CHECK -> kind == PartKind.CHECK;
            case SEAT -> kind == PartKind.REEL_SEAT;
            case HOOD -> kind == PartKind.HOOD;
            case SEAT_ARBORS -> kind == PartKind.ARBOR;
            case KEEPER -> kind == PartKind.KEEPER;
            case GUIDE -> kind == PartKind.GUIDE;
            case TIP_TOP -> kind == PartKind.TIP_TOP;
            case THREAD -> kind == PartKind.THREAD;
            case FINISH -> kind == PartKind.FINISH;
            case ADHESIVE -> kind == PartKind.ADHESIVE;
            case DECAL -> kind == PartKind.DECAL;
            case BLANK -> kind == PartKind.BLANK;
        };
    }

    /** True where a part is sold for a place: its kind, and for grips the end of the handle. */
    static boolean soldFor(Place place, Part part) {
        if (!takes(place, part.kind()) || !(part instanceof Grip grip)) {
            return takes(place, part.kind());
        }
        return switch (place) {
            case BUTT_GRIP -> grip.place() == Grip.Place.BUTT;
            case FORE_GRIP -> grip.place() == Grip.Place.FORE;
            default -> grip.place() == Grip.Place.REAR || grip.place() == Grip.Place.FULL;
        };
    }
}
