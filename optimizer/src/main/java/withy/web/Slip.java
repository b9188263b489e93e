package withy.web;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.shop.ShopFault;
import withy.units.UnitsFault;

/**
 * A slip in a form: its page is shown again with all that was typed, and says at the field what is wrong and what would be right.
 *
 * @param field name of the field at fault, or empty where there is none
 * @param words what is wrong with it, then what would be right
 * @param typed everything that was typed, by field
 */
public record Slip(String field, String words, Map<String, List<String>> typed) {
    /** A page that was just asked for. */
    static final Slip NONE = new Slip("", "", Map.of());

    /** What stands in an address or a message for a command line, which a page doesn't have. */
    private static final String COMMAND = "withy ";

    public Slip {
        typed = Map.copyOf(typed);
    }

    /** What was found while a form was read; nothing was booked. */
    static final class Fault extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final String field;

        Fault(String field, String words) {
            super(words, null, false, false);
            this.field = field;
        }
    }

    /** The form as it was sent, with its fault. */
    static Slip of(Context ctx, Fault fault) {
        return new Slip(fault.field, String.valueOf(fault.getMessage()), plain(ctx.formParamMap()));
    }

    /** A page that is come back to: what was ticked and typed stands in its address. */
    static Slip back(Context ctx) {
        return new Slip("", "", plain(ctx.queryParamMap()));
    }

    /** An address with what was ticked and typed, so that a question in between loses nothing. */
    static String address(Context ctx, String path, List<String> fields) {
        return new Slip("", "", plain(ctx.formParamMap())).at(path, fields);
    }

    /** An address with what was typed into some fields. */
    public String at(String path, List<String> fields) {
        String told = fields.stream()
                .flatMap(field -> typed.getOrDefault(field, List.of()).stream()
                        .filter(value -> !value.isBlank())
                        .map(value -> field + "=" + URLEncoder.encode(value, StandardCharsets.UTF_8)))
                .collect(Collectors.joining("&"));
        return told.isEmpty() ? path : path + "?" + told;
    }

    private static Map<String, List<String>> plain(Map<String, List<String>> form) {
        Map<String, List<String>> typed = new HashMap<>();
        form.forEach(
                (name, told) -> typed.put(name, told.stream().map(Pages::plain).toList()));
        return typed;
    }

    /** What was typed into a field, else what stands there usually. */
    public String value(String name, @Nullable String usual) {
        List<String> told = typed.get(name);
        return told == null || told.isEmpty() ? usual == null ? "" : usual : told.get(0);
    }

    /** True where a box was ticked. */
    public boolean ticks(String name, String value) {
        return typed.getOrDefault(name, List.of()).contains(value);
    }

    /** What is wrong with a field, or empty. */
    public String fault(String name) {
        return field.equals(name) ? words : "";
    }

    /** The id of what tells the fault of a field, or null where there is none. */
    public @Nullable String told(String name) {
        return field.equals(name) ? name + "-fault" : null;
    }

    /** Says of a field that it is at fault, or nothing. */
    public @Nullable String invalid(String name) {
        return field.equals(name) ? "true" : null;
    }

    /**
     * Reads a field.
     *
     * @param right what would be right, to be told where nothing was typed
     * @throws Fault where it can't be read
     */
    static <T> T read(Context ctx, String field, String right, Function<String, T> how) {
        String told = Pages.told(ctx, field);
        if (told.isBlank()) {
            throw new Fault(field, Words.say("slip.empty", right));
        }
        try {
            return how.apply(told);
        } catch (UnitsFault e) {
            throw new Fault(field, Words.say("slip.unread", e.text(), e.allowed(), e.maybe()));
        }
    }

    /** What the shop's memory refuses, told at the field it comes from; what ails the disk goes on as it is. */
    static RuntimeException of(ShopFault fault, String field, Part part) {
        if (fault.kind() != ShopFault.Kind.REFUSED) {
            return fault;
        }
        String words = String.valueOf(fault.getMessage())
                .lines()
                .filter(line -> !line.contains(COMMAND))
                .collect(Collectors.joining(" "));
        return new Fault(
                field,
                words.replace(part.id() + "#", part.facts().name() + " #")
                        .replace(part.id(), part.facts().name()));
    }
}
