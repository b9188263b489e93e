package withy.catalog;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * One immutable reading of the shop: rates and parts with their free stock and their weights on one day. Parts keep the order of their files;
 * nothing that is chosen may depend on that order.
 */
public final class Catalog {
    private final Rates rates;
    private final LocalDate asOf;
    private final String hash;
    private final Map<String, Part> byId;
    private final Map<PartKind, List<Part>> byKind;
    private final Map<PartKind, List<Part>> inContentOrder = new ConcurrentHashMap<>();

    /**
     * @param rates the shop's rates
     * @param asOf the day stock and lead times are counted from
     * @param hash hash of the parsed content, lower-case hexadecimal
     * @param parts all parts; ids must be unique
     */
    public Catalog(Rates rates, LocalDate asOf, String hash, Collection<? extends Part> parts) {
        this.rates = rates;
        this.asOf = asOf;
        this.hash = hash;
        Map<String, Part> ids = new LinkedHashMap<>();
        Map<PartKind, List<Part>> kinds = new EnumMap<>(PartKind.class);
        for (PartKind kind : PartKind.values()) {
            kinds.put(kind, new ArrayList<>());
        }
        for (Part part : parts) {
            if (ids.put(part.id(), part) != null) {
                throw new IllegalArgumentException("part id twice in one catalogue: " + part.id());
            }
            listOf(kinds, part.kind()).add(part);
        }
        kinds.replaceAll((kind, list) -> List.copyOf(list));
        this.byId = Collections.unmodifiableMap(ids);
        this.byKind = Collections.unmodifiableMap(kinds);
    }

    /** The shop's rates. */
    public Rates rates() {
        return rates;
    }

    /** The day stock and lead times are counted from. */
    public LocalDate asOf() {
        return asOf;
    }

    /** Hash of the parsed content, told in answers and offers. */
    public String hash() {
        return hash;
    }

    /** Every part by id. */
    public Map<String, Part> byId() {
        return byId;
    }

    /** The part of this id, or null. */
    public @Nullable Part find(String id) {
        return byId.get(id);
    }

    /** All parts of a kind. */
    public List<Part> all(PartKind kind) {
        return listOf(byKind, kind);
    }

    /** All parts of a kind, ordered by what they are: the same however the files lie. Put in order when first asked for. */
    public List<Part> inContentOrder(PartKind kind) {
        return inContentOrder.computeIfAbsent(kind, any -> ContentOrder.sorted(all(kind)));
    }

    /** All parts of a record type. */
    public <P extends Part> List<P> all(PartKind kind, Class<P> type) {
        return all(kind).stream().map(type::cast).toList();
    }

    /**
     * The same reading with other facts of some parts.
     *
     * @param facts what changes, by id; ids that are not in the catalogue are left aside
     * @param otherHash hash of the whole
     */
    public Catalog changed(Map<String, PartFacts> facts, String otherHash) {
        List<Part> parts = new ArrayList<>();
        for (Part part : byId.values()) {
            PartFacts other = facts.get(part.id());
            parts.add(other == null || other.equals(part.facts()) ? part : part.with(other));
        }
        return new Catalog(rates, asOf, otherHash, parts);
    }

    /** The same parts under other rates. */
    public Catalog withRates(Rates other) {
        return new Catalog(other, asOf, hash, byId.values());
    }

    /** The parts of these ids alone, in their order. */
    public Catalog only(Set<String> ids) {
        List<Part> parts = new ArrayList<>();
        for (Part part : byId.values()) {
            if (ids.contains(part.id())) {
                parts.add(part);
            }
        }
        return new Catalog(rates, asOf, hash, parts);
    }

    /** How many parts there are. */
    public int size() {
        return byId.size();
    }

    private static List<Part> listOf(Map<PartKind, List<Part>> kinds, PartKind kind) {
        List<Part> list = kinds.get(kind);
        if (list == null) {
            throw new IllegalStateException("no list for " + kind);
        }
        return list;
    }
}
