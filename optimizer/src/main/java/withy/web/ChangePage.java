package withy.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import withy.app.Answer;
import withy.app.Reasons.RepairLine;
import withy.brief.Brief;
import withy.web.Bench.Asked;

/** Changes to a brief from the builds' page: keep, never, let go, instead, other priorities. Each is a new step after the one it was asked from. */
final class ChangePage {
    private static final String KEPT = "insisted";
    private static final String REFUSED = "refused";

    private final Pages pages;

    ChangePage(Pages pages) {
        this.pages = pages;
    }

    void change(Context ctx) {
        Step step = pages.step(Pages.told(ctx, "step"));
        if (Pages.told(ctx, "do").equals("repair")) {
            repair(ctx, step);
            return;
        }
        ObjectNode brief = step.brief().deepCopy();
        String said = apply(ctx, brief);
        if (brief.equals(step.brief())) {
            Pages.go(ctx, "/builds/" + step.id());
            return;
        }
        pages.builds(ctx, step, said, brief, pages.bench().read(brief));
    }

    /** A way out of a brief that asks too much. It is told by its words: after a change of the lists another one may stand in its place. */
    private void repair(Context ctx, Step step) {
        Asked asked = pages.bench().read(step.brief());
        Answer answer = pages.bench().answers().answer(asked, Answers.PATIENCE_S);
        String words = Pages.told(ctx, "words");
        var impossible = answer.impossible();
        RepairLine repair = impossible == null
                ? null
                : impossible.repairs().stream()
                        .filter(one -> one.sentence().equals(words))
                        .findFirst()
                        .orElse(null);
        if (repair == null) {
            throw new Refusal(409, Words.say("change.noRepair"), Words.say("change.noRepair.maybe"));
        }
        ObjectNode brief = step.brief();
        Brief now = asked.told();
        for (int i = 0; i < 2; i++) {
            // a second time where what was taken for granted hangs on what was said
            brief = GivingWay.of(brief, now, repair.brief());
            asked = pages.bench().read(brief);
            now = asked.told();
        }
        pages.builds(ctx, step, words, brief, asked);
    }

    private String apply(Context ctx, ObjectNode brief) {
        String what = Pages.told(ctx, "do");
        String part = Pages.told(ctx, "part");
        String was = Pages.told(ctx, "was");
        if (what.equals("priorities")) {
            for (Field field : Questions.PRIORITIES) {
                String told = ctx.formParam(field.path());
                if (told != null) {
                    Typed.write(brief, field, told, false, pages.bench().currency());
                }
            }
            return Words.say("step.priorities");
        }
        String name = pages.bench().workshop().name(part);
        drop(brief, KEPT, part);
        drop(brief, REFUSED, part);
        switch (what) {
            case "keep" -> add(brief, KEPT, part);
            case "never" -> add(brief, REFUSED, part);
            case "instead" -> {
                add(brief, KEPT, part);
                drop(brief, KEPT, was);
                return Words.say("step.instead", name, pages.bench().workshop().name(was));
            }
            case "free" -> {
                // dropped from both lists already
            }
            default -> throw new Refusal(422, Words.say("change.unknown", what));
        }
        return Words.say("step." + what, name);
    }

    private static void add(ObjectNode brief, String key, String part) {
        ArrayNode list = brief.path(key) instanceof ArrayNode there ? there : brief.putArray(key);
        list.add(part);
    }

    /** Takes a part out of a list, whether it stands there as an id or as a wish with its need. */
    private static void drop(ObjectNode brief, String key, String part) {
        if (brief.path(key) instanceof ArrayNode list) {
            for (int i = list.size() - 1; i >= 0; i--) {
                JsonNode one = list.get(i);
                if (part.equals(one.isObject() ? one.path("part").asText() : one.asText())) {
                    list.remove(i);
                }
            }
            if (list.isEmpty()) {
                brief.remove(key);
            }
        }
    }
}
