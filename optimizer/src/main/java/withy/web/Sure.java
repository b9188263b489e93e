package withy.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import withy.web.SureView.Kept;

/** Asks back before something odd is booked. The answer is the same form again, with everything that was typed and a word more. */
final class Sure {
    private static final String WORD = "sure";

    private Sure() {}

    /** True where the question was answered with yes. */
    static boolean told(Context ctx) {
        return Pages.told(ctx, WORD).equals("yes");
    }

    /**
     * Asks; nothing is booked.
     *
     * @param key names its words
     * @param here the main way it belongs to
     * @param question what is odd
     * @param back where no leads
     * @param fields of the form that are sent again
     */
    static void ask(
            Pages pages, Context ctx, String key, String here, String question, String back, List<String> fields) {
        ask(pages, ctx, key, here, question, back, fields, Map.of());
    }

    /** The same; a yes sends some fields otherwise than they were typed. */
    static void ask(
            Pages pages,
            Context ctx,
            String key,
            String here,
            String question,
            String back,
            List<String> fields,
            Map<String, String> otherwise) {
        List<Kept> kept = new ArrayList<>();
        fields.forEach(field -> kept.add(new Kept(field, otherwise.getOrDefault(field, Pages.told(ctx, field)))));
        kept.add(new Kept(WORD, "yes"));
        Frame frame = pages.frame(Words.say(key), here, null);
        ctx.status(422);
        pages.html(ctx, "sure", new SureView(frame, key, question, ctx.path(), back, kept));
    }
}
