package withy.catalog.sample;

import java.util.ArrayList;
import java.util.List;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Hood;
import withy.catalog.Material;
import withy.catalog.ReelSeat;
import withy.catalog.SeatEnd;
import withy.catalog.sample.DesignTable.Design;

/** Parts of the handle from their designs. */
final class HandleParts {
    /**
     * Usual geometry of a seat of one nominal size, mm; common practice (trade tables).
     *
     * @param foot reel feet it clamps, mm
     */
    private record Frame(
            int size,
            double bore,
            double barrel,
            double length,
            double footMin,
            double footMax,
            double thick,
            double wide) {
        static Frame of(int size) {
            return switch (size) {
                case 16 -> new Frame(16, 15.0, 21.5, 98, 44, 61, 3.6, 13.2);
                case 17 -> new Frame(17, 16.0, 23.0, 104, 46, 67, 3.8, 13.4);
                case 18 -> new Frame(18, 17.0, 24.5, 110, 50, 71, 4.2, 13.8);
                case 20 -> new Frame(20, 19.0, 26.5, 120, 55, 78, 5.0, 14.2);
                case 22 -> new Frame(22, 21.0, 28.5, 132, 60, 85, 5.2, 15.0);
                case 24 -> new Frame(24, 23.0, 30.5, 144, 66, 93, 5.6, 15.6);
                default -> throw new IllegalArgumentException("no seat of size " + size);
            };
        }
    }

    /** Most of a barrel that can be solid: threads and the hood's way are cut out of it. ASSUMED. */
    private static final double SOLID = 0.98;

    private HandleParts() {}

    /** How much more of the barrel is solid than at size 16: larger seats are built for heavier fish (handbook, section 3; share ASSUMED). */
    private static double stout(int size) {
        return size <= 16 ? 1 : size == 17 ? 1.05 : size == 18 ? 1.12 : 1.3;
    }

    static List<ReelSeat> seats(Design row) {
        List<ReelSeat> seats = new ArrayList<>();
        Material material = row.word("material", Material.class);
        for (double nominal : row.numbers("sizes")) {
            Frame frame = Frame.of((int) nominal);
            double grow = frame.bore() / 15.0;
            double hood = Shapes.to(row.number("hood_g") * grow, 0.1);
            // A trigger and its stem are about 4 g of solid body.
            double trigger = row.flag("trigger") ? 4000 * Shapes.density(material) : 0;
            double body = Shapes.annulus(frame.barrel(), frame.bore(), frame.length())
                    * Shapes.density(material)
                    * Math.min(SOLID, row.number("fill") * stout(frame.size()));
            seats.add(new ReelSeat(
                    Draft.of(row.text("maker"), row.text("model") + " " + frame.size(), material)
                            .weight(body + hood + trigger, 0.1, material == Material.CARBON ? 6 : 4)
                            .price(Shapes.to(row.number("price_eur") * (0.6 + 0.4 * grow), 0.1))
                            .supplied(row, 3, 7)
                            .bin("drawer 2")
                            .look(row.colour(), row.gloss(), row.text("set"))
                            .classes(row.whole("durability"), row.whole("corrosion"))
                            .facts(),
                    row.flag("casting"),
                    frame.size(),
                    frame.bore(),
                    frame.length(),
                    Shapes.to(frame.length() * (row.text("moving").equals("REAR") ? 0.53 : 0.47), 1),
                    frame.barrel(),
                    frame.barrel() - 0.5,
                    frame.barrel() - (row.flag("front_finished") ? 3.5 : 2.5),
                    frame.footMin(),
                    frame.footMax(),
                    frame.thick(),
                    frame.wide(),
                    row.text("family"),
                    row.word("moving", SeatEnd.class),
                    hood,
                    row.flag("double_lock"),
                    row.flag("trigger"),
                    row.flag("front_finished"),
                    row.flag("through"),
                    row.text("recess")));
        }
        return seats;
    }

    static List<Hood> hoods(Design row, double hoodG) {
        List<Hood> hoods = new ArrayList<>();
        Material material = row.word("material", Material.class);
        for (double nominal : row.numbers("sizes")) {
            Frame frame = Frame.of((int) nominal);
            double grow = frame.bore() / 15.0;
            hoods.add(new Hood(
                    Draft.of(row.text("maker"), row.text("model") + " " + frame.size(), material)
                            .weight(hoodG * grow * row.number("factor"), 0.1, 5)
                            .price(Shapes.to(row.number("price_eur") * grow, 0.1))
                            .supplied(row, 3, 10)
                            .bin("drawer 3")
                            .look(row.colour(), row.gloss(), row.text("set"))
                            .classes(row.whole("durability"), row.whole("corrosion"))
                            .facts(),
                    row.text("family"),
                    frame.size(),
                    frame.barrel() - 1.0,
                    row.flag("double_lock")));
        }
        return hoods;
    }

    static Grip grip(Design row) {
        Material material = row.word("material", Material.class);
        double length = row.number("length");
        double front = row.number("front");
        double mid = row.number("mid");
        double rear = row.number("rear");
        double bore = row.number("bore");
        double thinnest = Math.min(front, Math.min(mid, rear));
        // Wall left: 4 mm, EVA 3 mm (handbook, rule 10).
        double wall = material == Material.EVA ? 3 : 4;
        return new Grip(
                Draft.of(row.text("maker"), row.text("model"), material)
                        .weight(
                                Shapes.grip(rear, mid, front, bore, length)
                                        * Shapes.density(material)
                                        * row.number("grade"),
                                0.1,
                                material == Material.CORK ? 8 : 6)
                        .price(row.number("price_eur"))
                        .supplied(row, 4, 7)
                        .bin("drawer 4")
                        .look(row.colour(), row.gloss(), row.text("set"))
                        .classes(row.whole("durability"), row.whole("corrosion"))
                        .facts(),
                row.word("place", Grip.Place.class),
                length,
                row.number("shortest"),
                front,
                mid,
                rear,
                bore,
                Math.max(bore, Shapes.to(thinnest - 2 * wall, 0.1)),
                row.flag("front_finished"),
                row.flag("rear_finished"),
                row.flag("rear_closed"),
                row.text("recess"));
    }

    static List<ButtCap> caps(Design row) {
        List<ButtCap> caps = new ArrayList<>();
        Material material = row.word("material", Material.class);
        List<Double> outers = row.numbers("outer");
        List<Double> inners = row.numbers("inner");
        double added = row.number("added");
        for (int i = 0; i < inners.size(); i++) {
            double inner = inners.get(i);
            double outer = outers.get(i);
            // A disk behind the blank and a collar of 2 mm wall, 10 mm long, around it; metal is turned hollow to a
            // third.
            double disk = Shapes.annulus(outer, 0, added) * (material == Material.ALUMINIUM ? 0.34 : 1);
            double collar = Shapes.annulus(inner + 4, inner, 10);
            caps.add(new ButtCap(
                    Draft.of(row.text("maker"), row.text("model") + " " + plain(inner) + "x" + plain(outer), material)
                            .weight((disk + collar) * Shapes.density(material), 0.1, 6)
                            .price(Shapes.to(row.number("price_eur") * (0.5 + inner / 20), 0.1))
                            .supplied(row, 6, 7)
                            .bin("drawer 5")
                            .look(row.colour(), row.gloss(), row.text("set"))
                            .classes(row.whole("durability"), row.whole("corrosion"))
                            .facts(),
                    inner,
                    outer,
                    added,
                    row.flag("soft"),
                    row.number("weight_max")));
        }
        return caps;
    }

    static List<Check> checks(Design row) {
        List<Check> checks = new ArrayList<>();
        Material material = row.word("material", Material.class);
        double width = row.number("width");
        int count = (int) Math.round((row.number("to") - row.number("from")) / row.number("step"));
        for (int i = 0; i <= count; i++) {
            double inner = row.number("from") + i * row.number("step");
            double outer = Shapes.to(faceFor(inner) + row.number("extra"), 0.5);
            checks.add(new Check(
                    Draft.of(row.text("maker"), row.text("model") + " " + plain(inner), material)
                            .weight(Shapes.annulus(outer, inner, width) * Shapes.density(material) * 0.8, 0.01, 5)
                            .price(row.number("price_eur"))
                            .supplied(row, 4, 7)
                            .bin("drawer 6")
                            .look(row.colour(), row.gloss(), row.text("set"))
                            .classes(row.whole("durability"), row.whole("corrosion"))
                            .facts(),
                    inner,
                    outer,
                    width,
                    row.flag("soft")));
        }
        return checks;
    }

    /** Outer diameter that meets the front face of the seat usual on a blank this thick, mm. */
    private static double faceFor(double blankMm) {
        if (blankMm <= 9.5) {
            return 18;
        }
        if (blankMm <= 13) {
            return 19.5;
        }
        return blankMm <= 16 ? 22 : blankMm <= 18.5 ? 24.5 : 26.5;
    }

    static String plain(double value) {
        return java.math.BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
