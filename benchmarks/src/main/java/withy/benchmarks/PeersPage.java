package withy.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import withy.benchmarks.Field.Heat;
import withy.benchmarks.Field.Lane;
import withy.benchmarks.peer.Peer;
import withy.benchmarks.peer.Race;
import withy.objectives.Scoring;
import withy.rod.Rod;

/** The peers' part of the page: quality over time, time to optimum and to proof, and what the habit would have built. */
record PeersPage(List<Peer> peers, Field.Caps caps, List<Heat> heats) {
    PeersPage {
        peers = List.copyOf(peers);
        heats = List.copyOf(heats);
    }

    String text() {
        StringBuilder text = new StringBuilder("## Against general-purpose alternatives\n\n");
        text.append(
                        "Same rules, same score, same two cores, one after the other in one process, an uncounted race of each first. Gap = steps of score above the ")
                .append(
                        "product's proven best; one step is the least difference worth noticing at mean priority. Everything a peer builds is measured and judged anew. ")
                .append(String.format(
                        Locale.ROOT,
                        "Peers that cannot prove were stopped after %.0f s, peers that can after %.0f s (the project's own caps are 60 s and 600 s: this run was shorter).%n%n",
                        caps.qualitySeconds(),
                        caps.proofSeconds()));
        for (Peer peer : peers) {
            text.append("- ")
                    .append(peer.name())
                    .append(": ")
                    .append(peer.setUp())
                    .append(".\n");
        }
        text.append('\n');
        text.append("![gap over time](quality.svg)\n\n");
        for (int parts : heats.stream().map(Heat::parts).distinct().toList()) {
            List<Heat> some =
                    heats.stream().filter(heat -> heat.parts() == parts).toList();
            text.append("### ")
                    .append(parts)
                    .append(" parts, ")
                    .append(some.size())
                    .append(" scenarios\n\n");
            summary(text, some);
            text.append("Gap of the last build, steps, and when that was found, s:\n\n")
                    .append(cells(some));
        }
        return text.append(habits()).toString();
    }

    private static void summary(StringBuilder text, List<Heat> heats) {
        List<String> head = new ArrayList<>(List.of("runner", "legal at the end"));
        Field.AT_MS.forEach(ms -> head.add("gap " + at(ms)));
        head.addAll(List.of(
                "at the end, largest",
                "optimum reached",
                "median s to it",
                "proven",
                "median s to proof",
                "longest s"));
        Table table = new Table(head.toArray(String[]::new));
        for (int i = 0; i < heats.get(0).lanes().size(); i++) {
            int lane = i;
            List<Lane> lanes =
                    heats.stream().map(heat -> heat.lanes().get(lane)).toList();
            List<String> row = new ArrayList<>(List.of(lanes.get(0).name()));
            row.add(lanes.stream().filter(Lane::legal).count() + " of "
                    + heats.stream().filter(h -> h.best().build() != null).count());
            for (int ms : Field.AT_MS) {
                row.add(ms > 1000 * lanes.get(0).capSeconds() ? "not run" : median(gaps(heats, lane, ms)));
            }
            List<Double> last = gaps(heats, lane, Double.POSITIVE_INFINITY);
            row.add(
                    last.isEmpty()
                            ? "none legal"
                            : Table.number(
                                    last.stream().mapToDouble(gap -> gap).max().orElse(0)));
            List<Double> reached = new ArrayList<>();
            for (Heat heat : heats) {
                Double ms = heat.best().build() == null
                        ? null
                        : heat.lanes().get(lane).reachedMs(heat.best().score());
                if (ms != null) {
                    reached.add(ms / 1000);
                }
            }
            row.add(reached.size() + "");
            row.add(reached.isEmpty() ? "" : Table.number(Spread.of(reached).medianMs()));
            List<Double> proofs = lanes.stream()
                    .map(Lane::provenMs)
                    .filter(Objects::nonNull)
                    .map(ms -> ms / 1000)
                    .toList();
            row.add(proofs.size() + " of " + heats.size());
            String more = "more than " + Table.number(lanes.get(0).capSeconds());
            boolean most = proofs.size() * 2 > heats.size();
            row.add(
                    proofs.isEmpty()
                            ? ""
                            : most ? Table.number(Spread.of(proofs).medianMs()) : more);
            row.add(
                    proofs.isEmpty()
                            ? ""
                            : proofs.size() == heats.size()
                                    ? Table.number(Spread.of(proofs).mostMs())
                                    : more);
            table.row(row.toArray(String[]::new));
        }
        text.append(
                        "Median gap over the scenarios in which it had a legal build by then, and in how many that was so:\n\n")
                .append(table.text());
        lost(text, heats);
        text.append(ratio(heats));
    }

    private static void lost(StringBuilder text, List<Heat> heats) {
        for (Heat heat : heats) {
            for (Lane lane : heat.lanes()) {
                if (lane.lost() != null) {
                    text.append("**Could not run**: ")
                            .append(lane.name())
                            .append(" on ")
                            .append(heat.scenario())
                            .append(": ")
                            .append(lane.lost())
                            .append("\n\n");
                }
            }
        }
    }

    /** How many times as long as the product the fastest peer needed to a proof, or at least that. */
    private static String ratio(List<Heat> heats) {
        List<Double> ratios = new ArrayList<>();
        int met = 0;
        int asked = 0;
        int bounded = 0;
        for (Heat heat : heats) {
            Double own = heat.lanes().get(0).provenMs();
            double fastest = Double.POSITIVE_INFINITY;
            double cap = 0;
            for (Lane lane : heat.lanes().subList(1, heat.lanes().size())) {
                fastest = lane.provenMs() == null ? fastest : Math.min(fastest, lane.provenMs());
                cap = Math.max(cap, lane.capSeconds() * 1000);
            }
            asked++;
            if (own != null) {
                double ratio = Math.min(fastest, cap) / own;
                ratios.add(ratio);
                bounded += Double.isInfinite(fastest) ? 1 : 0;
                met += ratio >= 100 ? 1 : 0;
            }
        }
        return ratios.isEmpty()
                ? ""
                : String.format(
                        Locale.ROOT,
                        "Faster to proof than the fastest peer: median %s times, least %s times (in %d of %d no peer proved it by its cap, so the ratio is \"more than\"). Bar of 100 times: %d of %d.%n%n",
                        Table.number(Spread.of(ratios).medianMs()),
                        Table.number(Spread.of(ratios).leastMs()),
                        bounded,
                        ratios.size(),
                        met,
                        asked);
    }

    private static List<Double> gaps(List<Heat> heats, int lane, double ms) {
        List<Double> gaps = new ArrayList<>();
        for (Heat heat : heats) {
            Long score = heat.lanes().get(lane).scoreAt(ms);
            if (score != null) {
                gaps.add(Scoring.steps(score - heat.best().score()));
            }
        }
        return gaps;
    }

    private static String median(List<Double> gaps) {
        return gaps.isEmpty() ? "none legal" : Table.number(Spread.of(gaps).medianMs()) + " (" + gaps.size() + ")";
    }

    private static String cells(List<Heat> heats) {
        List<String> head = new ArrayList<>(List.of("scenario", "proven best, steps"));
        heats.get(0).lanes().forEach(lane -> head.add(lane.name()));
        Table table = new Table(head.toArray(String[]::new));
        for (Heat heat : heats) {
            List<String> row = new ArrayList<>(List.of(heat.scenario()));
            row.add(
                    heat.best().build() == null
                            ? "none legal"
                            : Table.number(Scoring.steps(heat.best().score()))
                                    + (heat.best().proven() ? "" : ", not proven"));
            heat.lanes().forEach(lane -> row.add(cell(heat, lane)));
            table.row(row.toArray(String[]::new));
        }
        return table.text();
    }

    private static String cell(Heat heat, Lane lane) {
        String proof = lane.provenMs() == null ? "" : ", proven " + Table.number(lane.provenMs() / 1000);
        if (lane.lost() != null) {
            return "could not run";
        }
        if (lane.found().isEmpty()) {
            return (lane.made() == null ? "no build" : "none legal") + proof;
        }
        Race.Found last = lane.found().get(lane.found().size() - 1);
        return Table.number(Scoring.steps(last.score() - heat.best().score())) + " at " + Table.number(last.ms() / 1000)
                + proof;
    }

    /** What the two habits build, beside the product's best. */
    private String habits() {
        StringBuilder text = new StringBuilder("### What a builder's habit costs\n\n");
        Table table =
                new Table("habit", "parts", "asked", "illegal", "heavier", "by g, median", "dearer", "by %, median");
        for (int parts : heats.stream().map(Heat::parts).distinct().toList()) {
            for (int i = 0; i < peers.size(); i++) {
                if (peers.get(i).name().startsWith("habit")) {
                    habit(table, parts, i + 1);
                }
            }
        }
        text.append(
                "Heavier and dearer: its build, legal or not, against the product's best by the brief's own priorities.\n\n");
        return text.append(table.text()).toString();
    }

    private void habit(Table table, int parts, int lane) {
        int asked = 0;
        int illegal = 0;
        List<Double> heavier = new ArrayList<>();
        List<Double> dearer = new ArrayList<>();
        String name = "";
        for (Heat heat : heats) {
            Rod best = heat.lanes().get(0).made();
            Rod made = heat.lanes().get(lane).made();
            name = heat.lanes().get(lane).name();
            if (heat.parts() == parts && heat.best().build() != null && best != null && made != null) {
                asked++;
                illegal += heat.lanes().get(lane).legal() ? 0 : 1;
                over(heavier, made.figures().weightG() - best.figures().weightG());
                over(
                        dearer,
                        100.0
                                * (made.figures().priceMinor() - best.figures().priceMinor())
                                / best.figures().priceMinor());
            }
        }
        table.row(
                name,
                parts + "",
                asked + "",
                illegal + "",
                heavier.size() + "",
                medianOf(heavier),
                dearer.size() + "",
                medianOf(dearer));
    }

    private static void over(List<Double> to, double difference) {
        if (difference > 0) {
            to.add(difference);
        }
    }

    private static String medianOf(List<Double> values) {
        return values.isEmpty() ? "" : Table.number(Spread.of(values).medianMs());
    }

    private static String at(int ms) {
        return ms < 1000 ? ms + " ms" : ms / 1000 + " s";
    }
}
