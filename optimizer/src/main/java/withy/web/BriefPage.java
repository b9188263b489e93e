package withy.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.app.JobsAnswer;
import withy.brief.BriefContext;
import withy.brief.BriefFault;
import withy.brief.BriefReader;
import withy.catalog.Catalog;
import withy.web.Bench.Asked;
import withy.web.Field.Kind;
import withy.web.StartView.Talk;

/** The first page, the conversation, and briefs in and out as JSON. */
final class BriefPage {
    private static final int MOST_TALKS = 6;
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private final Pages pages;

    BriefPage(Pages pages) {
        this.pages = pages;
    }

    /** Where a talk begins. */
    void start(Context ctx) {
        start(ctx, List.of(), "");
    }

    private void start(Context ctx, List<String> fault, String pasted) {
        pages.html(ctx, "start", startView(fault, pasted));
    }

    /** The first page, with what can't be read of a brief that was pasted there. */
    StartView startView(List<String> fault, String pasted) {
        List<Talk> talks = pages.steps().latest(MOST_TALKS).stream()
                .map(step -> new Talk(step.id(), name(step), said(step)))
                .toList();
        int jobs = (int) JobsAnswer.of(pages.bench().workshop()).jobs().stream()
                .filter(job -> JobsPage.open(job.state()))
                .count();
        Frame frame = pages.frame(Words.say("start.title"), "brief", null);
        return new StartView(frame, Starts.all(), talks, jobs, fault, pasted);
    }

    /** What was said last, and by whom if that was told. */
    private static String said(Step step) {
        String customer = step.brief().path("customer").asText();
        return customer.isBlank() ? step.said() : customer.strip() + " · " + step.said();
    }

    static String name(Step step) {
        String name = step.brief().path("name").asText();
        return name.isEmpty() ? Words.say("brief.unnamed") : name;
    }

    /** A new talk from a beginning. */
    void fresh(Context ctx) {
        String start = ctx.queryParam("start");
        show(ctx, null, start == null ? "" : start, Starts.brief(start == null ? "" : start), false);
    }

    /** A talk as it stands at a step. */
    void edit(Context ctx) {
        Step step = pages.step(ctx);
        show(ctx, step, "", step.brief(), false);
    }

    private void show(Context ctx, @Nullable Step from, String start, ObjectNode typed, boolean counted) {
        pages.html(ctx, "brief", view(from, start, typed, counted));
    }

    /** The brief as it is asked for, with what was typed so far. */
    BriefView view(@Nullable Step from, String start, ObjectNode typed, boolean counted) {
        Asked asked = pages.bench().read(typed);
        String intro = !start.isEmpty() ? Words.say("brief.filled") : from == null ? Words.say("brief.grey") : "";
        Frame frame = pages.frame(Words.say("brief.title"), "brief", from);
        return new BriefForm(pages.bench(), typed, asked)
                .view(frame, from == null ? "" : from.id(), start, intro, count(asked, typed, counted));
    }

    /** Builds are counted where somebody waits for it: the page asks once it is shown, and without script a button does. */
    private BriefView.CountView count(Asked asked, ObjectNode typed, boolean builds) {
        if (!builds && asked.brief() == null) {
            return new BriefView.CountView(List.of(), false); // told at its field
        }
        Counting counting = new Counting(pages.bench());
        return builds ? counting.builds(asked, typed) : counting.blanks(asked);
    }

    /** What was said, kept as a step; then its builds. A fault leads back to its field with all that was typed. */
    void say(Context ctx) {
        String from = Pages.told(ctx, "from");
        String start = Pages.told(ctx, "start");
        Step before = from.isEmpty() ? null : pages.step(from);
        ObjectNode typed = typed(ctx, before, start);
        Asked asked = pages.bench().read(typed);
        if (asked.brief() == null) {
            ctx.status(422);
            show(ctx, before, start, typed, false);
            return;
        }
        if (before != null && before.brief().equals(typed)) {
            Pages.go(ctx, "/builds/" + before.id());
            return;
        }
        pages.builds(ctx, before, Words.say(before == null ? "step.told" : "step.changed"), typed, asked);
    }

    /** What would fit if this were said; nothing is kept. */
    void counted(Context ctx) {
        String from = Pages.told(ctx, "from");
        String start = Pages.told(ctx, "start");
        Step before = from.isEmpty() ? null : pages.step(from);
        ObjectNode typed = typed(ctx, before, start);
        if (Pages.told(ctx, "do").equals("count")) {
            show(ctx, before, start, typed, true);
        } else {
            pages.html(ctx, "count", count(pages.bench().read(typed), typed, true));
        }
    }

    private ObjectNode typed(Context ctx, @Nullable Step before, String start) {
        ObjectNode typed = before == null ? Starts.brief(start) : before.brief().deepCopy();
        Map<String, List<String>> form = ctx.formParamMap();
        for (Field field : Questions.fields()) {
            List<String> told = form.get(field.path());
            boolean some = field.kind() == Kind.SOME && form.containsKey("asked." + field.path());
            if (told != null || some) {
                String words = told == null ? "" : Pages.plain(String.join(" ", told));
                boolean hard = "hard".equals(ctx.formParam("need." + field.path()));
                Typed.write(typed, field, words, hard, pages.bench().currency());
            }
        }
        return typed;
    }

    /** A brief pasted as JSON. */
    void paste(Context ctx) {
        String json = Pages.told(ctx, "json");
        Catalog lists = pages.bench().workshop().lists();
        List<BriefFault> faults = new ArrayList<>(BriefReader.read(json, new BriefContext(lists.rates(), lists.asOf()))
                .faults());
        if (faults.isEmpty()) {
            try {
                ObjectNode typed = (ObjectNode) MAPPER.readTree(json);
                Asked asked = pages.bench().read(typed);
                faults.addAll(asked.faults());
                if (faults.isEmpty()) {
                    pages.builds(ctx, null, Words.say("step.pasted"), typed, asked);
                    return;
                }
            } catch (JsonProcessingException e) {
                throw new IllegalStateException("a brief that was read can't be read", e);
            }
        }
        ctx.status(422);
        start(ctx, faults.stream().map(BriefFault::message).toList(), json);
    }

    /** The brief as typed, as a file. */
    void export(Context ctx) {
        Step step = pages.step(ctx);
        JsonNode brief = step.brief();
        ctx.contentType("application/json; charset=utf-8")
                .header("Content-Disposition", "attachment; filename=\"brief.json\"")
                .result(brief.toPrettyString() + "\n");
    }
}
