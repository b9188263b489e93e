package withy.web;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.http.Context;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What every page is made with: templates, the door, the steps so far, the shop. */
record Pages(TemplateEngine templates, Door door, Steps steps, Bench bench) {

    static Pages of(Door door, Steps steps, Bench bench) {
        return new Pages(TemplateEngine.createPrecompiled(ContentType.Html), door, steps, bench);
    }

    /** A frame around a page about a step, or about none. */
    Frame frame(String title, String here, @Nullable Step step) {
        return new Frame(title, here, door.seal(), step == null ? "" : step.id());
    }

    /** Writes a page. */
    void html(Context ctx, String template, Object view) {
        StringOutput out = new StringOutput();
        templates.render(template + ".jte", Map.of("view", view), out);
        ctx.html(out.toString());
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

    /** A value of a form, or empty. */
    static String told(Context ctx, String name) {
        String value = ctx.formParam(name);
        return value == null ? "" : value;
    }

    /** Goes on at another address; a reload there changes nothing again. */
    static void go(Context ctx, String path) {
        ctx.header("Location", path).status(303);
    }
}
