package withy.objectives;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Lab;
import withy.catalog.Part;
import withy.mechanics.ColourDifference;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Station;

/**
 * Style points of a build, 0 to 100, in hundredths. A sum over what is seen, so that the search can add it up station by station:
 *
 * <pre>
 *   part suits the theme and what is liked (82):  blank 14, seat 14, rear grip 16 (full: 24), butt grip 8, cap 3, rear check 2,
 *                                                 winding check 3, all guides 12, tip-top 2, thread 8
 *   colours of neighbours go together (18):       blank–seat 4, blank–thread 6, rear grip–seat 8
 * </pre>
 *
 * Whether a part suits = 0.4 material + 0.2 surface + 0.4 colour. Colours go together when they are near (CIEDE2000 at most 4) or frankly
 * different (45 and more); in between they quarrel. The weights are ours, ASSUMED; the colour difference is the published one.
 */
public final class Style {
    private static final int BLANK = 1400;
    private static final int SEAT = 1400;
    private static final int REAR_GRIP = 1600;
    private static final int BUTT_GRIP = 800;
    private static final int CAP = 300;
    private static final int REAR_CHECK = 200;
    private static final int WINDING_CHECK = 300;
    private static final int GUIDES = 1200;
    private static final int TIP_TOP = 200;
    private static final int THREAD = 800;
    private static final int BLANK_SEAT = 400;
    private static final int BLANK_THREAD = 600;
    private static final int GRIP_SEAT = 800;

    private static final double MATERIAL_SHARE = 0.4;
    private static final double GLOSS_SHARE = 0.2;
    private static final double COLOUR_SHARE = 0.4;

    /** Where nothing is wished or a part shows no colour. */
    private static final double NEUTRAL = 0.5;

    private final Brief brief;
    private final Theme theme;
    private final List<Lab> liked;
    /** Of each part of the catalogue, as one and the same object. */
    private final Map<Part, Double> suits = new IdentityHashMap<>();

    private final Map<Lab, Map<Lab, Double>> harmony = new ConcurrentHashMap<>();

    /** For a brief; everything that depends on single parts is worked out here once. */
    public Style(Catalog catalog, Brief brief) {
        this.brief = brief;
        this.theme = Theme.of(brief.look().theme());
        this.liked = Stream.concat(brief.look().likedColours().stream(), theme.palette().stream())
                .toList();
        for (Part part : catalog.byId().values()) {
            suits.put(part, suitsNow(part));
        }
    }

    /** Points of a whole rod. */
    public long of(Rod rod) {
        long sum = 0;
        for (Placed placed : rod.placed().values()) {
            sum += part(
                    rod.setting().blank(),
                    rod.setting().layout().form(),
                    placed.station(),
                    placed.part(),
                    rod.setting().guideCount());
        }
        sum += part(
                rod.setting().blank(),
                rod.setting().layout().form(),
                Station.THREAD,
                rod.with().thread(),
                1);
        Part seat = rod.partAt(Station.SEAT);
        Part rear = rod.partAt(Station.REAR_GRIP);
        return seat != null && rear != null ? sum + gripAndSeat(rear, seat) : sum;
    }

    /** Points of one part at its station on a blank: what it is itself, and how it stands to the blank. */
    public long part(Blank blank, HandleForm form, Station station, Part part, int guideCount) {
        return switch (station.place()) {
            case BLANK -> Math.round(BLANK * suit(part));
            case SEAT -> Math.round(SEAT * suit(part)) + Math.round(BLANK_SEAT * together(blank, part));
            case REAR_GRIP -> Math.round((REAR_GRIP + (form == HandleForm.FULL ? BUTT_GRIP : 0)) * suit(part));
            case BUTT_GRIP -> Math.round(BUTT_GRIP * suit(part));
            case BUTT_CAP -> Math.round(CAP * suit(part));
            case REAR_CHECK -> Math.round(REAR_CHECK * suit(part));
            case WINDING_CHECK -> Math.round(WINDING_CHECK * suit(part));
            case GUIDE -> (long) Math.floor((double) GUIDES / guideCount * suit(part));
            case TIP_TOP -> Math.round(TIP_TOP * suit(part));
            case THREAD -> Math.round(THREAD * suit(part)) + Math.round(BLANK_THREAD * together(blank, part));
            case HOOD, SEAT_ARBORS, FORE_CHECK, FORE_GRIP, KEEPER, FINISH, ADHESIVE, DECAL -> 0;
        };
    }

    /** Most that a seat can be worth at its station, whatever the blank. */
    public long mostOfSeat(Part seat) {
        return Math.round(SEAT * suit(seat)) + BLANK_SEAT;
    }

    /** What of a part decides how it stands to others, by {@code equals}: its colour. */
    public Object standing(Part part) {
        Lab colour = part.facts().colour();
        return colour == null ? "" : colour;
    }

    /** Points of rear grip and seat side by side. */
    public long gripAndSeat(Part grip, Part seat) {
        return Math.round(GRIP_SEAT * together(grip, seat));
    }

    /** Most that rear grip and seat can be worth together. */
    public static long mostGripAndSeat() {
        return GRIP_SEAT;
    }

    private double suit(Part part) {
        Double value = suits.get(part);
        return value == null ? suitsNow(part) : value;
    }

    private double suitsNow(Part part) {
        boolean wished = theme != Theme.NONE || !brief.look().likedMaterials().isEmpty();
        boolean likes = theme.likes(part.facts().material())
                || brief.look().likedMaterials().contains(part.facts().material());
        double material = wished ? (likes ? 1 : 0) : NEUTRAL;
        double gloss = theme == Theme.NONE || part.facts().gloss() == null
                ? NEUTRAL
                : part.facts().gloss() == theme.gloss() ? 1 : 0;
        return MATERIAL_SHARE * material
                + GLOSS_SHARE * gloss
                + COLOUR_SHARE * nearest(part.facts().colour());
    }

    private double nearest(@Nullable Lab colour) {
        if (colour == null || liked.isEmpty()) {
            return NEUTRAL;
        }
        double best = 0;
        for (Lab wished : liked) {
            double difference = difference(colour, wished);
            best = Math.max(best, Math.max(0, 1 - difference / FAR));
        }
        return best;
    }

    /** Colour difference at which a colour no longer recalls the wished one. ASSUMED. */
    private static final double FAR = 40;

    private double together(Part one, Part other) {
        Lab a = one.facts().colour();
        Lab b = other.facts().colour();
        if (a == null || b == null) {
            return NEUTRAL;
        }
        return harmony.computeIfAbsent(a, key -> new ConcurrentHashMap<>())
                .computeIfAbsent(b, key -> harmonyOf(difference(a, b)));
    }

    /** 1 up to 4, falling to 0.3 at 15, rising to 0.8 at 45. */
    static double harmonyOf(double difference) {
        if (difference <= 4) {
            return 1;
        }
        if (difference <= 15) {
            return 1 - 0.7 * (difference - 4) / 11;
        }
        return difference <= 45 ? 0.3 + 0.5 * (difference - 15) / 30 : 0.8;
    }

    private static double difference(Lab a, Lab b) {
        return ColourDifference.between(a.l(), a.a(), a.b(), b.l(), b.a(), b.b());
    }
}
