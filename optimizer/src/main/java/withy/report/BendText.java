package withy.report;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.app.BendAnswer;
import withy.app.MachineSheet;
import withy.app.MachineSheet.Line;
import withy.app.MachineSheet.LoadDrop;
import withy.app.MachineSheet.RingUnderLoad;
import withy.app.OddsSheet;
import withy.explain.Phrases;
import withy.units.ForceUnit;
import withy.units.QuantityText;

/** The answer of {@code bend} for a terminal of 80 columns. */
public final class BendText {
    private static final Page.Column[] LOADS = {
        new Page.Column(26, false), new Page.Column(20, true), new Page.Column(20, true)
    };
    private static final Page.Column[] RINGS = {
        new Page.Column(14, false),
        new Page.Column(16, true),
        new Page.Column(14, true),
        new Page.Column(14, true),
        new Page.Column(18, true)
    };
    private static final Page.Column[] COSTS = {
        new Page.Column(26, false), new Page.Column(16, true), new Page.Column(16, true), new Page.Column(18, true)
    };
    private static final Page.Column[] WRAPS = {
        new Page.Column(14, false),
        new Page.Column(14, true),
        new Page.Column(14, true),
        new Page.Column(12, true),
        new Page.Column(10, true),
        new Page.Column(10, true)
    };
    private static final Page.Column[] THREADS = {
        new Page.Column(30, false),
        new Page.Column(10, true),
        new Page.Column(10, true),
        new Page.Column(12, true),
        new Page.Column(12, true)
    };
    private static final Page.Column[] BALANCE = {
        new Page.Column(30, false), new Page.Column(20, true), new Page.Column(14, true), new Page.Column(12, true)
    };

    private final Page page = new Page();
    private final BendAnswer answer;
    private final MachineSheet machine;
    private final QuantityText units;

    private BendText(BendAnswer answer, QuantityText units) {
        this.answer = answer;
        this.machine = answer.machine();
        this.units = units;
    }

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(BendAnswer answer, QuantityText units) {
        return new BendText(answer, units).text();
    }

    private String text() {
        page.paragraph("", Phrases.of("bend.title", answer.name()));
        page.paragraph(
                "",
                Phrases.of(
                        "bend.lead",
                        units.mass(answer.weightG()),
                        units.partLength(machine.outline().handleFrontMm())));
        stiffness();
        hung();
        line(Phrases.of("bend.line.working"), machine.working());
        Line test = machine.staticTest();
        if (test != null) {
            line(Phrases.of("bend.line.static"), test);
        }
        quickness();
        new TrainText(page, answer.train(), units).write();
        wraps();
        handle();
        odds();
        AnswerText.list(page, "text.cautions", answer.cautions());
        return page.toString();
    }

    private void odds() {
        OddsSheet odds = answer.odds();
        if (odds != null) {
            page.heading(Phrases.of("bend.odds"));
            page.paragraph(
                    "",
                    Phrases.of(
                            odds.differenceG() < 0 ? "bend.odds.lighter" : "bend.odds.heavier",
                            odds.against(),
                            units.mass(Math.abs(odds.differenceG())),
                            units.mass(odds.spreadG()),
                            number(100 * odds.probabilityLighter(), 0)));
        }
    }

    private void stiffness() {
        MachineSheet.Stiffness stiffness = machine.stiffness();
        Double modulus = stiffness.modulusMpa();
        page.heading(Phrases.of("bend.stiffness"));
        page.paragraph(
                "",
                Phrases.of("bend.stiffness." + stiffness.source(), modulus == null ? "" : number(modulus / 1000, 0)));
        if (stiffness.doubt() != null) {
            page.paragraph("", Phrases.of("bend.stiffness.doubt", stiffness.doubt()));
        }
    }

    private void hung() {
        MachineSheet.Hung hung = machine.hung();
        page.gap().row(LOADS, Phrases.of("bend.hung"), Phrases.of("bend.hung.drop"), Phrases.of("bend.hung.tip"));
        page.rule();
        for (LoadDrop load : hung.curve()) {
            Double drop = load.dropMm();
            Double tip = load.tipDeg();
            page.row(
                    LOADS,
                    load.loadG() > 0 ? units.mass(load.loadG()) : Phrases.of("bend.hung.nothing"),
                    drop == null ? "–" : length(drop),
                    tip == null ? "–" : degrees(tip));
        }
        Double third = hung.thirdG();
        Double action = hung.actionAngleDeg();
        page.paragraph(
                "",
                third == null || action == null
                        ? Phrases.of("bend.hung.noThird", String.valueOf(hung.doubt()))
                        : Phrases.of(
                                "bend.hung.third", units.mass(third), length(hung.thirdDropMm()), degrees(action)));
    }

    private void line(String title, Line line) {
        page.heading(title);
        String pull = units.strength(line.pullKg() * ForceUnit.KILOGRAM_FORCE.newtons());
        page.paragraph("", Phrases.of("bend.line.pose", pull, direction(line.buttDeg()), direction(line.pullDeg())));
        if (line.doubt() != null) {
            page.paragraph("", Phrases.of("bend.line.doubt", line.doubt()));
            return;
        }
        page.paragraph(
                "",
                Phrases.of(
                        "bend.line.hand",
                        moment(line.handMomentNmm()),
                        line.dropMm() == null ? "–" : length(line.dropMm())));
        Double rating = line.liftRatingKg();
        Double reserve = line.reserve();
        page.paragraph(
                "",
                rating == null || reserve == null
                        ? Phrases.of("bend.line.noRating")
                        : Phrases.of(
                                reserve < 1 ? "bend.line.beyondRating" : "bend.line.rating",
                                units.strength(rating * ForceUnit.KILOGRAM_FORCE.newtons()),
                                number(reserve, 1)));
        gap(line);
        rings(line);
    }

    private void gap(Line line) {
        Double gap = line.leastGapMm();
        RingUnderLoad nearest = nearest(line);
        if (gap != null && nearest != null) {
            page.paragraph(
                    "",
                    Phrases.of(
                            gap < 0 ? "bend.line.touches" : "bend.line.clears",
                            units.partLength(Math.abs(gap)),
                            ring(nearest.station())));
        }
    }

    private static @Nullable RingUnderLoad nearest(Line line) {
        return line.rings().stream()
                .filter(ring -> ring.gapBehindMm() != null && ring.gapBehindMm().equals(line.leastGapMm()))
                .findFirst()
                .orElse(null);
    }

    private void rings(Line line) {
        double tip = machine.outline()
                .blank()
                .get(machine.outline().blank().size() - 1)
                .xMm();
        page.gap()
                .row(
                        RINGS,
                        Phrases.of("bend.ring"),
                        Phrases.of("bend.ring.fromTip"),
                        Phrases.of("bend.ring.turn"),
                        Phrases.of("bend.ring.force"),
                        Phrases.of("bend.ring.gap"));
        page.rule();
        for (RingUnderLoad ring : line.rings()) {
            Double gap = ring.gapBehindMm();
            page.row(
                    RINGS,
                    ring(ring.station()),
                    length(tip - ring.xMm()),
                    degrees(ring.turnDeg()),
                    units.mass(ring.forceN() / ForceUnit.KILOGRAM_FORCE.newtons() * 1000),
                    gap == null ? "–" : units.partLength(Math.rint(gap * 10) / 10));
        }
        Double largest = line.largestTurnDeg();
        Double all = line.allTurnsDeg();
        if (largest != null && all != null) {
            page.paragraph("", Phrases.of("bend.ring.all", degrees(largest), degrees(all)));
        }
    }

    private void quickness() {
        MachineSheet.Quick quick = machine.quickness();
        page.heading(Phrases.of("bend.quick"));
        Double blank = quick.blankHz();
        Double finished = quick.finishedHz();
        Double tip = quick.tipHertzPerGram();
        if (blank == null || finished == null || tip == null) {
            page.paragraph("", Phrases.of("bend.quick.doubt", String.valueOf(quick.doubt())));
            return;
        }
        page.paragraph("", Phrases.of("bend.quick.lead", hertz(blank), hertz(finished)));
        page.paragraph("", Phrases.of("bend.quick.tip", hertz(tip)));
        page.gap()
                .row(
                        COSTS,
                        Phrases.of("bend.quick.what"),
                        Phrases.of("bend.quick.mass"),
                        Phrases.of("bend.quick.slower"),
                        Phrases.of("bend.quick.perGram"));
        page.rule();
        for (MachineSheet.GroupCost group : quick.groups()) {
            page.row(
                    COSTS,
                    Phrases.of("bend.group." + group.what()),
                    units.fineMass(group.massG()),
                    hertz(group.hertz()),
                    "");
        }
        for (MachineSheet.GuideCost guide : quick.guides()) {
            page.row(
                    COSTS,
                    "  " + ring(guide.station()),
                    units.fineMass(guide.massG()),
                    hertz(guide.hertz()),
                    hertz(guide.hertzPerGram()));
        }
    }

    private void wraps() {
        MachineSheet.Wrapping wraps = machine.wraps();
        page.heading(Phrases.of("bend.wraps"));
        page.row(
                WRAPS,
                Phrases.of("bend.ring"),
                Phrases.of("bend.wraps.foot"),
                Phrases.of("bend.wraps.turns"),
                Phrases.of("bend.wraps.thread"),
                Phrases.of("bend.wraps.mass"),
                Phrases.of("bend.wraps.finish"));
        page.rule();
        for (MachineSheet.GuideWrap guide : wraps.guides()) {
            String turns = number(guide.turns(), 0);
            page.row(
                    WRAPS,
                    ring(guide.station()),
                    guide.feet() + " × " + units.partLength(guide.wrapMm()),
                    guide.underTurns() > 0 ? turns + " + " + number(guide.underTurns(), 0) : turns,
                    number(guide.amount().threadM(), 2) + " m",
                    number(guide.amount().threadG(), 3) + " g",
                    number(guide.amount().finishG(), 2) + " g");
        }
        MachineSheet.Amount all = wraps.total();
        page.row(
                WRAPS,
                Phrases.of("bend.wraps.all"),
                "",
                "",
                number(all.threadM(), 1) + " m",
                number(all.threadG(), 2) + " g",
                number(all.finishG(), 2) + " g");
        page.paragraph("", Phrases.of("bend.wraps.ml", number(all.finishMl(), 1)));
        threads(wraps);
    }

    private void threads(MachineSheet.Wrapping wraps) {
        page.gap()
                .row(
                        THREADS,
                        Phrases.of("bend.threads"),
                        Phrases.of("bend.wraps.thread"),
                        Phrases.of("bend.wraps.mass"),
                        Phrases.of("bend.wraps.finish"),
                        Phrases.of("bend.threads.rod"));
        page.rule();
        double own = wraps.threads().stream()
                .filter(MachineSheet.ThreadSize::own)
                .mapToDouble(MachineSheet.ThreadSize::weightG)
                .findFirst()
                .orElse(0);
        for (MachineSheet.ThreadSize thread : wraps.threads()) {
            page.row(
                    THREADS,
                    Phrases.of(
                            thread.own() ? "bend.threads.own" : "bend.threads.other",
                            thread.name(),
                            units.thickness(thread.diameterMm())),
                    number(thread.amount().threadM(), 1) + " m",
                    number(thread.amount().threadG(), 2) + " g",
                    number(thread.amount().finishG(), 2) + " g",
                    thread.own() ? "–" : String.format(Locale.ROOT, "%+.2f g", thread.weightG() - own));
        }
    }

    private void handle() {
        MachineSheet.Handle handle = machine.handle();
        page.heading(Phrases.of("bend.handle"));
        page.paragraph(
                "",
                Phrases.of(
                        "bend.handle.reach",
                        units.partLength(handle.reachMm()),
                        units.partLength(handle.wantedMinMm()),
                        units.partLength(handle.wantedMaxMm())));
        Double least = handle.forearmMinMm();
        Double most = handle.forearmMaxMm();
        Double women = handle.womenPercent();
        Double men = handle.menPercent();
        if (least != null && most != null && women != null && men != null) {
            page.paragraph(
                    "",
                    Phrases.of(
                            "bend.handle.forearm",
                            units.partLength(least),
                            units.partLength(most),
                            number(women, 0),
                            number(men, 0)));
        }
        barrel(handle);
        balance(handle);
    }

    private void barrel(MachineSheet.Handle handle) {
        Double barrel = handle.barrelMm();
        Double thin = handle.barrelMinMm();
        Double thick = handle.barrelMaxMm();
        if (barrel != null && thin != null && thick != null) {
            page.paragraph(
                    "",
                    Phrases.of(
                            "bend.handle.barrel",
                            units.partLength(barrel),
                            units.partLength(handle.palmMm()),
                            units.partLength(thin),
                            units.partLength(thick)));
        }
    }

    private void balance(MachineSheet.Handle handle) {
        page.gap()
                .row(
                        BALANCE,
                        Phrases.of("bend.balance"),
                        Phrases.of("bend.balance.point"),
                        Phrases.of("bend.balance.tipHeavy"),
                        Phrases.of("bend.balance.cure"));
        page.rule();
        for (MachineSheet.ReelBalance reel : handle.reels()) {
            page.row(
                    BALANCE,
                    Phrases.of(
                            reel.name().isEmpty() ? "bend.balance.brief" : "bend.balance.reel",
                            units.mass(reel.massG()),
                            reel.name()),
                    point(reel.balanceMm()),
                    units.moment(reel.tipHeavyNmm()),
                    reel.zoneGrams() > 0
                            ? units.mass(reel.zoneGrams())
                            : Phrases.of(reel.zoneGrams() < 0 ? "bend.balance.buttHeavy" : "text.inside"));
        }
        for (MachineSheet.Counterweight weight : handle.counterweights()) {
            page.row(
                    BALANCE,
                    Phrases.of("bend.balance.weight", units.mass(weight.grams())),
                    point(weight.balanceMm()),
                    units.moment(weight.tipHeavyNmm()),
                    "");
            page.paragraph(
                    "    ",
                    Phrases.of(
                            "bend.balance.swing",
                            units.inertia(weight.swingWeightKgM2()),
                            units.fineMass(weight.tipGrams())));
        }
    }

    private String point(double mm) {
        String key = mm < 0 ? "text.behind" : "text.ahead";
        return Phrases.of(key, units.partLength(Math.rint(Math.abs(mm))));
    }

    private String length(double mm) {
        return units.partLength(Math.rint(mm));
    }

    private String moment(@Nullable Double nmm) {
        return nmm == null ? "–" : units.moment(nmm);
    }

    private static String ring(String station) {
        return station.startsWith("guide-")
                ? Phrases.of("bend.guide", station.substring("guide-".length()))
                : Phrases.of("station." + station);
    }

    private static String direction(double deg) {
        return deg == 0
                ? Phrases.of("bend.level")
                : Phrases.of(deg > 0 ? "bend.up" : "bend.down", number(Math.abs(deg), 0));
    }

    private static String degrees(double deg) {
        return number(deg, 1) + "°";
    }

    private static String hertz(double hz) {
        return number(hz, hz < 0.1 ? 3 : 2) + " Hz";
    }

    private static String number(double value, int decimals) {
        String shown = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return shown.matches("-0(\\.0+)?") ? shown.substring(1) : shown;
    }
}
