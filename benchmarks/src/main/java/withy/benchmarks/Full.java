package withy.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.runner.RunnerException;
import withy.benchmarks.Settings.Section;
import withy.benchmarks.micro.Micro;
import withy.benchmarks.micro.MicroRun;
import withy.benchmarks.peer.Peer;
import withy.objectives.Solver.Query;

/** The whole run: one section after the other, each within its share of the time; what there was no time for is said. */
final class Full {
    /** Share of the time each section may take; what one leaves over goes to those after it. */
    private static final Map<Section, Double> SHARES = new EnumMap<>(Map.of(
            Section.PEERS, 0.36,
            Section.LATENCY, 0.26,
            Section.COLD, 0.04,
            Section.PAGE, 0.04,
            Section.FRONT, 0.05,
            Section.SCALE, 0.12,
            Section.BRIEFS, 0.05,
            Section.FEATURES, 0.04,
            Section.MICRO, 0.04));

    /** Of the time of the peers, what the curated catalogue gets. */
    private static final double CURATED_SHARE = 0.7;

    /** Scenarios asked at each size. */
    private static final int SCALED = 4;

    /** Scenarios a catalogue whose instance is described. */
    private static final int DESCRIBED = 3;

    private final Path home;
    private final Settings settings;
    private final PrintStream talk;
    private final List<String> faults = new ArrayList<>();
    private final List<Shop> shops = new ArrayList<>();
    private final long startNanos = System.nanoTime();
    private double shareLeft;

    Full(Path home, Settings settings, PrintStream talk) {
        this.home = home;
        this.settings = settings;
        this.talk = talk;
    }

    /** What is wrong; the page goes out, and over the old one where nothing was left out. */
    List<String> run(PrintStream out) throws IOException, InterruptedException {
        Machine machine = Machine.now();
        shops.addAll(List.of(Shop.bench(), Shop.wide(home), Shop.large()));
        shareLeft = settings.only().stream().mapToDouble(SHARES::get).sum();
        StringBuilder body = new StringBuilder();
        for (Section section : settings.only()) {
            long end = end(section);
            talk.printf(Locale.ROOT, "== %s, until %.0f s%n", section.word(), (end - startNanos) / 1e9);
            body.append(text(section, end));
        }
        Head head = new Head(machine, System.getProperty("withy.commit", "unknown"), settings.words(), shops);
        String text = head.text(Machine.load(), (System.nanoTime() - startNanos) / 1e9) + body + wrong();
        out.print(text);
        if (settings.whole()) {
            Path page = home.resolve("benchmarks").resolve("README.md");
            Files.writeString(page, text + "\n" + ByHand.of(page), StandardCharsets.UTF_8);
        }
        return List.copyOf(faults);
    }

    private String wrong() {
        StringBuilder text = new StringBuilder("## Suspicious or lost\n\n");
        faults.forEach(fault -> text.append("- **").append(fault).append("**\n"));
        return faults.isEmpty()
                ? text.append("Nothing: no peer beat a proven best, none was lost.\n")
                        .toString()
                : text.toString();
    }

    private String text(Section section, long end) throws IOException, InterruptedException {
        return switch (section) {
            case PEERS -> peers(end);
            case LATENCY -> latency(end);
            case COLD -> {
                Cold cold = new Cold(home, System.getProperty("withy.archive", ""));
                yield LatencyPage.coldText(cold.measure(), cold.parts());
            }
            case PAGE -> new PageAnswers(home, shops.get(1), talk, end).text();
            case FRONT -> new FrontsPage(Fronts.measure(shops.get(0), inOrder(shops.get(0)), end, faults)).text();
            case SCALE -> scale(end);
            case BRIEFS ->
                new BriefsPage(shops.get(1), Scenario.all(home, shops.get(1).catalog()), end).text();
            case FEATURES -> features(end);
            case MICRO -> micro();
        };
    }

    private String peers(long end) throws IOException {
        List<Peer> peers = Field.peers();
        List<Field.Heat> heats = new ArrayList<>();
        List<String> notRun = new ArrayList<>();
        Shop bench = shops.get(0);
        for (Scenario scenario : inOrder(bench).subList(0, 1)) {
            Field.heat(bench, scenario, peers, new Field.Caps(1, 2), new ArrayList<>());
        }
        long now = System.nanoTime();
        long[] ends = {now + Math.round((end - now) * CURATED_SHARE), end};
        for (int i = 0; i < ends.length; i++) {
            Shop shop = shops.get(i);
            for (Scenario scenario : inOrder(shop)) {
                if (System.nanoTime() < ends[i]) {
                    heats.add(Field.heat(shop, scenario, peers, settings.caps(), faults));
                    talk.println(scenario.name() + " on " + shop.parts() + " parts: raced");
                } else {
                    notRun.add(scenario.name() + " on " + shop.parts() + " parts");
                }
            }
        }
        String left = notRun.isEmpty()
                ? ""
                : "Not raced, since the time of this section was up: " + String.join(", ", notRun) + ".\n\n";
        draw(
                "quality.svg",
                Plots.quality(heats.stream()
                        .filter(heat -> heat.parts() == bench.parts())
                        .toList()));
        return new PeersPage(peers, settings.caps(), heats).text() + left;
    }

    private String latency(long end) throws IOException {
        List<Row> rows = new ArrayList<>();
        int left = shops.size();
        for (Shop shop : shops) {
            long now = System.nanoTime();
            boolean large = shop.parts() >= Shop.LARGE_SIZE;
            rows.addAll(new Warm(talk, now + (end - now) / left--)
                    .measure(
                            shop,
                            large ? Job.OF_LARGE : List.of(Job.values()),
                            large ? inOrder(shop).subList(0, SCALED) : inOrder(shop)));
        }
        draw(
                "latency.svg",
                Plots.latency(
                        rows.stream().filter(row -> row.shop() == shops.get(1)).toList()));
        return new LatencyPage(rows).text();
    }

    private String scale(long end) throws IOException {
        List<Scale.Curve> curves = new ArrayList<>();
        List<Scale.Point> sizes = new ArrayList<>();
        long now = System.nanoTime();
        long sized = now + Math.round((end - now) * CURATED_SHARE);
        for (int size : List.of(0, Shop.WIDE_SIZE, 5_000, Shop.LARGE_SIZE, 100_000)) {
            if (System.nanoTime() < sized) {
                Shop shop = size == 0
                        ? shops.get(0)
                        : size == Shop.WIDE_SIZE
                                ? shops.get(1)
                                : size == Shop.LARGE_SIZE ? shops.get(2) : Shop.generated(size);
                if (!shops.contains(shop)) {
                    shops.add(shop);
                }
                int asked = size > Shop.LARGE_SIZE ? 1 : SCALED;
                sizes.add(Scale.bests(shop.parts(), shop, queries(shop, asked), sized));
                talk.println("scale " + shop.parts() + " parts: "
                        + Table.number(sizes.get(sizes.size() - 1).medianMs()) + " ms");
            }
        }
        curves.add(new Scale.Curve(
                "parts",
                "Rank 1 of " + String.join(", ", Scenario.FIRST.subList(0, SCALED))
                        + " (where all their parts are there), of more than " + Shop.LARGE_SIZE
                        + " parts the first alone; the curated catalogue is no sample of the generated ones. Bar: 100,000 parts within 5 s, and a power of at most 1.",
                sizes));
        List<Scale.Point> wishes = new ArrayList<>();
        for (int count : List.of(1, 2, 4, 8, 16, 32)) {
            if (System.nanoTime() < end) {
                List<Query> asked = new ArrayList<>();
                for (Scenario scenario : inOrder(shops.get(1)).subList(0, SCALED)) {
                    asked.add(RandomBriefs.wishing(scenario, shops.get(1).catalog(), count)
                            .query());
                }
                wishes.add(Scale.bests(count, shops.get(1), asked, end));
            }
        }
        curves.add(new Scale.Curve(
                "wishes",
                "Rank 1 of the same on " + shops.get(1).parts()
                        + " parts with so many parts that would be nice to have or to leave out.",
                wishes));
        List<Scale.Point> jobs = new ArrayList<>();
        for (int count : List.of(1, 2, 5, 10, 20, 30)) {
            if (System.nanoTime() < end) {
                List<Query> asked = new ArrayList<>();
                RandomBriefs.of(inOrder(shops.get(0)), count).forEach(one -> asked.add(one.query()));
                jobs.add(Scale.plan(count, shops.get(0), asked));
            }
        }
        curves.add(new Scale.Curve(
                "jobs",
                "A plan of so many random briefs (seed " + RandomBriefs.SEED
                        + ") on the curated catalogue's stock, once each.",
                jobs));
        draw("scale.svg", Plots.scale(curves));
        return Scale.text(curves);
    }

    private List<Query> queries(Shop shop, int most) throws IOException {
        return inOrder(shop).stream().limit(most).map(Scenario::query).toList();
    }

    private String features(long end) throws IOException {
        List<Features.Instance> instances = new ArrayList<>();
        for (Shop shop : shops.subList(0, 2)) {
            for (Scenario scenario : inOrder(shop).subList(0, DESCRIBED)) {
                if (System.nanoTime() < end) {
                    instances.add(Features.of(shop, scenario));
                }
            }
        }
        return Features.text(instances);
    }

    private String micro() {
        Table table = new Table("work", "µs", "±");
        try {
            for (MicroRun.Figure figure : MicroRun.measure()) {
                table.row(figure.what(), Table.number(figure.micros()), Table.number(figure.errorMicros()));
            }
        } catch (RunnerException e) {
            faults.add("the small measurements could not run: " + e.getMessage());
        }
        return "## Small work\n\n" + MicroRun.HOW + "; the rod is the best of " + Micro.SCENARIO
                + " on the wide catalogue.\n\n" + table.text();
    }

    /** Drawings go beside the page, and only with it. */
    private void draw(String name, Plot plot) throws IOException {
        if (settings.whole()) {
            Files.writeString(home.resolve("benchmarks").resolve(name), plot.svg(), StandardCharsets.UTF_8);
        }
    }

    private List<Scenario> inOrder(Shop shop) throws IOException {
        return Scenario.inOrder(home, shop.catalog());
    }

    /** When a section must end. */
    private long end(Section section) {
        double share = SHARES.getOrDefault(section, 0.0);
        long whole = startNanos + Math.round(settings.minutes() * TimeUnit.MINUTES.toNanos(1));
        long now = System.nanoTime();
        long end = now + Math.round((whole - now) * (share / shareLeft));
        shareLeft -= share;
        return end;
    }
}
