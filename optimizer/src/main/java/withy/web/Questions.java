package withy.web;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import withy.web.Field.Kind;

/** What is asked, in the order of a talk over the counter. */
final class Questions {
    /**
     * One question.
     *
     * @param key names its words
     * @param first what is asked of everybody
     * @param more what only some know
     */
    record Question(String key, List<Field> first, List<Field> more) {
        Question {
            first = List.copyOf(first);
            more = List.copyOf(more);
        }

        /** What is asked of everybody, then the rest. */
        List<Field> fields() {
            return Stream.concat(first.stream(), more.stream()).toList();
        }
    }

    private static final String[] YES_NO = {"true", "false"};
    private static final String[] MATERIALS = {"cork", "rubber-cork", "eva", "carbon", "wood"};

    /** All of them. */
    static final List<Question> ALL = List.of(
            new Question(
                    "fish",
                    List.of(Field.text("name"), Field.amount("largestFish", "kg"), landing()),
                    List.of(Field.text("customer"))),
            new Question(
                    "where",
                    List.of(
                            Field.of(Kind.CHOICE, "fishedFrom", "bank", "kayak", "pier", "wading", "beach"),
                            Field.of(Kind.CHOICE, "water", "fresh", "brackish", "salt", "saltEveryDay")),
                    List.of(
                            Field.of(Kind.CHOICE, "rodType", "spinning", "casting", "surfSpinning"),
                            Field.of(Kind.CHOICE, "hands", "1", "2"))),
            new Question(
                    "lures",
                    List.of(
                            Field.amount("lure.lightest", "g"),
                            Field.amount("lure.usual", "g"),
                            Field.amount("lure.heaviest", "g")),
                    List.of()),
            new Question(
                    "line",
                    List.of(
                            Field.of(Kind.CHOICE, "line.kind", "braid", "nylon", "fluorocarbon"),
                            Field.of(Kind.LINE, "line.gauge"),
                            Field.of(Kind.LEADER, "leader.strength")),
                    List.of(
                            Field.amount("leader.length", "mm"),
                            Field.of(
                                    Kind.CHOICE,
                                    "leader.knot",
                                    "fg",
                                    "pr",
                                    "albright",
                                    "doubleUni",
                                    "surgeon",
                                    "blood"),
                            Field.of(Kind.CHOICE, "leader.castThroughRings", YES_NO))),
            new Question(
                    "reel",
                    List.of(Field.of(Kind.WHOLE, "reel.size"), Field.amount("drag", "kg")),
                    List.of(
                            Field.amount("reel.mass", "g"),
                            Field.amount("reel.footLength", "mm"),
                            Field.amount("reel.footThickness", "mm"),
                            Field.amount("reel.footWidth", "mm"),
                            Field.amount("reel.lipDiameter", "mm"),
                            Field.amount("reel.stemHeight", "mm"),
                            Field.amount("reel.centreOffset", "mm"))),
            new Question(
                    "size",
                    List.of(Field.span("length", "mm"), Field.span("pieces", ""), Field.amount("packedMax", "mm")),
                    List.of()),
            new Question(
                    "hand",
                    List.of(Field.of(Kind.CHOICE, "hand.size", "child", "small", "medium", "large")),
                    List.of(
                            Field.amount("hand.palm", "mm"),
                            Field.amount("hand.forearm", "mm"),
                            Field.span("reach", "mm"))),
            new Question(
                    "handle",
                    List.of(
                            Field.of(Kind.WISH, "handle.form", "split", "full"),
                            Field.of(Kind.WISH, "handle.foreGrip", YES_NO)),
                    List.of(
                            Field.of(Kind.WISH, "handle.keeper", YES_NO),
                            Field.of(Kind.WISH, "handle.movingHood", "front", "rear"),
                            Field.of(Kind.WISH, "handle.trigger", YES_NO),
                            Field.of(
                                    Kind.WISH,
                                    "handle.action",
                                    "slow",
                                    "moderate",
                                    "moderateFast",
                                    "fast",
                                    "extraFast"),
                            Field.of(Kind.CHOICE, "handle.mixedGrips", YES_NO))),
            new Question(
                    "look",
                    List.of(
                            Field.of(Kind.CHOICE, "look.theme", "classic", "modern", "natural", "stealth", "bright"),
                            Field.of(Kind.SOME, "look.likedMaterials", MATERIALS)),
                    List.of(Field.of(Kind.SOME, "look.refusedMaterials", MATERIALS), Field.text("look.inscription"))),
            new Question(
                    "deal",
                    List.of(Field.of(Kind.BUDGET, "budget"), Field.text("wantedBy")),
                    List.of(Field.of(Kind.CHOICE, "durabilityClass", "1", "2", "3", "4", "5"))));

    /** What counts how much. */
    static final List<Field> PRIORITIES = List.of(
            Field.of(Kind.WEIGHT, "priorities.weight"),
            Field.of(Kind.WEIGHT, "priorities.balance"),
            Field.of(Kind.WEIGHT, "priorities.swingWeight"),
            Field.of(Kind.WEIGHT, "priorities.price"),
            Field.of(Kind.WEIGHT, "priorities.style"),
            Field.of(Kind.WEIGHT, "priorities.durability"));

    private Questions() {}

    private static Field landing() {
        return Field.of(Kind.CHOICE, "landing", "net", "hand", "lifted");
    }

    /** Every field of every question. */
    static List<Field> fields() {
        List<Field> all = new ArrayList<>();
        for (Question question : ALL) {
            all.addAll(question.fields());
        }
        all.addAll(PRIORITIES);
        return all;
    }
}
