package withy.web;

import java.util.List;

/**
 * Up to three builds side by side.
 *
 * @param frame around it
 * @param name what the talk is called
 * @param asked the brief in a line or two
 * @param undo what going back would undo, or empty
 * @param undoStep step before, or empty
 * @param cards one a build
 * @param heads titles of the builds, over columns
 * @param differences where they differ
 * @param figures what a builder reads of each
 * @param meanings what each of these figures means
 * @param weights how the weight of each comes about
 * @param bought what the shop pays for the parts of each
 * @param costs how the price of each comes about
 * @param currency code of its currency, or empty
 * @param priorities sliders
 * @param wishes parts that are kept or refused, each with the way to let go
 * @param reasons why there are fewer than three
 * @param conflicts what can't be had together, where there is none
 * @param repairs ways out where there is none
 * @param taken what is taken for granted
 * @param warnings what is worth a look
 * @param cautions what to mind
 * @param lightest the lightest there is, in a sentence, or empty
 * @param coming what is still being looked for, or empty
 * @param standsIn true where the build is one known before, shown until the best is known
 * @param unfinished true where the search was cut short
 * @param catalogue hash of what it was worked out from, short
 */
public record BuildsView(
        Frame frame,
        String name,
        String asked,
        String undo,
        String undoStep,
        List<Card> cards,
        List<String> heads,
        List<Line> differences,
        List<Line> figures,
        List<Meaning> meanings,
        List<Line> weights,
        List<Line> bought,
        List<Line> costs,
        String currency,
        List<BriefView.FieldView> priorities,
        List<Wish> wishes,
        List<String> reasons,
        List<String> conflicts,
        List<Repair> repairs,
        List<String> taken,
        List<String> warnings,
        List<String> cautions,
        String lightest,
        String coming,
        boolean standsIn,
        boolean unfinished,
        String catalogue) {
    public BuildsView {
        cards = List.copyOf(cards);
        heads = List.copyOf(heads);
        differences = List.copyOf(differences);
        figures = List.copyOf(figures);
        meanings = List.copyOf(meanings);
        weights = List.copyOf(weights);
        bought = List.copyOf(bought);
        costs = List.copyOf(costs);
        priorities = List.copyOf(priorities);
        wishes = List.copyOf(wishes);
        reasons = List.copyOf(reasons);
        conflicts = List.copyOf(conflicts);
        repairs = List.copyOf(repairs);
        taken = List.copyOf(taken);
        warnings = List.copyOf(warnings);
        cautions = List.copyOf(cautions);
    }

    /**
     * One build.
     *
     * @param rank 1 is the best
     * @param name a few words
     * @param price what the customer pays
     * @param weight with its tolerance
     * @param tolerance ± of it
     * @param balance where it balances
     * @param other which parts are others than in the first, or empty
     * @param gives what it gains and gives up against the first, or that it is the best
     * @param proof how sure that is
     * @param drawing svg of the rod
     * @param handle svg of its handle
     * @param parts its parts
     */
    public record Card(
            int rank,
            String name,
            String price,
            String weight,
            String tolerance,
            String balance,
            String other,
            List<String> gives,
            String proof,
            String drawing,
            String handle,
            List<Part> parts) {
        public Card {
            gives = List.copyOf(gives);
            parts = List.copyOf(parts);
        }
    }

    /**
     * One part of a build.
     *
     * @param place where, in words
     * @param station key of its station
     * @param id catalogue id
     * @param name maker and model, with what it is cut to
     * @param weight g of all pieces, or empty
     * @param kept true where the brief insists on it
     */
    public record Part(String place, String station, String id, String name, String weight, boolean kept) {}

    /**
     * What a figure means.
     *
     * @param label the figure
     * @param words a sentence
     */
    public record Meaning(String label, String words) {}

    /**
     * A line of a table.
     *
     * @param label what it is about
     * @param cells one a column
     * @param within true where it is part of the line above it
     * @param to address of what it is about, or empty
     */
    public record Line(String label, List<Cell> cells, boolean within, String to) {
        public Line {
            cells = List.copyOf(cells);
        }

        /** A line that stands by itself. */
        public Line(String label, List<Cell> cells) {
            this(label, cells, false, "");
        }

        /** The same with the address of what it is about. */
        public Line(String label, List<Cell> cells, String to) {
            this(label, cells, false, to);
        }
    }

    /**
     * A cell.
     *
     * @param words what stands there
     * @param mark tie where it is no different worth noticing from the first build, best, or empty
     */
    public record Cell(String words, String mark) {}

    /** A part that is kept or refused. */
    public record Wish(String words, String part) {}

    /** A way out. */
    public record Repair(String words, String build) {}
}
