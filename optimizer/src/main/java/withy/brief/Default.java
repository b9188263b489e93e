package withy.brief;

import java.util.Locale;

/** Everything that is taken where a brief leaves it out, with the one sentence that tells so in the answer. */
enum Default {
    SCHEMA("No schema number is told: %s is taken."),
    NAME("The commission has no name: \"%s\" is taken."),
    ROD_TYPE("No rod type is told: %s, since it is fished from %s."),
    FISHED_FROM("Where it is fished from is not told: %s."),
    HANDS("One or two hands is not told: %s, by rod type, lures and length (common practice)."),
    LENGTH("No length is told: %s to %s mm, usual for this rod type and these lures (common practice)."),
    LENGTH_ABOUT("The length is told as one figure: %s to %s mm is looked for (assumed)."),
    LENGTH_MIN("No least length is told: %s mm, 250 mm under the most (assumed)."),
    LENGTH_MAX("No greatest length is told: %s mm, 250 mm over the least (assumed)."),
    PIECES("The number of pieces is not told: %s to %s."),
    PACKED("No packed length is told: any will do."),
    LURE("No lure is told: %s g, usual for this rod type (assumed)."),
    LURE_LIGHTEST("No lightest lure is told: %s g, half the usual (assumed)."),
    LURE_USUAL(
            "No usual lure is told: %s g, from the others at 60 %% of the heaviest or twice the lightest (common practice)."),
    LURE_HEAVIEST("No heaviest lure is told: %s g, 1.5 times the usual (common practice)."),
    LINE_KIND("What the main line is made of is not told: %s."),
    LINE_GAUGE("No thickness or strength of main line is told: PE %s, usual with these lures (assumed)."),
    LINE_NYLON("No thickness or strength of main line is told: number %s, usual with these lures (assumed)."),
    LINE_DIAMETER("The main line's diameter is not told: %s mm, at %s lb for each line number (assumed)."),
    LINE_STRENGTH("The main line's strength is not told: about %s, at %s lb for each line number (assumed)."),
    LEADER("No leader is told: the main line goes straight to the lure."),
    LEADER_STRENGTH("The leader's strength is not told: about %s, %s (assumed)."),
    LEADER_DIAMETER("The leader's diameter is not told: %s mm, at 4 lb for each line number (assumed)."),
    KNOT("The leader's knot is not told: %s."),
    CAST_THROUGH("Whether the leader's knot is cast through the rings is not told: it is taken to be, the safe side."),
    CAST_BY_LENGTH(
            "Whether the leader's knot is cast through the rings is not told: %s, by a leader of %s mm against 600 mm hung from the tip (assumed)."),
    DRAG("The drag is not told: %s kg, a quarter of the weaker of main line and leader (assumed)."),
    REEL_SIZE("No reel is told: size %s, usual with these lures (common practice)."),
    REEL_FOOT("The reel foot's length is not told: %s mm, the middle of its size class (from memory)."),
    REEL_THICKNESS("The reel foot's thickness is not told: %s mm, usual for its size class (from memory)."),
    REEL_WIDTH("The reel foot's width is not told: %s mm, usual for its size class (from memory)."),
    REEL_MASS("The reel's mass with line is not told: %s g, the middle of its size class (from memory)."),
    REEL_OFFSET("The reel's centre of mass is not told: %s mm ahead of the foot's centre (from memory)."),
    REEL_LIP("The spool's lip is not told: %s mm, the middle of its size class (from memory)."),
    REEL_STEM("The reel's stem height is not told: %s mm, usual for its size class (assumed)."),
    FISH("The largest fish is not told: %s kg, twice the drag (assumed)."),
    LANDING("How fish are landed is not told: %s, usual where it is fished from."),
    DURABILITY(
            "No durability class is told: %s, by a drag of %s kg and the place it is fished from (common practice)."),
    WATER("Fresh or salt is not told: %s, class %s, by the place it is fished from."),
    PALM_BY_SIZE("The palm's breadth is not told: %s mm, %s."),
    REACH_BY_BODY("Reel foot to butt end is not told: %s to %s mm, %s times a forearm-to-grip length of %s mm (%s)."),
    REACH_BY_TYPE("Reel foot to butt end is not told: %s to %s mm, usual for %s (common practice)."),
    REACH_MIN("The shortest reach is not told: %s mm, 40 mm under the longest (assumed)."),
    REACH_MAX("The longest reach is not told: %s mm, 40 mm over the shortest (assumed)."),
    REACH_ABOUT("The reach is told as one figure: %s to %s mm is looked for (assumed)."),
    GUIDE_COUNT(
            "What decides the number of guides is not told: the usual count for the rod's length is the least (common practice)."),
    HANDLE("Handle and blank are open in: %s."),
    NICE("The %s is wished for, not insisted on: nice to have, worth %s steps."),
    NICE_STEPS("What the %s is worth is not told: nice to have, worth %s steps."),
    LOOK("The look is open in: %s."),
    BUDGET("No budget is told: the price has no ceiling."),
    WANTED_BY("No date is told: parts may be ordered however long they take."),
    WANTED_YEAR("The date is told without a year: %s is taken, the next such day."),
    PRIORITY("The priority of %s is not told: %s."),
    ZONE("No balance is told: level between %s and %s mm ahead of the reel foot is wanted (common practice)."),
    STEP("The least difference worth noticing in %s is not told: %s, from the shop's rates."),
    STEP_PRICE("The least difference worth noticing in price is not told: %s, %s %% of %s."),
    STEP_PRICE_ASSUMED(
            "The least difference worth noticing in price is not told, and the shop's rates have no usual price for the rod type: %s (assumed).");

    private final String template;

    Default(String template) {
        this.template = template;
    }

    /** The sentence, numbers written without trailing zeros. */
    String sentence(Object... facts) {
        Object[] words = new Object[facts.length];
        for (int i = 0; i < facts.length; i++) {
            words[i] = facts[i] instanceof Double number ? Bounds.plain(number) : facts[i];
        }
        return String.format(Locale.ROOT, template, words);
    }
}
