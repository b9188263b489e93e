package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.api.BugDetectors;
import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Forms and addresses of the page, filled with anything: a page or a refusal with its reason, never a fault of ours. */
class PageFuzzTest {
    private static final String PART = "ferrowick-saltglass-h20";

    /** Where forms go that ask for no proposal. */
    private static final List<String> FORMS =
            List.of("/brief", "/count", "/paste", "/weigh", "/jobs", "/jobs/1", "/stock/" + PART, "/change");

    /** Pages with forms, whose fields are the words to begin with. */
    private static final List<String> WITH_FORMS =
            List.of("/", "/brief", "/brief?start=brook", "/weigh", "/jobs", "/stock", "/stock/" + PART);

    private static final List<String> ADDRESSES = List.of(
            "/brief/", "/stock/", "/stock?find=", "/jobs/", "/assets/", "/builds/", "/why/", "/drawer/", "/out/");
    private static final int OUR_FAULT = 500;
    private static final int MOST_FIELDS = 30;

    /** What people and programs type that fits nowhere, and some that fits somewhere. */
    private static final List<String> TYPED = List.of(
            "",
            " ",
            "0",
            "-1",
            "1",
            "2",
            "7",
            "3,5",
            "2.5 kg",
            "10-30 g",
            "210 cm",
            "7'2\"",
            "½",
            "1/0",
            "1e308",
            "-1e-308",
            "NaN",
            "Infinity",
            "99999999999999999999",
            "0x10",
            "true",
            "on",
            "none",
            "full",
            "split",
            "spinning",
            "surf",
            "brook",
            "bench",
            "2026-02-30",
            "2026-05-31",
            "0000-00-00",
            PART,
            "no-such-part",
            "job",
            "accept",
            "cancel",
            "undo",
            "\u0000",
            "\u202egnirts",
            "\ud800",
            "é\u0301",
            "<script>alert(1)</script>",
            "'; drop table piece; --",
            "../../etc/passwd",
            "%00",
            "${7*7}",
            "@file",
            "{\"a\":",
            "[[[[[[[[[[[[[[[[[[[[[[",
            "null",
            "a".repeat(3000),
            "9".repeat(400));

    @TempDir
    static Path scratch;

    private static @Nullable ShopFolder shop;
    private static final HttpClient CLIENT = HttpClient.newBuilder()
            .cookieHandler(new CookieManager())
            .followRedirects(HttpClient.Redirect.NEVER)
            .connectTimeout(Duration.ofSeconds(5))
            .build();
    private static final List<String> FIELDS = new ArrayList<>();
    private static String seal = "";

    @BeforeAll
    static void open() throws Exception {
        shop = new ShopFolder(scratch, "bench");
        CLIENT.send(HttpRequest.newBuilder(shop.address()).build(), HttpResponse.BodyHandlers.discarding());
        TreeSet<String> names = new TreeSet<>();
        for (String path : WITH_FORMS) {
            String body =
                    sent(HttpRequest.newBuilder(URI.create(shop.at(path)))).body();
            Matcher named = Pattern.compile("name=\"([A-Za-z0-9_.-]+)\"").matcher(body);
            while (named.find()) {
                names.add(named.group(1));
            }
            Matcher sealed = Pattern.compile("name=\"seal\" value=\"([^\"]+)\"").matcher(body);
            seal = sealed.find() ? sealed.group(1) : seal;
        }
        names.remove("seal");
        FIELDS.addAll(names);
        if (seal.isEmpty() || FIELDS.size() < 30) {
            throw new IllegalStateException("fields found: " + FIELDS);
        }
    }

    @AfterAll
    static void close() {
        if (shop != null) {
            shop.close();
        }
    }

    @FuzzTest(maxDuration = "20m")
    void form(FuzzedDataProvider data) throws Exception {
        BugDetectors.allowNetworkConnections();
        String path = data.pickValue(FORMS);
        List<String> words = new ArrayList<>();
        for (int i = 0; i < MOST_FIELDS && data.remainingBytes() > 0; i++) {
            words.add(data.consumeInt(0, 9) == 0 ? data.consumeString(12) : data.pickValue(FIELDS));
            words.add(data.consumeBoolean() ? data.pickValue(TYPED) : data.consumeString(60));
        }
        fill(path, words);
    }

    @FuzzTest(maxDuration = "20m")
    void address(FuzzedDataProvider data) throws Exception {
        BugDetectors.allowNetworkConnections();
        look(data.pickValue(ADDRESSES), data.consumeRemainingAsString());
    }

    /** Seed 8: forms and addresses of words that people and programs type. */
    @Test
    void anyWordsAreTakenOrRefused() throws Exception {
        many(8L, 120);
    }

    @Test
    @Tag("long")
    void anyWordsAreTakenOrRefusedOften() throws Exception {
        many(9L, 20_000);
    }

    /** Found by fuzzing: what can't be read is the sender's, with a way out. */
    @Test
    void aReadingThatIsNoneIsRefusedWithAWayOut() throws Exception {
        for (String form : List.of("/weigh", "/stock/" + PART)) {
            HttpResponse<String> reply = sent(filled(
                    form, List.of("piece", PART, "weight", "a while", "do", "order", "pieces", "2", "due", "soon")));
            assertEquals(422, reply.statusCode(), reply.body());
            assertTrue(reply.body().contains("Maybe "), reply.body());
        }
    }

    private static void many(long seed, int requests) throws Exception {
        SplittableRandom random = new SplittableRandom(seed);
        for (int run = 0; run < requests; run++) {
            if (random.nextInt(5) == 0) {
                look(one(ADDRESSES, random), one(TYPED, random));
            } else {
                List<String> words = new ArrayList<>();
                for (int i = random.nextInt(MOST_FIELDS); i > 0; i--) {
                    words.add(one(FIELDS, random));
                    words.add(one(TYPED, random));
                }
                fill(one(FORMS, random), words);
            }
        }
    }

    private static String one(List<String> of, SplittableRandom random) {
        return of.get(random.nextInt(of.size()));
    }

    private static void fill(String path, List<String> words) throws Exception {
        told(path + " " + words, filled(path, words));
    }

    /** Names and values by turns. */
    private static HttpRequest.Builder filled(String path, List<String> words) {
        StringBuilder body = new StringBuilder("seal=").append(seal);
        for (int i = 0; i + 1 < words.size(); i += 2) {
            body.append('&').append(typed(words.get(i))).append('=').append(typed(words.get(i + 1)));
        }
        return HttpRequest.newBuilder(address(path))
                .header("Origin", address("").toString())
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(body.toString()));
    }

    private static void look(String path, String more) throws Exception {
        told(path + more, HttpRequest.newBuilder(address(path + typed(more))));
    }

    private static URI address(String path) {
        if (shop == null) {
            throw new IllegalStateException("the page is not open");
        }
        return URI.create(shop.at(path));
    }

    private static void told(String what, HttpRequest.Builder request) throws Exception {
        HttpResponse<String> reply = sent(request);
        if (reply.statusCode() >= OUR_FAULT) {
            throw new IllegalStateException(reply.statusCode() + " for " + what + "\n" + reply.body());
        }
    }

    private static HttpResponse<String> sent(HttpRequest.Builder request) throws IOException, InterruptedException {
        return CLIENT.send(request.timeout(Duration.ofSeconds(20)).build(), HttpResponse.BodyHandlers.ofString());
    }

    private static String typed(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
