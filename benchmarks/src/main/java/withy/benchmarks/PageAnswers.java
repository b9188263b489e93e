package withy.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import withy.app.LocalPage;
import withy.app.SearchChooser;
import withy.app.Workshop;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/**
 * How long the bench page takes to answer, asked over the loopback interface as a browser with script asks: the page, then the best build, then the
 * rest. On a copy of the wide catalogue; every scenario is a talk of its own.
 */
final class PageAnswers {
    /** Until something new is seen, ms. */
    static final int BAR_MS = 300;

    private static final String BEST = "data-rest=\"best\"";
    private static final String REST = "data-rest";
    private static final String SEEN_MARK = "?show=";

    private final Path home;
    private final Shop shop;
    private final PrintStream talk;
    private final long endNanos;
    private final Map<String, List<Double>> ms = new LinkedHashMap<>();
    private final HttpClient client =
            HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
    private URI at = URI.create("http://127.0.0.1/");
    private String seal = "";

    /**
     * @param home the project's folder
     * @param shop the wide catalogue
     * @param talk where progress is told
     * @param endNanos from this {@link System#nanoTime} on, scenarios are left out and said to be
     */
    PageAnswers(Path home, Shop shop, PrintStream talk, long endNanos) {
        this.home = home;
        this.shop = shop;
        this.talk = talk;
        this.endNanos = endNanos;
    }

    /** The section. */
    String text() throws IOException, InterruptedException {
        List<Scenario> scenarios = Scenario.all(home, shop.catalog());
        Path folder = copied();
        int asked = 0;
        Workshop workshop = new Workshop(folder, shop.catalog(), shop.catalog().asOf());
        LocalPage page = ServiceLoader.load(LocalPage.class).findFirst().orElseThrow();
        LocalPage.Setting setting =
                new LocalPage.Setting(() -> workshop, SearchChooser::new, new QuantityText(UnitSystem.METRIC), 0);
        try (LocalPage.Opened opened = page.open(setting)) {
            enter(opened.address());
            talkOf(scenarios.get(0));
            ms.clear();
            for (Scenario scenario : scenarios) {
                if (System.nanoTime() - endNanos < 0) {
                    talkOf(scenario);
                    asked++;
                    talk.println(scenario.name() + " on the page: asked");
                }
            }
        } finally {
            delete(folder);
        }
        return "## The bench page on " + shop.parts()
                + " parts\n\nOver the loopback interface, warm, no browser: " + asked + " of " + scenarios.size()
                + " scenarios, each a new talk. The bar of " + BAR_MS
                + " ms is for what is asked to be seen; the rest comes in its place later.\n\n" + table().text();
    }

    private Table table() {
        Table table = new Table("seen", "runs", "median ms", "95th ms", "longest ms", "within " + BAR_MS + " ms");
        ms.forEach((what, all) -> {
            Spread spread = Spread.of(all);
            table.row(
                    what,
                    all.size() + "",
                    Table.number(spread.medianMs()),
                    Table.number(spread.p95Ms()),
                    Table.number(spread.mostMs()),
                    all.stream().filter(one -> one <= BAR_MS).count() + " of " + all.size());
        });
        return table;
    }

    /** One brief: its builds, another priority, a place's parts, why not the second build's blank, lighter. */
    private void talkOf(Scenario scenario) throws IOException, InterruptedException {
        String brief = Files.readString(
                home.resolve("scenarios").resolve(scenario.name()).resolve("brief.json"));
        String builds = builds("a new brief", "/paste", "json", brief);
        String step = builds.substring(builds.lastIndexOf('/') + 1);
        String whole = get(builds).body();
        if (whole.contains("/drawer/" + step + "/1/")) {
            builds("a priority changed", "/change", "step", step, "do", "priorities", "priorities.weight", "7");
            until("parts for a place", "/drawer/" + step + "/1/seat");
            Matcher other = Pattern.compile("/why/" + step + "/([^\"?]+)")
                    .matcher(get("/drawer/" + step + "/1/seat").body());
            if (other.find()) {
                until("why not a part", "/why/" + step + "/" + other.group(1));
            }
            until("can it be lighter", "/lighter/" + step);
        }
        for (String path : List.of("/stock", "/weigh", "/jobs")) {
            long start = System.nanoTime();
            get(path);
            note("`" + path + "`", start);
        }
    }

    /** Sends a form that leads to builds, and looks until the best is there, then the rest; tells where they stand. */
    private String builds(String what, String path, String... fields) throws IOException, InterruptedException {
        long start = System.nanoTime();
        String builds = post(path, fields);
        get(builds);
        note(what + ": what there is", start);
        look(builds, "best", BEST);
        note(what + ": the best build", start);
        look(builds, "rest", REST);
        note(what + ": all builds", start);
        return builds;
    }

    private void until(String what, String path) throws IOException, InterruptedException {
        long start = System.nanoTime();
        HttpResponse<String> first = get(path);
        note(what + ": what there is", start);
        if (first.body().contains(REST)) {
            look(path, "rest", REST);
        }
        note(what + ": all of it", start);
    }

    private void look(String path, String show, String mark) throws IOException, InterruptedException {
        Cap cap = new Cap(Cap.SECONDS);
        while (get(path + SEEN_MARK + show).body().contains(mark)) {
            if (cap.watch().interrupted().getAsBoolean()) {
                return;
            }
        }
    }

    private void note(String what, long startNanos) {
        ms.computeIfAbsent(what, any -> new ArrayList<>()).add(Job.millisSince(startNanos));
    }

    private void enter(URI address) throws IOException, InterruptedException {
        at = address.resolve("/");
        client.send(HttpRequest.newBuilder(address).build(), BodyHandlers.discarding());
        Matcher found = Pattern.compile("name=\"seal\" value=\"([^\"]+)\"").matcher(get("/").body());
        if (!found.find()) {
            throw new IOException("The page lets no form through.\nMaybe run: optimizer/bin/withy serve");
        }
        seal = found.group(1);
    }

    private HttpResponse<String> get(String path) throws IOException, InterruptedException {
        HttpResponse<String> reply =
                client.send(HttpRequest.newBuilder(at.resolve(path)).build(), BodyHandlers.ofString());
        if (reply.statusCode() >= 400) {
            throw new IOException(path + ": " + reply.statusCode() + ".\nMaybe open it in a browser: it says why.");
        }
        return reply;
    }

    /** Sends a form; where it leads. */
    private String post(String path, String... fields) throws IOException, InterruptedException {
        StringBuilder body = new StringBuilder("seal=").append(seal);
        for (int i = 0; i < fields.length; i += 2) {
            body.append('&')
                    .append(fields[i])
                    .append('=')
                    .append(URLEncoder.encode(fields[i + 1], StandardCharsets.UTF_8));
        }
        HttpRequest request = HttpRequest.newBuilder(at.resolve(path))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("Origin", at.toString().substring(0, at.toString().length() - 1))
                .POST(BodyPublishers.ofString(body.toString()))
                .build();
        HttpResponse<String> reply = client.send(request, BodyHandlers.ofString());
        return reply.headers()
                .firstValue("Location")
                .orElseThrow(() -> new IOException(path + ": " + reply.statusCode() + " and leads nowhere.\n"
                        + "Maybe send the same brief in a browser: it says why."));
    }

    private Path copied() throws IOException {
        Path to = Files.createTempDirectory("withy-page");
        try (Stream<Path> files = Files.list(home.resolve("catalog-samples").resolve("wide"))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
        return to;
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(one);
            }
        }
    }
}
