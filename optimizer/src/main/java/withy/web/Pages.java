package withy.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.http.Context;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import withy.app.PartIds;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.web.Bench.Asked;

/** What every page is made with: templates, the door, the steps so far, the shop. */
record Pages(TemplateEngine templates, Door door, Steps steps, Bench bench, Recent<String, String> done) {
    /** Forms that are remembered as done. */
    private static final int MOST_DONE = 500;

    static Pages of(Door door, Steps steps, Bench bench) {
        return new Pages(
                TemplateEngine.createPrecompiled(ContentType.Html), door, steps, bench, new Recent<>(MOST_DONE));
    }

    /** A frame around a page about a step, or about none. */
    Frame frame(String title, String here, @Nullable Step step) {
        return new Frame(
                title, here, door.seal(), Door.secret(), step == null ? "" : step.id(), steps.trouble(), false);
    }

    /** Writes a page. */
    void html(Context ctx, String template, Object view) {
        ctx.html(text(template, view));
    }

    /** The same as text. */
    String text(String template, Object view) {
        StringOutput out = new StringOutput();
        templates.render(template + ".jte", Map.of("view", view), new Lines(out));
        return out.toString();
    }

    /** The step an address names. */
    Step step(Context ctx) {
        return step(ctx.pathParam("step"));
    }

    Step step(String id) {
        Step step = steps.find(id);
        if (step == null) {
            throw new Refusal(404, Words.say("page.noStep"), Words.say("page.noStep.maybe"));
        }
        return step;
    }

    /** Keeps what was said after a step, or as a first one, and leads to its builds, which are looked for from here on. */
    void builds(Context ctx, @Nullable Step before, String said, ObjectNode brief, Asked asked) {
        bench.answers().coming(asked, Answers.PATIENCE_S);
        go(ctx, "/builds/" + steps.add(before, said, brief).id());
    }

    /** A word of the address, or empty. */
    static String asked(Context ctx, String name) {
        String value = ctx.queryParam(name);
        return value == null ? "" : plain(value).strip();
    }

    /** A value of a form, or empty. */
    static String told(Context ctx, String name) {
        String value = ctx.formParam(name);
        return value == null ? "" : plain(value);
    }

    /** What was copied from a page holds spaces that no line breaks at; they are read as spaces. */
    static String plain(String told) {
        return told.replace('\u00a0', ' ');
    }

    /** Goes on at another address; a reload there changes nothing again. */
    static void go(Context ctx, String path) {
        ctx.header("Location", path).status(303);
    }

    /** Does what a form asks and goes where that leads; the same form sent again, by a double click or after going back, only goes there. */
    void once(Context ctx, Supplier<String> doing) {
        go(ctx, done.get(ctx.path() + " " + ctx.body(), () -> {
            try {
                return doing.get();
            } finally {
                bench.memory().booked();
            }
        }));
    }

    /** True where this very form was done before. */
    boolean done(Context ctx) {
        return done.known(ctx.path() + " " + ctx.body()) != null;
    }

    /** The number of a job in the address. */
    static long job(Context ctx) {
        String told = ctx.pathParam("job");
        if (!told.matches("\\d{1,9}")) {
            throw new Refusal(404, Words.say("page.none"));
        }
        return Long.parseLong(told);
    }

    /** A part of the lists that an address names. */
    Part part(Context ctx) {
        String told = ctx.pathParam("part");
        Catalog lists = bench.workshop().lists();
        Part part = lists.find(told);
        if (part == null) {
            throw new Refusal(404, Words.say("why.unknown", told), PartIds.maybe(told, lists));
        }
        return part;
    }
}
