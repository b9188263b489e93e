package withy.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Currency;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.app.OfferSheet.Choice;
import withy.shop.Job;

/** An offer as text: kept with a job, and inside the HTML file that is sent, from which it can be read again. */
public final class OfferFile {
    private static final String OPEN = "<script type=\"application/json\" id=\"offer\">";
    private static final String CLOSE = "</script>";
    private static final int MOST_BUILDS = 3;
    private static final ObjectMapper MAPPER = new ObjectMapper()
            .configure(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES, true)
            .configure(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES, true);

    static {
        MAPPER.getFactory()
                .setStreamReadConstraints(
                        StreamReadConstraints.builder().maxNestingDepth(20).build());
    }

    private OfferFile() {}

    /** The offer is none: told in words. */
    public static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;

        Unreadable(String problem, @Nullable Exception cause) {
            super(problem, cause);
        }
    }

    /** The offer as JSON. */
    public static String json(OfferSheet offer) {
        return AnswerJson.write(offer);
    }

    /** The offer as an element of a page: data that no browser runs or shows, in plain letters without a sign that could end it early. */
    public static String element(OfferSheet offer) {
        StringBuilder safe = new StringBuilder();
        for (char letter : json(offer).toCharArray()) {
            boolean plain = letter == '\n' || letter >= ' ' && letter <= '~';
            if (plain && letter != '<' && letter != '>' && letter != '&') {
                safe.append(letter);
            } else {
                safe.append(String.format(Locale.ROOT, "\\u%04x", (int) letter));
            }
        }
        return OPEN + "\n" + safe + "\n" + CLOSE;
    }

    /** True where a text is a page of ours with an offer in it. */
    public static boolean isPage(String text) {
        return text.contains(OPEN);
    }

    /** The offer in a page. */
    public static OfferSheet ofPage(String page) throws Unreadable {
        int from = page.indexOf(OPEN) + OPEN.length();
        int to = page.indexOf(CLOSE, from);
        if (to < 0) {
            throw new Unreadable("the page is cut off", null);
        }
        return read(page.substring(from, to));
    }

    /** An offer from its JSON; whatever would not print is refused. */
    public static OfferSheet read(String json) throws Unreadable {
        try {
            JsonNode tree = MAPPER.readTree(json);
            int schema = tree.path("schema").asInt(0);
            if (schema > Answer.SCHEMA) {
                throw new Unreadable(
                        "format " + schema + " is newer than this program, which reads " + Answer.SCHEMA, null);
            }
            if (tree instanceof ObjectNode older && !older.has("name")) {
                older.put("name", "");
            }
            OfferSheet offer = MAPPER.treeToValue(tree, OfferSheet.class);
            check(offer);
            return offer;
        } catch (JsonProcessingException | IllegalArgumentException | DateTimeException | NullPointerException e) {
            throw new Unreadable("the offer in it was changed by hand or is damaged", e);
        }
    }

    /** Last day an offer holds by its paper; null where it was given before papers were kept. */
    static @Nullable String validUntil(Job.Offer offer) {
        String paper = offer.paper();
        JsonNode day =
                paper == null ? MissingNode.getInstance() : JsonText.tree(paper).path("validUntil");
        return day.isTextual() ? day.asText() : null;
    }

    /** True where that day is over. */
    static boolean lapsed(Job.Offer offer, LocalDate today) {
        String day = validUntil(offer);
        return day != null && day.compareTo(today.toString()) < 0;
    }

    private static void check(OfferSheet offer) {
        LocalDate.parse(offer.date());
        LocalDate.parse(offer.validUntil());
        if (offer.builds().isEmpty() || offer.builds().size() > MOST_BUILDS) {
            throw new IllegalArgumentException(offer.builds().size() + " builds");
        }
        for (Choice choice : offer.builds()) {
            LocalDate.parse(choice.ready());
            Currency.getInstance(choice.currency());
            choice.against().forEach(other -> offer.build(other.rank()));
            MachineSheet.Outline outline = choice.outline();
            if (outline.blank().size() < 2 || outline.toMm() <= outline.fromMm()) {
                throw new IllegalArgumentException("no rod");
            }
        }
    }
}
