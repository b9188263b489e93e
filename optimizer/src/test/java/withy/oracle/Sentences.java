package withy.oracle;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.brief.Objective;
import withy.catalog.Part;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Protocol;
import withy.rules.Rulebook;
import withy.rules.Verdict;

/** Every sentence of an answer by itself: its numbers are those of the builds, parts and values this very sentence speaks of. */
final class Sentences {
    private final SmallShop.Case shop;
    private int numbers;

    Sentences(SmallShop.Case shop) {
        this.shop = shop;
    }

    /** Numbers compared. */
    int whyNot(JsonNode answer) throws Exception {
        Rod first = rod(answer.path("first"));
        Rod opponent = rod(answer.path("opponent"));
        Rod better = rod(answer.path("better"));
        List.of("first", "opponent", "better").forEach(which -> Written.build(shop, answer.path(which)));
        List<String> parts = new ArrayList<>();
        answer.path("parts").forEach(id -> parts.add(id.asText()));
        MaySay whole = new MaySay(shop);
        if (opponent != null) {
            pair(whole, first, opponent);
            pair(whole, better, opponent);
        }
        for (JsonNode breach : answer.path("breaks")) {
            said(whole, breach, opponent, parts);
            MaySay own = new MaySay(shop);
            said(own, breach, opponent, parts);
            hold(own, breach);
            Written.verdict(breach, verdicts(breach, opponent, parts));
        }
        if (!answer.path("forcedBy").isEmpty()) {
            whole.brief();
        }
        hold(whole, answer);
        if (first != null && opponent != null) {
            tradeOffs(answer.path("tradeOffs"), opponent, first);
        }
        for (JsonNode flip : answer.path("flips")) {
            MaySay tried = new MaySay(shop);
            tried.flip(flip);
            hold(tried, flip);
            Written.flip(shop, flip);
        }
        return numbers;
    }

    /** Numbers compared. */
    int lighter(JsonNode answer) throws Exception {
        Rod first = Objects.requireNonNull(rod(answer.path("first")));
        Rod lightest = Objects.requireNonNull(rod(answer.path("lightest")));
        List.of("first", "lightest").forEach(which -> Written.build(shop, answer.path(which)));
        MaySay whole = new MaySay(shop);
        whole.pair(first, lightest);
        whole.say(1, lightest.figures().weightG());
        hold(whole, answer);
        tradeOffs(answer.path("tradeOffs"), lightest, first);
        Rod before = null;
        for (JsonNode point : answer.path("curve")) {
            Rod rod = Objects.requireNonNull(rod(point.path("build")));
            MaySay step = new MaySay(shop);
            if (before != null) {
                step.pair(rod, before);
                tradeOffs(point.path("tradeOffs"), rod, before);
            }
            hold(step, point);
            Written.build(shop, point.path("build"));
            before = rod;
        }
        for (JsonNode line : answer.path("ledger")) {
            line(line, first);
        }
        return numbers;
    }

    private void line(JsonNode line, Rod first) throws Exception {
        JsonNode file = line.path("build");
        Rod rod = file.isObject() ? new MaySay(shop).read(file) : null;
        JsonNode breach = line.path("breaks");
        MaySay own = new MaySay(shop);
        if (breach.isObject()) {
            said(own, breach, rod, List.of(line.path("part").asText()));
            hold(own, breach);
            Written.verdict(
                    breach, verdicts(breach, rod, List.of(line.path("part").asText())));
        } else {
            pair(own, rod, first);
            tradeOffs(line.path("tradeOffs"), Objects.requireNonNull(rod), first);
        }
        hold(own, line);
        Written.saved(shop, line, rod, first);
    }

    private static void pair(MaySay may, @Nullable Rod one, @Nullable Rod other) {
        if (one != null && other != null) {
            may.pair(one, other);
        }
    }

    private void tradeOffs(JsonNode tradeOffs, Rod one, Rod other) {
        for (JsonNode tradeOff : tradeOffs) {
            MaySay own = new MaySay(shop);
            String key = tradeOff.path("objective").asText();
            for (Objective objective : Objective.values()) {
                if (objective.key().equals(key)) {
                    own.pair(objective, one, other);
                    Written.tradeOff(shop, tradeOff, objective, one, other);
                }
            }
            hold(own, tradeOff);
        }
    }

    private void said(MaySay may, JsonNode breach, @Nullable Rod rod, List<String> parts) {
        verdicts(breach, rod, parts).forEach(may::verdict);
    }

    /** What this rule measures and allows: on the rod, or on a part that the brief alone refuses. */
    private List<Verdict> verdicts(JsonNode breach, @Nullable Rod rod, List<String> parts) {
        List<Verdict> all = new ArrayList<>();
        if (rod != null) {
            all.addAll(Judge.judge(rod, Rulebook.standard()));
        }
        for (String id : parts) {
            Part part = Objects.requireNonNull(shop.catalog().find(id));
            Protocol protocol = new Protocol();
            Rulebook.standard().onCandidate(shop.query().brief(), shop.catalog(), part, protocol);
            all.addAll(protocol.verdicts(Rulebook.standard()));
        }
        return all.stream()
                .filter(verdict -> verdict.rule().equals(breach.path("rule").asText())
                        && verdict.check().equals(breach.path("check").asText())
                        && !verdict.outcome().legal())
                .toList();
    }

    private @Nullable Rod rod(JsonNode build) throws Exception {
        return build.path("build").isObject() ? new MaySay(shop).read(build.path("build")) : null;
    }

    private void hold(MaySay may, JsonNode said) {
        int before = may.numbers();
        may.holds(said.path("sentence").asText());
        numbers += may.numbers() - before;
    }
}
