package withy.rules;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.catalog.TipTop;
import withy.rod.Face;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.SeatSet;
import withy.rod.Setting;

/**
 * The rules in force, in the order of the handbook. Asks each hook of the rules that have it and stops as soon as the bench has heard enough.
 * Immutable.
 */
public final class Rulebook {
    private static final Rulebook STANDARD = new Rulebook(List.of(
            new LureRange(),
            new LineClass(),
            new RodLength(),
            new Durability(),
            new Lift(),
            new KnotClearance(),
            new RingForLine(),
            new ReelFit(),
            new SeatOnBlank(),
            new GripOnBlank(),
            new RingFit(),
            new TipTopTube(),
            new HandleParts(),
            new GuideTrain(),
            new Salt(),
            new Budget(),
            new Stock(),
            new Must()));

    private final List<Rule> rules;
    private final Rule[] ofCandidate;
    private final Rule[] ofLayout;
    private final Rule[] ofPart;
    private final Rule[] ofSeat;
    private final Rule[] ofButtEnd;
    private final Rule[] ofEnds;
    private final Rule[] ofNeighbours;
    private final Rule[] ofEdge;
    private final Rule[] ofGrips;
    private final Rule[] ofForeGrip;
    private final Rule[] ofGap;
    private final Rule[] ofGuides;
    private final Rule[] ofTip;
    private final Rule[] ofRod;

    /** These rules, in this order. */
    public Rulebook(List<? extends Rule> rules) {
        this.rules = List.copyOf(rules);
        this.ofCandidate = having("onCandidate");
        this.ofLayout = having("onLayout");
        this.ofPart = having("onPart");
        this.ofSeat = having("onSeat");
        this.ofButtEnd = having("onButtEnd");
        this.ofEnds = having("onEnds");
        this.ofNeighbours = having("onNeighbours");
        this.ofEdge = having("onExposedEdge");
        this.ofGrips = having("onGrips");
        this.ofForeGrip = having("onForeGrip");
        this.ofGap = having("onGap");
        this.ofGuides = having("onGuides");
        this.ofTip = having("onTip");
        this.ofRod = having("onRod");
    }

    /** Some of the rules of another book, or each of the same class in the place of it: what has which hook is known. */
    private Rulebook(Rulebook of, UnaryOperator<@Nullable Rule> as) {
        this.rules = List.of(some(of.rules.toArray(Rule[]::new), as));
        this.ofCandidate = some(of.ofCandidate, as);
        this.ofLayout = some(of.ofLayout, as);
        this.ofPart = some(of.ofPart, as);
        this.ofSeat = some(of.ofSeat, as);
        this.ofButtEnd = some(of.ofButtEnd, as);
        this.ofEnds = some(of.ofEnds, as);
        this.ofNeighbours = some(of.ofNeighbours, as);
        this.ofEdge = some(of.ofEdge, as);
        this.ofGrips = some(of.ofGrips, as);
        this.ofForeGrip = some(of.ofForeGrip, as);
        this.ofGap = some(of.ofGap, as);
        this.ofGuides = some(of.ofGuides, as);
        this.ofTip = some(of.ofTip, as);
        this.ofRod = some(of.ofRod, as);
    }

    private static Rule[] some(Rule[] all, UnaryOperator<@Nullable Rule> as) {
        return Arrays.stream(all).map(as).filter(Objects::nonNull).toArray(Rule[]::new);
    }

    /** The eighteen rules of the handbook. */
    public static Rulebook standard() {
        return STANDARD;
    }

    /** The same rules without one. */
    public Rulebook without(String code) {
        if (rules.stream().noneMatch(rule -> rule.code().equals(code))) {
            throw new IllegalArgumentException("no rule '" + code + "'; there are "
                    + String.join(", ", rules.stream().map(Rule::code).toList()) + ".\nMaybe a letter is missing.");
        }
        return new Rulebook(this, rule -> rule.code().equals(code) ? null : rule);
    }

    /** The same rules, but that a seat's barrel need only suit some palm. */
    public Rulebook anyHand() {
        HandleParts any = new HandleParts(true);
        return new Rulebook(this, rule -> rule instanceof HandleParts ? any : rule);
    }

    /** The same rules, but that a seat need not take the customer's reel: looser than for any reel that may come. */
    public Rulebook anyReel() {
        ReelFit any = new ReelFit(true);
        return new Rulebook(this, rule -> rule instanceof ReelFit ? any : rule);
    }

    /** The rules in order. */
    public List<Rule> rules() {
        return rules;
    }

    /** See {@link Rule#onCandidate}. */
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        for (Rule rule : ofCandidate) {
            bench.rule(rule.code());
            rule.onCandidate(brief, catalog, part, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onLayout}. */
    public void onLayout(Setting setting, Bench bench) {
        for (Rule rule : ofLayout) {
            bench.rule(rule.code());
            rule.onLayout(setting, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onPart}. */
    public void onPart(Setting setting, Placed placed, Bench bench) {
        for (Rule rule : ofPart) {
            bench.rule(rule.code());
            rule.onPart(setting, placed, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onSeat}. */
    public void onSeat(Setting setting, SeatSet seat, Bench bench) {
        for (Rule rule : ofSeat) {
            bench.rule(rule.code());
            rule.onSeat(setting, seat, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onButtEnd}. */
    public void onButtEnd(Setting setting, @Nullable ButtCap cap, @Nullable Grip first, Bench bench) {
        for (Rule rule : ofButtEnd) {
            bench.rule(rule.code());
            rule.onButtEnd(setting, cap, first, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onEnds}. */
    public void onEnds(Setting setting, @Nullable ButtCap cap, @Nullable TipTop tipTop, Bench bench) {
        for (Rule rule : ofEnds) {
            bench.rule(rule.code());
            rule.onEnds(setting, cap, tipTop, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onNeighbours}. */
    public void onNeighbours(Setting setting, Face rear, Face front, Bench bench) {
        for (Rule rule : ofNeighbours) {
            bench.rule(rule.code());
            rule.onNeighbours(setting, rear, front, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onExposedEdge}. */
    public void onExposedEdge(Setting setting, Face edge, boolean finished, Bench bench) {
        for (Rule rule : ofEdge) {
            bench.rule(rule.code());
            rule.onExposedEdge(setting, edge, finished, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onGrips}. */
    public void onGrips(Setting setting, Grip rear, Grip front, Bench bench) {
        for (Rule rule : ofGrips) {
            bench.rule(rule.code());
            rule.onGrips(setting, rear, front, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onForeGrip}. */
    public void onForeGrip(Setting setting, SeatSet seat, Grip foreGrip, boolean ringBetween, Bench bench) {
        for (Rule rule : ofForeGrip) {
            bench.rule(rule.code());
            rule.onForeGrip(setting, seat, foreGrip, ringBetween, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onGap}. */
    public void onGap(Setting setting, Placed buttGrip, Placed rearGrip, Bench bench) {
        for (Rule rule : ofGap) {
            bench.rule(rule.code());
            rule.onGap(setting, buttGrip, rearGrip, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onGuides}. */
    public void onGuides(Setting setting, Guide rear, int number, Guide front, Bench bench) {
        for (Rule rule : ofGuides) {
            bench.rule(rule.code());
            rule.onGuides(setting, rear, number, front, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onTip}. */
    public void onTip(Setting setting, Guide last, TipTop tipTop, Bench bench) {
        for (Rule rule : ofTip) {
            bench.rule(rule.code());
            rule.onTip(setting, last, tipTop, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** See {@link Rule#onRod}. */
    public void onRod(Rod rod, Bench bench) {
        for (Rule rule : ofRod) {
            bench.rule(rule.code());
            rule.onRod(rod, bench);
            if (bench.decided()) {
                return;
            }
        }
    }

    /** Rules that override a hook: the others would only cost time. */
    private Rule[] having(String hook) {
        return rules.stream().filter(rule -> overrides(rule, hook)).toArray(Rule[]::new);
    }

    private static boolean overrides(Rule rule, String hook) {
        return Arrays.stream(rule.getClass().getMethods())
                .anyMatch(
                        m -> m.getName().equals(hook) && !m.getDeclaringClass().equals(Rule.class));
    }
}
