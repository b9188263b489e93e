package withy.shop;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.Collections;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartFacts;
import withy.catalog.PartKind;

/**
 * The lists and the shop's memory as of one moment. Immutable. Without a memory it is the lists alone; with one, its counts, readings and newer
 * prices stand in their place.
 */
public final class Snapshot {
    private final Catalog lists;
    private final @Nullable SortedMap<String, Held> held;
    private final Experience experience;
    private final String hash;

    private Snapshot(Catalog lists, @Nullable SortedMap<String, Held> held, Experience experience, String hash) {
        this.lists = lists;
        this.held = held;
        this.experience = experience;
        this.hash = hash;
    }

    /**
     * What the memory says of one part.
     *
     * @param free pieces on the shelf promised to nobody
     * @param freeDue pieces on order promised to nobody, by the day they are due
     * @param weights scale readings, or null
     * @param price newest price noted, or null
     */
    record Held(
            int free,
            SortedMap<String, Integer> freeDue,
            @Nullable Weights weights,
            @Nullable Price price) {
        Held {
            freeDue = Collections.unmodifiableSortedMap(new TreeMap<>(freeDue));
        }

        /** Pieces that are free by a day; null = whenever they come. */
        int freeBy(@Nullable LocalDate day) {
            int pieces = free;
            for (Map.Entry<String, Integer> due : freeDue.entrySet()) {
                pieces += day == null || due.getKey().compareTo(day.toString()) <= 0 ? due.getValue() : 0;
            }
            return pieces;
        }
    }

    /** A noted price. */
    record Price(long minor, LocalDate day) {}

    /** The lists alone. */
    public static Snapshot of(Catalog lists) {
        return new Snapshot(lists, null, Experience.NONE, lists.hash());
    }

    static Snapshot of(Catalog lists, SortedMap<String, Held> held, List<Experience.Rod> finished) {
        SortedMap<String, Weights> weights = new TreeMap<>();
        held.forEach((part, one) -> {
            Weights seen = one.weights();
            if (seen != null) {
                weights.put(part, seen);
            }
        });
        Experience experience = Experience.of(lists, weights, finished);
        return new Snapshot(
                lists,
                Collections.unmodifiableSortedMap(new TreeMap<>(held)),
                experience,
                hash(lists, held, experience));
    }

    /** How far what was foretold and what was seen lay apart so far. */
    public Experience experience() {
        return experience;
    }

    /** Hash of lists and memory together. */
    public String hash() {
        return hash;
    }

    /** True where the shop's memory stands behind it. */
    public boolean remembered() {
        return held != null;
    }

    /** The parts with what is free on the shelf today. */
    public Catalog catalog() {
        return catalog(lists.asOf(), Map.of());
    }

    /** The parts with what is free by the day a brief wants its rod. */
    public Catalog forBrief(Brief brief) {
        return catalog(brief.wantedBy(), Map.of());
    }

    /**
     * The same for a job that already holds pieces.
     *
     * @param own pieces promised to it or built into it, by part: free for itself
     */
    public Catalog forJob(Brief brief, Map<String, Integer> own) {
        return catalog(brief.wantedBy(), own);
    }

    private Catalog catalog(@Nullable LocalDate day, Map<String, Integer> own) {
        if (held == null) {
            return lists;
        }
        Map<String, PartFacts> facts = new LinkedHashMap<>();
        for (Part part : lists.byId().values()) {
            Integer mine = own.get(part.id());
            facts.put(part.id(), facts(part, day, mine == null ? 0 : mine));
        }
        double work = lists.rates().workmanshipToleranceG() * experience.rods().factor();
        return lists.changed(facts, hash).withRates(lists.rates().withWorkmanshipTolerance(work));
    }

    private PartFacts facts(Part part, @Nullable LocalDate day, int own) {
        Held one = held == null ? null : held.get(part.id());
        double listedTol = part.facts().weightTolG() * experience.factor(part.kind());
        PartFacts facts = part.facts()
                .withStock(own + (one == null ? 0 : one.freeBy(day)))
                .withTolerance(Math.round(listedTol * 1000) / 1000.0);
        if (one == null) {
            return facts;
        }
        Weights weights = one.weights();
        if (weights != null) {
            double tolerance = weights.spreadKnown() ? weights.toleranceG() : facts.weightTolG();
            facts = facts.withScale(weights.meanG(), tolerance);
        }
        Price price = one.price();
        LocalDate listed = facts.priceDate();
        return price == null || listed != null && listed.isAfter(price.day())
                ? facts
                : facts.withPrice(price.minor(), price.day());
    }

    /**
     * Day so many further pieces are here: from the shelf, from what is on its way, or ordered today.
     *
     * @return the day, or null where they can't be had
     */
    public @Nullable LocalDate delivered(String part, int pieces, LocalDate today) {
        return delivered(part, pieces, today, true);
    }

    /** The same as if the shelf were empty. */
    public @Nullable LocalDate delivery(String part, int pieces, LocalDate today) {
        return delivered(part, pieces, today, false);
    }

    private @Nullable LocalDate delivered(String part, int pieces, LocalDate today, boolean shelf) {
        Part listed = lists.find(part);
        if (pieces <= 0) {
            return today;
        }
        if (listed == null) {
            return null;
        }
        Held one = held == null ? null : held.get(part);
        int here = !shelf ? 0 : held == null ? listed.facts().stock() : one == null ? 0 : one.free();
        if (pieces <= here) {
            return today;
        }
        Integer lead = listed.facts().leadDays();
        LocalDate ordered = lead == null ? null : today.plusDays(lead);
        for (Map.Entry<String, Integer> due : one == null
                ? Map.<String, Integer>of().entrySet()
                : one.freeDue().entrySet()) {
            here += due.getValue();
            LocalDate day = LocalDate.parse(due.getKey());
            if (pieces <= here) {
                LocalDate later = day.isBefore(today) ? today : day;
                return ordered == null || later.isBefore(ordered) ? later : ordered;
            }
        }
        return ordered;
    }

    /** True for what is used by amount: one spool or pack serves many rods and is promised to none. */
    public static boolean shared(PartKind kind) {
        return kind == PartKind.THREAD || kind == PartKind.FINISH || kind == PartKind.ADHESIVE;
    }

    private static String hash(Catalog lists, SortedMap<String, Held> held, Experience experience) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update((lists.hash() + "\n" + lists.asOf() + "\n").getBytes(StandardCharsets.UTF_8));
            digest.update((experience.rods() + "\n").getBytes(StandardCharsets.UTF_8));
            held.forEach((part, one) -> digest.update((part + " " + one + "\n").getBytes(StandardCharsets.UTF_8)));
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
