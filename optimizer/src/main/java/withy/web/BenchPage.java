package withy.web;

import io.javalin.Javalin;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import io.javalin.util.JavalinBindException;
import java.io.IOException;
import java.net.URI;
import java.util.List;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.jspecify.annotations.Nullable;
import withy.app.LocalPage;
import withy.app.OurFault;
import withy.app.RefusedBuild;
import withy.shop.ShopFault;
import withy.units.UnitsFault;

/** The page itself: opens on the loopback interface and leads each address to its page. */
public final class BenchPage implements LocalPage {
    private static final String LOOPBACK = "127.0.0.1";
    private static final int THREADS = 16;

    /** In a line that leads to a command: no help to whom has only the page, unless something is broken. */
    private static final String COMMAND = "withy ";

    /** Found as a service. */
    public BenchPage() {}

    @Override
    public Opened open(Setting setting) throws IOException {
        Door door = new Door();
        Bench bench = new Bench(setting, () -> System.nanoTime() / 1_000_000);
        Pages pages = Pages.of(door, new Steps(setting.workshop().get().folder()), bench);
        Javalin server = Javalin.create(config -> {
            config.showJavalinBanner = false;
            config.http.maxRequestSize = Door.MOST_BYTES;
            config.jetty.threadPool = new QueuedThreadPool(THREADS, 2);
            config.jetty.modifyHttpConfiguration(http -> http.setSendServerVersion(false));
        });
        server.before(door::check);
        routes(server, pages);
        faults(server, pages);
        try {
            server.start(LOOPBACK, setting.port());
        } catch (JavalinBindException e) {
            throw new IOException("it is taken", e);
        }
        door.opened(server.port());
        return new Running(
                server, pages, URI.create("http://" + LOOPBACK + ":" + server.port() + "/start?key=" + door.key()));
    }

    private record Running(Javalin server, Pages pages, URI address) implements Opened {
        @Override
        public void prepare() {
            pages.bench().answers().prepare(new FirstPages(pages, drawn -> {}));
        }

        @Override
        public void close() {
            server.stop();
            pages.bench().close();
        }
    }

    private static void routes(Javalin server, Pages pages) {
        server.get("/start", ctx -> {
            pages.door().enter(ctx);
            Pages.go(ctx, "/");
        });
        server.get("/assets/{name}", Assets::send);
        BriefPage brief = new BriefPage(pages);
        server.get("/", brief::start);
        server.get("/brief", brief::fresh);
        server.post("/brief", brief::say);
        server.post("/count", brief::counted);
        server.post("/paste", brief::paste);
        server.get("/brief/{step}", brief::edit);
        server.get("/brief/{step}/export", brief::export);
        server.get("/builds/{step}", new BuildsPage(pages)::show);
        server.post("/change", new ChangePage(pages)::change);
        WhyPage why = new WhyPage(pages);
        server.get("/drawer/{step}/{rank}/{station}", why::drawer);
        server.get("/why/{step}/{part}", why::whyNot);
        server.get("/lighter/{step}", new LighterPage(pages)::show);
        server.get("/around/{step}", new AroundPage(pages)::show);
        shop(server, pages);
    }

    private static void shop(Javalin server, Pages pages) {
        JobsPage jobs = new JobsPage(pages);
        server.get("/jobs", jobs::all);
        server.post("/jobs", jobs::begin);
        server.get("/jobs/{job}", jobs::one);
        server.post("/jobs/{job}", new JobActs(pages, jobs)::act);
        StockPage stock = new StockPage(pages);
        ScalePage scale = new ScalePage(pages);
        server.get("/weigh", scale::all);
        server.get("/jobs/{job}/scale", scale::job);
        server.post("/weigh", new ScaleActs(pages, scale, stock)::weigh);
        server.get("/stock", stock::all);
        server.get("/stock/{part}", stock::one);
        server.post("/stock/{part}", stock::book);
        OutPage out = new OutPage(pages);
        server.get("/out/{part}", out::look);
        server.post("/out/{part}", out::accept);
        server.get("/plan", new PlanPage(pages)::show);
        BackupPage copies = new BackupPage(pages);
        server.post("/backup", copies::keep);
        server.get("/backup/{copy}", copies::show);
        server.get("/backup/{copy}/file", copies::file);
        PapersPage papers = new PapersPage(pages);
        server.get("/jobs/{job}/paper/{paper}", papers::ofJob);
        server.get("/paper/{paper}", papers::ofShop);
    }

    private static void faults(Javalin server, Pages pages) {
        server.exception(Refusal.class, (e, ctx) -> refused(ctx, pages, e.status(), e.lines(), e.way()));
        server.exception(Soon.NotYet.class, (e, ctx) -> waiting(ctx, pages));
        server.exception(
                UnitsFault.class,
                (e, ctx) -> refused(
                        ctx, pages, 422, String.valueOf(e.getMessage()).lines().toList()));
        server.exception(
                ShopFault.class,
                (e, ctx) -> refused(
                        ctx,
                        pages,
                        e.ofDisk() ? 503 : 409,
                        String.valueOf(e.getMessage()).lines().toList()));
        server.exception(RefusedBuild.class, (e, ctx) -> {
            List<String> lines = new java.util.ArrayList<>(List.of(String.valueOf(e.getMessage())));
            lines.addAll(e.sentences());
            refused(ctx, pages, 409, lines);
        });
        server.exception(
                OurFault.class,
                (e, ctx) -> refused(ctx, pages, 500, List.of(Words.say("page.ours", String.valueOf(e.getMessage())))));
        server.exception(
                HttpResponseException.class,
                (e, ctx) -> refused(
                        ctx,
                        pages,
                        e.getStatus(),
                        List.of(Words.say(e.getStatus() == 413 ? "door.size" : "page.none", Door.MOST_BYTES / 1000))));
        server.exception(
                Exception.class,
                (e, ctx) -> refused(
                        ctx,
                        pages,
                        500,
                        List.of(Words.say("page.ours", e.getClass().getSimpleName() + " " + e.getMessage()))));
        server.error(404, ctx -> {
            if (ctx.result() == null || String.valueOf(ctx.result()).isEmpty() || !"1".equals(ctx.attribute("told"))) {
                refused(ctx, pages, 404, List.of(Words.say("page.none")));
            }
        });
    }

    /** What takes longer than a moment says so at once and comes in its place when it is there. */
    private static void waiting(Context ctx, Pages pages) {
        String step = ctx.pathParamMap().getOrDefault("step", "");
        String here = step.isEmpty() ? ctx.path().startsWith("/plan") ? "plan" : "stock" : "brief";
        pages.html(
                ctx,
                "waiting",
                new WaitingView(
                        pages.frame(Words.say("wait.head"), here, null).waiting(),
                        step.isEmpty() ? "" : "/builds/" + step,
                        ctx.queryString() == null ? ctx.path() : ctx.path() + "?" + ctx.queryString()));
    }

    private static void refused(Context ctx, Pages pages, int status, List<String> lines) {
        refused(ctx, pages, status, lines, null);
    }

    private static void refused(Context ctx, Pages pages, int status, List<String> lines, Refusal.@Nullable Way way) {
        ctx.status(status);
        ctx.attribute("told", "1");
        boolean asked = ctx.method() == HandlerType.GET;
        String title = Words.say(status == 404 || status == 409 && asked ? "page.missing" : "page.refused");
        // the main ways only for who was let in
        Frame frame = Door.inside(ctx) ? pages.frame(title, "", null) : new Frame(title, "", "", "", "", "", false);
        List<String> told = lines.stream()
                .filter(line -> status >= 500 || !line.contains(COMMAND))
                .toList();
        pages.html(
                ctx,
                "refusal",
                new RefusalView(
                        frame,
                        told.isEmpty() ? lines : told,
                        Door.from(ctx),
                        !asked,
                        way == null ? "" : way.address(),
                        way == null ? "" : way.words()));
    }
}
