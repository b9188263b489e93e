package withy.oracle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.brief.Objective;
import withy.catalog.Action;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Lab;
import withy.catalog.Material;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.Rates;
import withy.catalog.ReelSeat;
import withy.catalog.RingMaterial;
import withy.catalog.RodType;
import withy.catalog.SeatEnd;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Solver.Query;
import withy.rules.Rulebook;

/** A seeded small catalogue with a brief, trimmed to at most a number of builds. */
public final class SmallShop {
    /** Every so many seeds the line's clearance decides the count of guides. */
    private static final int CLEARANCE = 5;

    private final Random random;
    private final RodType type;
    private final SmallParts make;
    private final Rates rates;
    private List<Part> parts;
    private Brief brief;

    private SmallShop(long seed) {
        this.random = new Random(seed * 7919 + 13);
        boolean clearance = seed % CLEARANCE == 1;
        this.type = random.nextInt(6) < (clearance ? 5 : 1) ? RodType.CASTING : RodType.SPINNING;
        this.make = new SmallParts(random, type);
        String finish = makeParts();
        Rates base = Fixtures.legal().catalog().rates();
        Rates housed = Changed.with(base, "houseFinish", finish);
        this.rates = Changed.with(
                housed,
                "houseAdhesive",
                make.parts().stream()
                        .filter(part -> part.kind() == PartKind.ADHESIVE)
                        .findFirst()
                        .orElseThrow()
                        .id());
        this.parts = new ArrayList<>(make.parts());
        this.brief = Fixtures.legal().theBrief();
        makeBrief();
        set("guidesByClearance", clearance);
        if (clearance) {
            set("dragKg", seed % 2 == 0 ? 1.0 : 0.4);
        }
    }

    /**
     * The question of a seed: the brief's plain one over a catalogue of at most so many builds.
     *
     * @param catalog the catalogue
     * @param query the question
     */
    public record Case(Catalog catalog, Query query) {
        Case with(Catalog other) {
            return new Case(other, query);
        }
    }

    public static Case of(long seed, long mostBuilds) {
        SmallShop shop = new SmallShop(seed);
        shop.trim(mostBuilds);
        return new Case(shop.catalog(), shop.query());
    }

    private Catalog catalog() {
        return new Catalog(rates, Fixtures.TODAY, "small", parts);
    }

    private Query query() {
        return Query.of(brief, Rulebook.standard());
    }

    private String makeParts() {
        boolean casting = type == RodType.CASTING;
        double length = Math.round(make.between(casting ? 1650 : 1500, casting ? 1780 : 1635));
        make.core(length, 1 + random.nextInt(3), "grey", RingMaterial.SILICON_CARBIDE);
        make.adhesive();
        String finish = make.finish().id();
        make.extras();
        int blanks = random.nextInt(3);
        for (int i = 0; i < blanks; i++) {
            make.blank(length + 10 * random.nextInt(2), 1 + random.nextInt(3));
        }
        int seats = random.nextInt(3);
        for (int i = 0; i < seats; i++) {
            ReelSeat seat = make.seat();
            if (random.nextBoolean()) {
                make.hood(seat.size());
            }
            make.arbor(seat.boreMm());
        }
        for (Grip.Place place : Grip.Place.values()) {
            int grips = random.nextInt(3);
            for (int i = 0; i < grips; i++) {
                make.grip(place);
            }
        }
        int caps = random.nextInt(3);
        for (int i = 0; i < caps; i++) {
            make.cap(random.nextInt(3) == 0);
        }
        int checks = random.nextInt(3);
        for (int i = 0; i < checks; i++) {
            make.check(make.between(170, 330));
        }
        train("grey", RingMaterial.SILICON_CARBIDE);
        if (random.nextInt(3) == 0) {
            train("black", random.nextBoolean() ? RingMaterial.ALUMINA : RingMaterial.SILICON_CARBIDE);
        }
        if (random.nextBoolean()) {
            make.keeper();
        }
        int threads = random.nextInt(3);
        for (int i = 0; i < threads; i++) {
            make.thread(i == 1 ? "B" : "A");
        }
        if (random.nextInt(3) == 0) {
            make.finish();
        }
        if (random.nextInt(4) == 0) {
            make.adhesive();
        }
        if (random.nextInt(3) == 0) {
            make.decal();
        }
        return finish;
    }

    private void train(String finish, RingMaterial ring) {
        double[] stripper = {12, 16, 20};
        double[] reducer = {7, 8, 10};
        double[] runner = {5, 5.5, 6, 7};
        int guides = random.nextInt(4);
        for (int i = 0; i < guides; i++) {
            double[] sizes = i == 0 ? runner : i == 1 ? reducer : stripper;
            make.guide(sizes[random.nextInt(sizes.length)], finish, ring);
        }
        make.tips(finish, ring);
    }

    private void set(String path, Object value) {
        brief = Changed.with(brief, path, value);
    }

    private void makeBrief() {
        set("rodType", type);
        set("twoHanded", random.nextInt(5) == 0);
        Blank core = (Blank) parts.get(0);
        double section = core.sectionLengthsMm().get(0);
        boolean tight = random.nextInt(4) == 0;
        set("lengthMinMm", tight ? core.lengthMm() + make.between(4, 12) : 1400.0);
        set("lengthMaxMm", random.nextInt(4) == 0 ? core.lengthMm() + make.between(11, 17) : 1900.0);
        set("piecesMin", 1);
        set("piecesMax", 3);
        set("packedMaxMm", random.nextInt(4) == 0 ? section + make.between(8, 17) : 1900.0);
        int asked = 1 + random.nextInt(4);
        set("durabilityClass", asked == 4 && random.nextBoolean() ? 3 : asked);
        set("palmMm", random.nextBoolean() ? 80.0 : 90.0);
        double reach = Math.round(make.between(205, 250));
        set("reachMinMm", reach);
        set("reachMaxMm", reach + 5 + random.nextInt(12));
        set("reel.lipDiameterMm", make.between(34, 41));
        set("reel.massG", make.between(170, 300));
        set("budgetMinor", null);
        set("wantedBy", random.nextBoolean() ? null : LocalDate.of(2026, 3, 20));
        priorities();
        double[][] zones = {{40, 110}, {0, 20}, {60, 75}, {120, 170}, {180, 260}, {260, 330}};
        double[] zone = zones[random.nextInt(zones.length)];
        set("zoneNearMm", zone[0]);
        set("zoneFarMm", zone[1]);
        set("counterweightAsked", random.nextInt(6) == 0);
        look();
        handleWishes();
        partWishes();
    }

    private void priorities() {
        double[] values = {0, 0, 1, 1, 2, 5};
        Map<Objective, Double> priorities = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            priorities.put(objective, values[random.nextInt(values.length)]);
        }
        set("priorities", priorities);
    }

    private void look() {
        String[] themes = {"", "classic", "modern", "natural", "stealth"};
        set(
                "look",
                new Brief.Look(
                        themes[random.nextInt(themes.length)],
                        random.nextBoolean() ? Set.of(Material.CORK) : Set.of(),
                        Set.of(),
                        random.nextBoolean() ? List.of(new Lab(40, -6, 22)) : List.of(),
                        random.nextInt(3) == 0 ? "A. Angler" : ""));
    }

    private void handleWishes() {
        set(
                "handle",
                new Brief.Handle(
                        wish(HandleForm.values()[random.nextInt(2)]),
                        wish(random.nextBoolean()),
                        nice(random.nextBoolean()),
                        nice(SeatEnd.values()[random.nextInt(2)]),
                        wish(random.nextBoolean()),
                        nice(Action.values()[random.nextInt(5)]),
                        random.nextInt(3) > 0));
    }

    /** No wish, a nice one or, now and then, a hard one. */
    private <T> @org.jspecify.annotations.Nullable Wish<T> wish(T value) {
        int draw = random.nextInt(12);
        return draw == 0 ? new Wish<>(value, true, 0) : draw < 6 ? new Wish<>(value, false, make.between(0, 4)) : null;
    }

    private <T> @org.jspecify.annotations.Nullable Wish<T> nice(T value) {
        return random.nextInt(3) == 0 ? new Wish<>(value, false, make.between(0, 4)) : null;
    }

    private void partWishes() {
        List<PartWish> insisted = new ArrayList<>();
        List<PartWish> refused = new ArrayList<>();
        Set<String> owned = new TreeSet<>();
        if (random.nextInt(3) == 0) {
            insisted.add(new PartWish(any().id(), random.nextInt(3) == 0, make.between(0.2, 3)));
        }
        if (random.nextInt(3) == 0) {
            refused.add(new PartWish(any().id(), false, make.between(0.2, 3)));
        }
        if (random.nextInt(4) == 0) {
            owned.add(any().id());
        }
        set("insisted", insisted);
        set("refused", refused);
        set("owned", owned);
    }

    private Part any() {
        return parts.get(random.nextInt(parts.size()));
    }

    /** Takes parts out until there are few enough builds. */
    private void trim(long mostBuilds) {
        while (new Enumeration(catalog(), query(), true).count() > mostBuilds) {
            List<Part> extras = parts.stream().filter(this::trimmable).toList();
            if (!extras.isEmpty()) {
                Part part = extras.get(random.nextInt(extras.size()));
                parts = new ArrayList<>(parts.stream().filter(p -> p != part).toList());
            } else if (brief.reachMaxMm() > brief.reachMinMm()) {
                double foot = Math.ceil(brief.reachMinMm() / 5) * 5;
                set("reachMinMm", foot);
                set("reachMaxMm", foot);
            } else {
                return;
            }
        }
    }

    private boolean trimmable(Part part) {
        return !make.ofCore(part)
                && brief.insisted().stream().noneMatch(wish -> wish.partId().equals(part.id()));
    }
}
