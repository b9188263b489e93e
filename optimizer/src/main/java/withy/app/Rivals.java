package withy.app;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import withy.explain.Phrases;
import withy.shop.Job;
import withy.shop.Shop;

/** Parts of an offer that customers of other jobs were offered too, where there are too few for all. */
final class Rivals {
    private Rivals() {}

    /** A sentence for each such part, in order of the ids. */
    static List<String> of(Workshop workshop, Shop shop, Job job, Answer answer) {
        Map<String, Integer> own = pieces(JsonText.tree(AnswerJson.write(answer)));
        Map<String, String> others = new LinkedHashMap<>();
        Map<String, Integer> asked = new TreeMap<>(own);
        for (Job other : shop.jobs().all()) {
            if (other.state() == Job.State.OFFERED && other.id() != job.id()) {
                List<Job.Offer> offers = shop.jobs().file(other.id()).offers();
                Job.Offer last = offers.get(offers.size() - 1);
                if (OfferFile.lapsed(last, workshop.day())) {
                    continue;
                }
                pieces(JsonText.tree(last.answer())).forEach((part, count) -> {
                    asked.merge(part, count, Integer::sum);
                    others.merge(part, Long.toString(other.id()), (a, b) -> a + ", " + b);
                });
            }
        }
        List<String> warnings = new ArrayList<>();
        own.forEach((part, count) -> {
            int free = shop.stock().level(part).free();
            Integer all = asked.get(part);
            String rivals = others.get(part);
            if (rivals != null && all != null && all > free) {
                warnings.add(Phrases.of("text.job.rivals", workshop.name(part), part, rivals, free));
            }
        });
        return warnings;
    }

    /** Most pieces of each part that one build of an answer takes. */
    private static Map<String, Integer> pieces(JsonNode answer) {
        Map<String, Integer> most = new TreeMap<>();
        for (JsonNode build : answer.path("builds")) {
            Map<String, Integer> one = new TreeMap<>();
            build.path("parts")
                    .forEach(p ->
                            one.merge(p.path("part").asText(), p.path("count").intValue(), Integer::sum));
            one.forEach((part, count) -> most.merge(part, count, Math::max));
        }
        most.values().removeIf(count -> count == 0);
        return most;
    }
}
