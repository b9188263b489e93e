package withy.brief;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Handle;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Look;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.brief.BriefFault.Notation;
import withy.catalog.Action;
import withy.catalog.Lab;
import withy.catalog.Material;
import withy.catalog.RodType;
import withy.catalog.SeatEnd;

/**
 * Reads the wishes for handle, look and parts. A wish is a plain value, or an object of {@code value}, {@code need} and {@code steps}. Plain
 * wishes are hard where they bound the handle, nice where they are taste (hook keeper, action).
 */
final class WishReader {
    /** What missing a nice wish costs where the brief gives no price, steps [ASSUMED]. */
    static final double USUAL_STEPS = 2;

    private static final int MOST_PARTS = 200;
    private static final String ID_FORM = "a catalogue id: lower case, digits and hyphens";

    private final Fields root;
    private final Notes notes;

    WishReader(Fields root) {
        this.root = root;
        this.notes = root.notes();
    }

    /** Whether a wish must be met. */
    enum Need {
        HARD,
        NICE
    }

    /** Themes known to the style table. */
    enum Theme {
        CLASSIC,
        MODERN,
        NATURAL,
        STEALTH,
        BRIGHT
    }

    /** What a builder calls the keys of a handle. */
    private static final Map<String, String> WORDS = Map.of(
            "form",
            "handle form",
            "foreGrip",
            "fore grip",
            "trigger",
            "trigger",
            "movingHood",
            "moving hood",
            "keeper",
            "hook keeper",
            "action",
            "action");

    Handle handle(RodType type) {
        Fields fields = root.object("handle");
        Wish<HandleForm> form = wish(fields, "form", true, (f, key) -> f.choice(key, HandleForm.class));
        Wish<Boolean> foreGrip = wish(fields, "foreGrip", true, Fields::flag);
        Wish<Boolean> trigger = wish(fields, "trigger", true, Fields::flag);
        Wish<SeatEnd> movingHood = wish(fields, "movingHood", true, (f, key) -> f.choice(key, SeatEnd.class));
        Wish<Boolean> keeper = wish(fields, "keeper", false, Fields::flag);
        Wish<Action> action = wish(fields, "action", false, (f, key) -> f.choice(key, Action.class));
        Boolean mixed = fields.flag("mixedGrips");
        if (trigger != null && trigger.value() && type.spinningReel()) {
            fields.fault("trigger", "true on casting rods only", "Maybe the rod type casting was meant.");
        }
        fields.finish();
        List<String> open = new ArrayList<>();
        open(open, fields, "form", word("form"));
        open(open, fields, "foreGrip", word("foreGrip"));
        if (!type.spinningReel()) {
            open(open, fields, "trigger", word("trigger"));
        }
        open(open, fields, "movingHood", word("movingHood"));
        open(open, fields, "keeper", word("keeper"));
        open(open, fields, "action", word("action"));
        if (!open.isEmpty()) {
            notes.taken(Default.HANDLE, String.join(", ", open));
        }
        return new Handle(form, foreGrip, trigger, movingHood, keeper, action, mixed != null && mixed);
    }

    private static void open(List<String> open, Fields fields, String key, String word) {
        if (!fields.has(key)) {
            open.add(word);
        }
    }

    private <T> @Nullable Wish<T> wish(
            Fields fields, String key, boolean hardWhenPlain, BiFunction<Fields, String, @Nullable T> reader) {
        JsonNode told = fields.take(key);
        // An empty object is read where there is none, so that its keys are known.
        Fields full = told.isObject() ? fields.object(key) : fields.none(key);
        T value = reader.apply(full, "value");
        Need need = full.choice("need", Need.class);
        Double steps = full.number("steps", Bounds.WISH_STEPS, "steps");
        if (told.isObject() && !full.has("value")) {
            full.fault("value", "the wish itself", "Maybe value was left out.");
        }
        full.finish();
        if (told.isNull()) {
            return null;
        }
        if (!told.isObject()) {
            value = reader.apply(fields, key);
            need = hardWhenPlain ? Need.HARD : Need.NICE;
            if (value != null && !hardWhenPlain) {
                notes.taken(Default.NICE, word(key), USUAL_STEPS);
            }
        } else if (need == null) {
            need = hardWhenPlain && steps == null ? Need.HARD : Need.NICE;
        }
        if (value == null) {
            return null;
        }
        return new Wish<>(value, need == Need.HARD, steps(need, steps, full, word(key), told.isObject()));
    }

    private static String word(String key) {
        return WORDS.getOrDefault(key, key);
    }

    private double steps(Need need, @Nullable Double steps, Fields full, String wish, boolean inFull) {
        if (need == Need.HARD) {
            if (steps != null) {
                full.fault("steps", "left out of a hard wish", "Maybe \"need\": \"nice\" was meant.", Notation.HINT);
            }
            return 0;
        }
        if (steps == null) {
            if (inFull) {
                notes.taken(Default.NICE_STEPS, wish, USUAL_STEPS);
            }
            return USUAL_STEPS;
        }
        return steps;
    }

    Look look() {
        Fields fields = root.object("look");
        Theme theme = fields.isNull("theme") ? null : fields.choice("theme", Theme.class);
        List<Material> liked = fields.choices("likedMaterials", Material.class);
        List<Material> refused = fields.choices("refusedMaterials", Material.class);
        List<Lab> colours = fields.list("likedColours", 12, (value, where) -> colour(value, where));
        String inscription = fields.text("inscription", 80);
        List<String> open = new ArrayList<>();
        open(open, fields, "theme", "theme");
        open(open, fields, "likedMaterials", "liked materials");
        open(open, fields, "refusedMaterials", "refused materials");
        open(open, fields, "likedColours", "colours");
        open(open, fields, "inscription", "inscription");
        fields.finish();
        for (Material material : new TreeSet<>(liked)) {
            if (refused.contains(material)) {
                fields.fault(
                        "likedMaterials",
                        "materials that are not refused as well",
                        "Maybe drop " + material.word() + " from one of the two.");
            }
        }
        if (!open.isEmpty()) {
            notes.taken(Default.LOOK, String.join(", ", open));
        }
        return new Look(
                theme == null ? "" : Words.of(theme),
                new TreeSet<>(liked),
                new TreeSet<>(refused),
                colours,
                inscription == null ? "" : inscription);
    }

    private @Nullable Lab colour(JsonNode value, String where) {
        if (value.isTextual()) {
            Lab lab = ScreenColour.lab(value.textValue());
            if (lab != null) {
                return lab;
            }
        } else if (value.isArray()
                && value.size() == 3
                && value.get(0).isNumber()
                && value.get(1).isNumber()
                && value.get(2).isNumber()) {
            double l = value.get(0).doubleValue();
            double a = value.get(1).doubleValue();
            double b = value.get(2).doubleValue();
            if (l >= 0 && l <= 100 && Math.abs(a) <= 160 && Math.abs(b) <= 160) {
                return new Lab(l, a, b);
            }
        }
        notes.fault(
                where,
                Values.shown(value),
                "a screen colour \"#rrggbb\" or CIE L*a*b* as [L, a, b], L 0 to 100, a and b −160 to 160",
                "Maybe \"#2f4f2f\" for a dark green.");
        return null;
    }

    /** Parts insisted on or refused: ids, or objects of part, need and steps. */
    List<PartWish> parts(String key) {
        return root.list(key, MOST_PARTS, (value, where) -> part(value, where));
    }

    private @Nullable PartWish part(JsonNode value, String where) {
        if (!value.isObject()) {
            String id = id(value, where);
            return id == null ? null : new PartWish(id, true, 0);
        }
        Fields fields = new Fields(value, where, notes);
        String id = id(fields.take("part"), fields.at("part"));
        Need need = fields.choice("need", Need.class);
        Double steps = fields.number("steps", Bounds.WISH_STEPS, "steps");
        fields.finish();
        Need taken = need != null ? need : steps == null ? Need.HARD : Need.NICE;
        double price = steps(taken, steps, fields, where, true);
        return id == null ? null : new PartWish(id, taken == Need.HARD, price);
    }

    TreeSet<String> owned() {
        return new TreeSet<>(root.list("owned", MOST_PARTS, this::id));
    }

    private @Nullable String id(JsonNode value, String where) {
        if (value.isTextual() && isId(value.textValue())) {
            return value.textValue();
        }
        notes.fault(where, Values.shown(value), ID_FORM, "Maybe copy the id from the catalogue's first column.");
        return null;
    }

    /** Lower case, digits and hyphens, at most 80. */
    static boolean isId(String text) {
        return text.matches("[a-z0-9][a-z0-9-]{0,79}");
    }
}
