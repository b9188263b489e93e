package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.search.Proposal;

/** While it is chosen again, the best of the builds before that keeps to what is asked now stands in, and says that it does. */
class StandsInTest {
    private static final String SEAT = "marrick-tideway-r-18";

    @TempDir
    private Path scratch;

    private final CountDownLatch held = new CountDownLatch(1);
    private final AtomicReference<CountDownLatch> gate = new AtomicReference<>(new CountDownLatch(0));

    private ShopFolder shop() throws Exception {
        CountDownLatch free = new CountDownLatch(0);
        return new ShopFolder(scratch, "bench", catalog -> new ComingTest.Slow(catalog, free, free) {
            @Override
            public List<Proposal> offer(Query query, Watch watch, Consumer<Proposal> told) {
                await(gate.get());
                return super.offer(query, watch, told);
            }
        });
    }

    private static List<Integer> cents(String body) {
        List<Integer> prices = new ArrayList<>();
        Matcher price =
                Pattern.compile("<strong>([0-9]+)\\.([0-9]{2}) EUR</strong>").matcher(body);
        while (price.find()) {
            prices.add(Integer.parseInt(price.group(1) + price.group(2)));
        }
        return prices;
    }

    /** Ids of the parts of a build. */
    private static Set<String> parts(String body, int rank) {
        String drawer = body.split("id=\"parts-" + rank + "\"", -1)[1].split("</details>", -1)[0];
        Set<String> parts = new TreeSet<>();
        Matcher part = Pattern.compile("name=\"part\" value=\"([^\"]+)\"").matcher(drawer);
        while (part.find()) {
            parts.add(part.group(1));
        }
        return parts;
    }

    @Test
    void theCheapestOfTheThreeStandsInWhereOnlyThePriceCounts() throws Exception {
        try (ShopFolder shop = shop()) {
            Caller page = new Caller(shop);
            String step = page.begun("estuary");
            List<Integer> three = cents(page.whole("/builds/" + step));
            assertEquals(3, three.size());
            assertTrue(three.get(0) > Collections.min(three), "another is cheaper: " + three);
            gate.set(held);
            List<String> form = new ArrayList<>(List.of("once", "a", "step", step, "do", "priorities"));
            for (String aim : List.of("weight", "balance", "swingWeight", "price", "style", "durability")) {
                form.addAll(List.of("priorities." + aim, aim.equals("price") ? "9" : "0"));
            }
            String cheap = page.form("/change", form.toArray(String[]::new)).location();
            String body = page.get(cheap).body();
            assertEquals(List.of(Collections.min(three)), cents(body));
            assertTrue(body.contains("Choosing again: the best build is being looked for"), body);
            assertTrue(body.contains("Known from before; it keeps to all that is asked now."), body);
            assertTrue(body.contains("data-rest=\"best\"") && body.contains("http-equiv=\"refresh\""), body);
            assertTrue(body.contains("id=\"priorities-weight\""), "sliders stay under the hand");
            for (String unsure :
                    List.of("Best for what was asked", "Build 1 now", "Take build", "Only keep the offer", "Proven")) {
                assertFalse(body.contains(unsure), unsure);
            }
            held.countDown();
            String best = page.get(cheap + "?show=best").body();
            assertTrue(best.contains("Best for what was asked") && best.contains("Build 1 now"), best);
            assertTrue(cents(best).get(0) <= Collections.min(three), "the best is no dearer");
            assertFalse(page.whole(cheap).contains("Known from before"));
        }
    }

    /** What is refused now is in none that stands in, and where all of them break a wish none does. */
    @Test
    void whatBreaksAWishStandsInNowhere() throws Exception {
        try (ShopFolder shop = shop()) {
            Caller page = new Caller(shop);
            String step = page.begun("estuary");
            String whole = page.whole("/builds/" + step);
            assertFalse(whole.contains("value=\"" + SEAT + "\""), "none of them has it");
            gate.set(held);
            String kept = page.form("/change", "once", "a", "step", step, "do", "keep", "part", SEAT)
                    .location();
            String body = page.get(kept).body();
            assertEquals(List.of(), cents(body));
            assertTrue(body.contains("Looking for the best build"), body);
            String refused = parts(whole, 1).stream()
                    .filter(part -> !parts(whole, 2).contains(part))
                    .findFirst()
                    .orElseThrow();
            String never = page.form("/change", "once", "b", "step", step, "do", "never", "part", refused)
                    .location();
            body = page.get(never).body();
            assertEquals(1, cents(body).size(), body);
            assertTrue(cents(whole).subList(1, 3).containsAll(cents(body)), "one of the others");
            assertFalse(parts(body, 1).contains(refused), refused);
            held.countDown();
        }
    }
}
