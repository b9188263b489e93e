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
import withy.benchmarks.Settings.Section;
import withy.benchmarks.peer.Peer;

/** The whole run: one section after the other, each within its share of the time; what there was no time for is said. */
final class Full {
    /** Share of the time each section may take; what one leaves over goes to those after it. */
    private static final Map<Section, Double> SHARES = new EnumMap<>(Map.of(
            Section.PEERS, 0.45,
            Section.LATENCY, 0.28,
            Section.COLD, 0.05,
            Section.FRONT, 0.04,
            Section.SCALE, 0.08,
            Section.BRIEFS, 0.04,
            Section.FEATURES, 0.03,
            Section.MICRO, 0.03));

    /** Of the time of the peers, what the curated catalogue gets. */
    private static final double CURATED_SHARE = 0.7;

    /** Scenarios that go first, so that a short run sees a light rod, salt, wishes, casting, surf. */
    private static final List<String> FIRST = List.of(
            "kayak-estuary",
            "tiny-stream-ultralight",
            "quay-squid-nice-wishes",
            "harbour-jigging",
            "beach-surf",
            "sea-trout-travel");

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
            Files.writeString(home.resolve("benchmarks").resolve("README.md"), text, StandardCharsets.UTF_8);
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
            case COLD -> LatencyPage.coldText(new Cold(home, System.getProperty("withy.archive", "")).measure());
            default -> "";
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
        return new PeersPage(peers, settings.caps(), heats).text() + left;
    }

    private String latency(long end) throws IOException {
        List<Row> rows = new ArrayList<>();
        int left = shops.size();
        for (Shop shop : shops) {
            long now = System.nanoTime();
            rows.addAll(new Warm(home, talk, now + (end - now) / left--).measure(shop, List.of(Job.values())));
        }
        return new LatencyPage(rows).text();
    }

    private List<Scenario> inOrder(Shop shop) throws IOException {
        List<Scenario> all = new ArrayList<>(Scenario.all(home, shop.catalog()));
        List<Scenario> ordered = new ArrayList<>();
        FIRST.forEach(
                name -> all.stream().filter(one -> one.name().equals(name)).forEach(ordered::add));
        all.removeAll(ordered);
        ordered.addAll(all);
        return ordered;
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
