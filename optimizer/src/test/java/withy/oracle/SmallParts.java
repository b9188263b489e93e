package withy.oracle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import withy.catalog.Action;
import withy.catalog.Adhesive;
import withy.catalog.Arbor;
import withy.catalog.Blank;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Decal;
import withy.catalog.FerruleKind;
import withy.catalog.Finish;
import withy.catalog.Gloss;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Hood;
import withy.catalog.Keeper;
import withy.catalog.Lab;
import withy.catalog.Material;
import withy.catalog.Part;
import withy.catalog.PartFacts;
import withy.catalog.ReelSeat;
import withy.catalog.RingMaterial;
import withy.catalog.RodType;
import withy.catalog.SeatEnd;
import withy.catalog.TipTop;
import withy.catalog.WrapThread;

/** Random parts that mostly fit each other on a light blank; invented, sizes as the trade table has them (common practice). */
final class SmallParts {
    private static final Material[] GRIP_MATERIALS = {Material.CORK, Material.EVA, Material.RUBBER_CORK};
    private static final Lab[] COLOURS = {
        new Lab(18, 0, -1), new Lab(70, 8, 26), new Lab(40, -6, 22), new Lab(78, 0, 1), new Lab(30, 30, 15)
    };

    private final Random random;
    private final RodType type;
    private final List<Part> parts = new ArrayList<>();
    private final double butt;
    private int made;
    private int core = -1;

    SmallParts(Random random, RodType type) {
        this.random = random;
        this.type = type;
        this.butt = 10.5 + random.nextDouble() * 1.5;
    }

    List<Part> parts() {
        return parts;
    }

    /** Outer diameter all the blanks have about here, mm. */
    private double od(double xMm) {
        return butt - 0.0058 * xMm;
    }

    double between(double low, double high) {
        return low + random.nextDouble() * (high - low);
    }

    private static double round(double value, int perUnit) {
        return Math.round(value * perUnit) / (double) perUnit;
    }

    PartFacts facts(double euros, double weightG, Material material) {
        String id = "p" + (made + 11) + "-" + random.nextInt(1000);
        made++;
        boolean extra = core >= 0;
        int stock = 1 + random.nextInt(20);
        return new PartFacts(
                id,
                "Tarn",
                "M" + made,
                Math.round(euros * 100 * between(0.7, 1.4)),
                LocalDate.of(2026, 1, 15),
                1,
                stock,
                extra && random.nextInt(4) == 0 ? null : Integer.valueOf(random.nextInt(extra ? 60 : 10)),
                "",
                "",
                round(weightG * between(0.8, 1.25), 100) + 0.01,
                round(weightG * 0.03, 1000),
                random.nextInt(8) == 0 ? Double.valueOf(round(weightG, 100) + 0.02) : null,
                material,
                random.nextInt(6) == 0 ? null : COLOURS[random.nextInt(COLOURS.length)],
                random.nextInt(6) == 0 ? null : Gloss.values()[random.nextInt(3)],
                "",
                extra ? 3 + random.nextInt(3) : 4 + random.nextInt(2),
                extra ? 2 + random.nextInt(3) : 4);
    }

    /** A set of parts that make a legal rod, to be made first; {@link #extras} keeps it from being trimmed. */
    void core(double lengthMm, int sections, String finish, RingMaterial ring) {
        blank(lengthMm, sections);
        parts.add(new ReelSeat(
                facts(25, 18, Material.PLASTIC),
                type == RodType.CASTING,
                16,
                round(od(170) + 1.2, 10),
                96,
                48,
                22.5,
                22,
                21,
                48,
                62,
                3.5,
                13,
                "m24",
                random.nextBoolean() ? SeatEnd.REAR : SeatEnd.FRONT,
                3,
                true,
                true,
                random.nextBoolean(),
                true,
                "m24"));
        coreGrip(Grip.Place.REAR, 60, od(150));
        coreGrip(Grip.Place.BUTT, 70, od(0));
        coreGrip(Grip.Place.FULL, 330, od(0));
        parts.add(new ButtCap(facts(2, 3.5, Material.ALUMINIUM), round(butt + 0.5, 10), 22, 5, false, 0));
        parts.add(new Check(facts(2.4, 1.1, Material.ALUMINIUM), round(od(275) + 0.2, 100), 20, 3, false));
        guide(16, finish, ring);
        guide(8, finish, ring);
        guide(5.5, finish, ring);
        tips(finish, ring);
        thread("A");
    }

    private void coreGrip(Grip.Place place, double lengthMm, double bore) {
        double shortest = place == Grip.Place.FULL ? 100 : lengthMm - 10;
        parts.add(new Grip(
                facts(8, lengthMm * 0.085, Material.CORK),
                place,
                lengthMm,
                shortest,
                22,
                22.5,
                22,
                round(bore - 0.5, 10),
                round(bore + 3, 10),
                true,
                true,
                false,
                ""));
    }

    /** What comes now may be trimmed. */
    void extras() {
        core = parts.size();
    }

    boolean ofCore(Part part) {
        int index = parts.indexOf(part);
        return index >= 0 && index < core;
    }

    void tips(String finish, RingMaterial ring) {
        for (Part part : List.copyOf(parts)) {
            if (part instanceof Blank blank) {
                tip(blank.tipOdMm(), 5, core < 0 ? between(0.05, 0.35) : between(0.005, 0.42), finish, ring);
            }
        }
    }

    void blank(double lengthMm, int sections) {
        double overlap = sections == 1 ? 0 : 50;
        double section = (lengthMm + (sections - 1) * overlap) / sections;
        List<Double> lengths = new ArrayList<>();
        List<Blank.OdStation> stations = new ArrayList<>();
        double slope = (butt - between(1.5, 2.1)) / lengthMm;
        stations.add(new Blank.OdStation(0, round(butt, 100)));
        double shift = 0;
        for (int i = 0; i < sections; i++) {
            lengths.add(section);
            double end = i == sections - 1 ? lengthMm : (i + 1) * section - i * overlap;
            double middle = end - section / 2;
            stations.add(new Blank.OdStation(middle, round(butt - slope * middle + shift, 100)));
            stations.add(new Blank.OdStation(end, round(butt - slope * end + shift, 100)));
            if (i < sections - 1) {
                shift = i == sections - 2 ? 0 : 0.8;
                stations.add(new Blank.OdStation(end, round(butt - slope * end + shift, 100)));
            }
        }
        if (sections == 1) {
            stations.add(1, new Blank.OdStation(lengthMm / 4, round(butt - slope * lengthMm / 4 + 0.2, 100)));
        }
        Double balance = random.nextBoolean() ? Double.valueOf(Math.round(lengthMm * between(0.36, 0.43))) : null;
        parts.add(new Blank(
                facts(80, lengthMm * 0.022, Material.CARBON),
                Set.of(type),
                lengthMm,
                lengths,
                sections == 1 ? FerruleKind.NONE : FerruleKind.PUT_OVER,
                overlap,
                sections == 1 ? 0 : 2.0,
                stations,
                null,
                balance,
                Action.values()[random.nextInt(5)],
                "light",
                between(1, 4),
                between(14, 20),
                null,
                null,
                between(1, 3),
                between(5, 7),
                0.5,
                1.2,
                2.0,
                null,
                null));
    }

    ReelSeat seat() {
        boolean casting = type == RodType.CASTING;
        ReelSeat seat = new ReelSeat(
                facts(25, 18, random.nextBoolean() ? Material.CARBON_FILLED : Material.PLASTIC),
                casting,
                16 + random.nextInt(2),
                round(butt + between(-0.6, 4.5), 10),
                round(between(88, 112), 1),
                round(between(42, 54), 1),
                round(between(21, 24), 10),
                round(between(20.5, 24), 10),
                round(between(19.5, 22.5), 10),
                48,
                62,
                3.5,
                13,
                "m24",
                random.nextBoolean() ? SeatEnd.REAR : SeatEnd.FRONT,
                round(between(2, 5), 10),
                random.nextInt(3) > 0,
                random.nextBoolean(),
                random.nextBoolean(),
                random.nextBoolean(),
                "m24");
        parts.add(seat);
        return seat;
    }

    void hood(int size) {
        parts.add(new Hood(
                facts(9, 3, Material.ALUMINIUM), "m24", size, round(between(20.5, 23), 10), random.nextBoolean()));
    }

    void arbor(double boreMm) {
        parts.add(new Arbor(
                facts(2, 2, random.nextBoolean() ? Material.FOAM : Material.CORK),
                round(boreMm + between(-0.15, 1.5), 10),
                round(between(5, 9), 10),
                random.nextInt(4) == 0 ? 30 : 100,
                0.8));
    }

    void grip(Grip.Place place) {
        double length = switch (place) {
            case REAR -> between(55, 75);
            case BUTT -> between(60, 80);
            case FORE -> between(35, 50);
            case FULL -> between(280, 340);
        };
        int cuts = random.nextInt(3);
        double shortest = place == Grip.Place.FULL ? 100 : length - 5 * cuts;
        double od = between(21.5, 24);
        double bore = place == Grip.Place.FORE ? od(330) : place == Grip.Place.REAR ? od(150) : od(20);
        parts.add(new Grip(
                facts(8, length * 0.085, GRIP_MATERIALS[random.nextInt(random.nextInt(3) == 0 ? 3 : 1)]),
                place,
                round(length, 2),
                round(shortest, 1),
                round(od + between(-0.8, 0.8), 10),
                round(od, 10),
                round(od + between(-0.8, 0.8), 10),
                round(bore * between(0.82, 1.06), 10),
                round(bore + 3, 10),
                random.nextInt(4) > 0,
                random.nextInt(4) > 0,
                (place == Grip.Place.BUTT || place == Grip.Place.FULL) && random.nextInt(4) == 0,
                place == Grip.Place.FORE && random.nextInt(3) == 0 ? "m24" : ""));
    }

    void cap(boolean heavy) {
        boolean soft = random.nextBoolean();
        parts.add(new ButtCap(
                facts(2, heavy ? between(6, 14) : 3.5, Material.RUBBER),
                round(soft ? butt * between(0.84, 1.0) : butt + between(0, 1.6), 10),
                round(between(21.5, 25), 10),
                round(between(3, 8), 1),
                soft,
                0));
    }

    void check(double xMm) {
        boolean soft = random.nextInt(3) == 0;
        parts.add(new Check(
                facts(2.4, 1.1, soft ? Material.RUBBER : Material.ALUMINIUM),
                round(soft ? od(xMm) * between(0.76, 0.95) : od(xMm) + between(0.05, 0.5), 100),
                round(between(18, 21), 10),
                round(between(2, 4), 2),
                soft));
    }

    void guide(double size, String finish, RingMaterial ring) {
        double wall = size < 7 ? 1.5 : size < 14 ? 2.5 : 3.6;
        boolean extra = core >= 0;
        int feet = size > 7 || !extra ? 2 : 1 + random.nextInt(2);
        parts.add(new Guide(
                facts(5, 0.02 * size * Math.sqrt(size) * feet / 1.5, Material.TITANIUM),
                "kestrel",
                size,
                size - wall,
                ring,
                !extra || random.nextInt(12) > 0,
                finish,
                round(size * 1.3, 10),
                feet,
                round(between(6, 12), 10),
                extra && random.nextInt(8) == 0));
    }

    private void tip(double tipMm, double size, double play, String finish, RingMaterial ring) {
        parts.add(new TipTop(
                facts(5, 0.25, Material.TITANIUM),
                "kestrel",
                round(tipMm + play, 1000),
                8,
                size,
                size - 1.5,
                ring,
                true,
                finish,
                round(between(5, 9), 10)));
    }

    void keeper() {
        parts.add(new Keeper(facts(3, 0.25, Material.STAINLESS), random.nextInt(3), round(between(5, 9), 10)));
    }

    void thread(String letter) {
        double diameter = round(between(0.14, 0.22), 1000);
        parts.add(new WrapThread(
                facts(2.6, 1.8, Material.NYLON), letter, diameter, round(700 * diameter * diameter, 10), 100, true));
    }

    Finish finish() {
        Finish finish = new Finish(facts(20, 60, Material.EPOXY), round(between(1.05, 1.2), 100), 60, 1, 1, 30, 12, 48);
        parts.add(finish);
        return finish;
    }

    Adhesive adhesive() {
        Adhesive adhesive = new Adhesive(facts(9, 60, Material.EPOXY), 1.15, 50, 1, 1, 40, 24);
        parts.add(adhesive);
        return adhesive;
    }

    void decal() {
        parts.add(new Decal(facts(3, 0.1, Material.PAPER), random.nextInt(3) == 0 ? 130 : 45, 8));
    }
}
