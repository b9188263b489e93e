package withy.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.catalog.TipTop;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;

/** Judges a measured rod: walks its parts from butt to tip and asks every hook where it applies. */
public final class Judge {
    private static final List<Station> WITHOUT_PLACE = List.of(Station.THREAD, Station.FINISH, Station.ADHESIVE);

    private final Rod rod;
    private final Setting setting;
    private final Rulebook rules;
    private final Seams seams;
    private final Bench bench;

    private Judge(Rod rod, Rulebook rules, Bench bench) {
        this.rod = rod;
        this.setting = rod.setting();
        this.rules = rules;
        this.seams = new Seams(rules);
        this.bench = bench;
    }

    /** Every verdict, in the order of the rules. */
    public static List<Verdict> judge(Rod rod, Rulebook rules) {
        Protocol protocol = new Protocol();
        ask(rod, rules, protocol);
        return protocol.verdicts(rules);
    }

    /** What makes a rod illegal, in the order of the rules: those of {@link #judge} that are, without writing down the others. */
    public static List<Verdict> broken(Rod rod, Rulebook rules) {
        Protocol protocol = Protocol.ofRefusals();
        ask(rod, rules, protocol);
        return protocol.verdicts(rules);
    }

    /** True where no rule refuses. */
    public static boolean legal(Rod rod, Rulebook rules) {
        Refusal refusal = new Refusal();
        ask(rod, rules, refusal);
        return !refusal.refused();
    }

    /** Asks everything of a rod. */
    public static void ask(Rod rod, Rulebook rules, Bench bench) {
        Judge judge = new Judge(rod, rules, bench);
        judge.candidates();
        rules.onLayout(rod.setting(), bench);
        rod.placed().values().forEach(placed -> rules.onPart(rod.setting(), placed, bench));
        judge.handle();
        judge.train();
        rules.onEnds(
                rod.setting(),
                judge.part(Station.BUTT_CAP, ButtCap.class),
                judge.part(Station.TIP_TOP, TipTop.class),
                bench);
        rules.onRod(rod, bench);
    }

    private void candidates() {
        Catalog catalog = setting.catalog();
        Set<String> asked = new HashSet<>();
        for (Placed placed : rod.placed().values()) {
            if (asked.add(placed.part().id())) {
                rules.onCandidate(rod.brief(), catalog, placed.part(), bench);
            }
        }
        for (Station station : WITHOUT_PLACE) {
            Part part = rod.partAt(station);
            if (part != null && asked.add(part.id())) {
                rules.onCandidate(rod.brief(), catalog, part, bench);
            }
        }
    }

    private void handle() {
        boolean split = setting.layout().form() == HandleForm.SPLIT;
        Grip buttGrip = split ? part(Station.BUTT_GRIP, Grip.class) : null;
        Grip rearGrip = part(Station.REAR_GRIP, Grip.class);
        Grip foreGrip = part(Station.FORE_GRIP, Grip.class);
        ButtCap cap = part(Station.BUTT_CAP, ButtCap.class);
        seams.butt(setting, cap, split ? Station.BUTT_GRIP : Station.REAR_GRIP, split ? buttGrip : rearGrip, bench);
        if (buttGrip != null) {
            seams.buttGripEdge(setting, buttGrip, bench);
        }
        if (split && rearGrip != null) {
            seams.rearGripEdge(setting, rearGrip, bench);
        }
        Placed butt = rod.placed().get(Station.BUTT_GRIP);
        Placed rear = rod.placed().get(Station.REAR_GRIP);
        if (split && butt != null && rear != null) {
            seams.split(setting, butt, rear, bench);
        }
        if (rearGrip != null && foreGrip != null) {
            rules.onGrips(setting, rearGrip, foreGrip, bench);
        }
        Check foreCheck = part(Station.FORE_CHECK, Check.class);
        SeatSet seat = rod.seat();
        if (seat != null) {
            rules.onSeat(setting, seat, bench);
            seams.behindSeat(setting, rearGrip, part(Station.REAR_CHECK, Check.class), seat, bench);
            seams.aheadOfSeat(setting, seat, foreCheck, foreGrip, bench);
        }
        seams.frontEnd(setting, seat, foreCheck, foreGrip, part(Station.WINDING_CHECK, Check.class), bench);
    }

    private void train() {
        Guide rear = null;
        for (int number = 1; number <= setting.guideCount(); number++) {
            Guide guide = part(Station.guide(number), Guide.class);
            if (rear != null && guide != null) {
                rules.onGuides(setting, rear, number - 1, guide, bench);
            }
            rear = guide;
        }
        TipTop tipTop = part(Station.TIP_TOP, TipTop.class);
        if (rear != null && tipTop != null) {
            rules.onTip(setting, rear, tipTop, bench);
        }
    }

    private <P extends Part> @Nullable P part(Station station, Class<P> type) {
        Placed placed = rod.placed().get(station);
        return placed == null ? null : type.cast(placed.part());
    }
}
