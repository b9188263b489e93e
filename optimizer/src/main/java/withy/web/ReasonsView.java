package withy.web;

import java.util.List;

/** Pages that tell reasons. */
public final class ReasonsView {
    private ReasonsView() {}

    /**
     * What comes in its place below what is there.
     *
     * @param words what it is; empty where nothing more comes
     * @param seen the stage that is on the page
     */
    public record More(String words, int seen) {
        static final More NONE = new More("", 0);

        static More of(boolean whole, String key, int seen) {
            return whole ? NONE : new More(Words.say(key), seen);
        }
    }

    /**
     * Everything made for one place of the rod.
     *
     * @param frame around it
     * @param heading place and build
     * @param intro the build by name, and how to read the lines
     * @param place rank and station, as an address has them
     * @param now id of the part that is there, or empty
     * @param fits parts that would be legal
     * @param refused parts that would break a rule
     * @param coming what is still on its way
     * @param unfinished true where it was cut short
     */
    public record DrawerView(
            Frame frame,
            String heading,
            String intro,
            String place,
            String now,
            List<Line> fits,
            List<Line> refused,
            More coming,
            boolean unfinished) {
        /** Parts that fit on a screen or two. */
        private static final int SHORT = 8;

        public DrawerView {
            fits = List.copyOf(fits);
            refused = List.copyOf(refused);
        }

        /** True where the way back is out of sight at the end of it. */
        public boolean longer() {
            return fits.size() + refused.size() > SHORT;
        }
    }

    /** A part and what it would do. */
    public record Line(String part, String name, boolean here, String words) {
        /** True where the words begin with the part's name, which stands before them already. */
        public boolean named() {
            return words.startsWith(name + " ");
        }

        /** The words without the name at their beginning. */
        public String rest() {
            return named() ? words.substring(name.length() + 1) : words;
        }
    }

    /**
     * Why not a part.
     *
     * @param frame around it
     * @param from where it was asked
     * @param heading the question
     * @param part its id
     * @param name maker and model
     * @param answer in a sentence; empty while that is looked for
     * @param also other rules it breaks
     * @param flips what would have to change
     * @param shop the same of what the part costs the shop
     * @param beside the best build and the one with the part
     * @param differences one an objective
     * @param tryable true where the part can be asked for
     * @param refusable true where a build may hold it, so that there is something to refuse
     * @param coming what is still on its way
     * @param unfinished true where it was cut short
     */
    public record WhyView(
            Frame frame,
            CameFrom from,
            String heading,
            String part,
            String name,
            String answer,
            List<String> also,
            List<String> flips,
            List<String> shop,
            List<String> beside,
            List<String> differences,
            boolean tryable,
            boolean refusable,
            More coming,
            boolean unfinished) {
        public WhyView {
            also = List.copyOf(also);
            flips = List.copyOf(flips);
            shop = List.copyOf(shop);
            beside = List.copyOf(beside);
            differences = List.copyOf(differences);
        }
    }

    /**
     * Can it be lighter.
     *
     * @param frame around it
     * @param best the best build
     * @param answer what the lightest gives up; empty while that is looked for
     * @param proof how sure that is
     * @param drawing what each gram costs
     * @param heads over its table
     * @param rows its table
     * @param ledger lighter parts by station
     * @param coming what is still on its way
     * @param unfinished true where it was cut short
     */
    public record LighterView(
            Frame frame,
            String best,
            String answer,
            String proof,
            String drawing,
            List<String> heads,
            List<BuildsView.Line> rows,
            List<Station> ledger,
            More coming,
            boolean unfinished) {
        public LighterView {
            heads = List.copyOf(heads);
            rows = List.copyOf(rows);
            ledger = List.copyOf(ledger);
        }
    }

    /** Lighter parts of one station. */
    public record Station(String key, String title, List<Line> fits, List<Line> refused) {
        public Station {
            fits = List.copyOf(fits);
            refused = List.copyOf(refused);
        }
    }

    /**
     * What else there is.
     *
     * @param frame around it
     * @param said how it was sampled
     * @param drawing parallel coordinates
     * @param heads over its table
     * @param rows its table
     * @param firm how firm the offer is
     * @param coming what is still on its way
     * @param unfinished true where it was cut short
     */
    public record AroundView(
            Frame frame,
            String said,
            String drawing,
            List<String> heads,
            List<BuildsView.Line> rows,
            List<String> firm,
            More coming,
            boolean unfinished) {
        public AroundView {
            heads = List.copyOf(heads);
            rows = List.copyOf(rows);
            firm = List.copyOf(firm);
        }
    }
}
