package withy.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import withy.fixture.Fixtures;
import withy.rod.Station;
import withy.rules.Cases.Case;
import withy.rules.Cases.Kind;
import withy.rules.Verdict.Outcome;

/** What a rule says when it is broken: which figure is the limit, on which side of it the other lies, and of what that is said. */
class RuleWordsTest {
    private static final String FIGURE = "([0-9]+(?:\\.[0-9]+)?)";
    private static final String UNIT = "(?: (?:mm|g|kg|%|EUR))?";

    /** Limits that more is asked than. */
    private static final List<Pattern> LEAST = List.of(
            Pattern.compile("(?:at least|from|below)(?: number)? " + FIGURE),
            Pattern.compile(FIGURE + UNIT + " (?:at least|is the least)"));

    /** Limits that less is asked than. */
    private static final List<Pattern> MOST = List.of(
            Pattern.compile("(?:up to|at most|within|more than|over|beyond|budget of)(?:(?: line)? number)? " + FIGURE),
            Pattern.compile(FIGURE + UNIT + " (?:at most|is the most|only)"));

    /** What falls short of a limit. */
    private static final Pattern LITTLE = Pattern.compile("\\btoo (?:few|light|thin|short)\\b|\\bonly " + FIGURE);

    /** What goes beyond one. */
    private static final Pattern MUCH = Pattern.compile("\\btoo (?:many|heavy|strong|long|thick|wide)\\b");

    /** Checks that say with both a limit and a word what is wrong. */
    private static final Set<String> BOTH =
            Set.of("length.fewest-pieces", "length.most-pieces", "handle.barrel-thin", "handle.barrel-thick");

    private record Broken(Case c, Fixtures fixture, Verdict verdict, String sentence) {
        boolean tooLittle() {
            return verdict.measured() < verdict.limit();
        }

        @Override
        public String toString() {
            return c.id() + ", " + verdict.measured() + " against " + verdict.limit() + ": " + sentence;
        }
    }

    /** What is told with figures. */
    private static List<Broken> broken() {
        return all().stream()
                .filter(one -> !Double.isNaN(one.verdict().measured()))
                .toList();
    }

    private static List<Broken> all() {
        List<Broken> all = new ArrayList<>();
        for (Case c : EighteenRulesTest.CASES.all()) {
            if (c.kind() == Kind.BROKEN || c.kind() == Kind.WARNED) {
                Fixtures fixture = Fixtures.legal();
                c.change().accept(fixture);
                Sentences sentences = new Sentences(fixture.catalog());
                Protocol protocol = new Protocol();
                Judge.ask(fixture.rod(), Rulebook.standard(), protocol);
                protocol.everything().stream()
                        .filter(v -> v.rule().equals(c.rule()) && v.check().equals(c.check()))
                        .filter(v -> v.outcome() == Outcome.FAIL || v.outcome() == Outcome.WARNING)
                        .forEach(v -> all.add(new Broken(c, fixture, v, sentences.of(v))));
            }
        }
        return all;
    }

    /** Names are no figures. */
    private static String bare(Broken one) {
        String bare = one.sentence();
        for (var part : one.fixture().catalog().byId().values()) {
            bare = bare.replace(part.facts().name(), "#");
        }
        return bare;
    }

    private static List<String> figures(List<Pattern> patterns, String text) {
        List<String> figures = new ArrayList<>();
        for (Pattern pattern : patterns) {
            Matcher matcher = pattern.matcher(text);
            while (matcher.find()) {
                figures.add(matcher.group(1));
            }
        }
        return figures;
    }

    /** True where a figure is a value to as many places as it is told with. */
    private static boolean is(String figure, double value, Broken one) {
        int point = figure.indexOf('.');
        double half = 0.5 * Math.pow(10, point < 0 ? 0 : point + 1 - figure.length());
        double scale =
                one.verdict().unit() == Unit.MINOR ? 0.01 : one.sentence().contains(" %") ? 100 : 1;
        return Math.abs(Double.parseDouble(figure) - value * scale) <= half + 1e-9;
    }

    /** "At least" stands at the limit of what is too little, "at most" at that of what is too much; so do the words for either. */
    @Test
    void limitsAreOnTheSideThatIsSaid() {
        Set<String> least = new TreeSet<>();
        Set<String> most = new TreeSet<>();
        for (Broken one : broken()) {
            String bare = bare(one);
            for (String figure : figures(LEAST, bare)) {
                assertTrue(one.tooLittle() && is(figure, one.verdict().limit(), one), one::toString);
                least.add(one.c().id());
            }
            for (String figure : figures(MOST, bare)) {
                assertTrue(!one.tooLittle() && is(figure, one.verdict().limit(), one), one::toString);
                most.add(one.c().id());
            }
            boolean little = LITTLE.matcher(bare).find();
            boolean much = MUCH.matcher(bare).find();
            assertFalse(little && !one.tooLittle() || much && one.tooLittle(), one::toString);
            assertTrue(little || much || !BOTH.contains(one.c().id()), one::toString);
        }
        assertTrue(least.size() >= 15 && most.size() >= 20, least + " " + most);
        Set<String> told = new TreeSet<>(least);
        told.addAll(most);
        assertTrue(told.containsAll(BOTH) && told.contains("guide-train.casting-stripper"), "" + told);
    }

    /** Percents and lengths of rods are told in whole ones, unless that would hide what is broken. */
    @Test
    void nothingIsToldFinerThanAnybodyMeasures() {
        Pattern percent = Pattern.compile(FIGURE + " %");
        Pattern length = Pattern.compile("([0-9]{3,}(?:\\.[0-9]+)?) mm long");
        int whole = 0;
        int fine = 0;
        for (Broken one : broken()) {
            double scale = one.sentence().contains(" %") ? 100 : 1;
            boolean hidden = Math.round(one.verdict().measured() * scale)
                    == Math.round(one.verdict().limit() * scale);
            boolean rod = Math.min(one.verdict().measured(), one.verdict().limit()) >= 600;
            List<String> figures = figures(rod ? List.of(percent, length) : List.of(percent), bare(one));
            boolean point = figures.stream().anyMatch(figure -> figure.contains("."));
            assertTrue(figures.isEmpty() || !point || hidden, one::toString);
            assertTrue(new TreeSet<>(figures).size() == figures.size(), one::toString);
            whole += !figures.isEmpty() && !hidden ? 1 : 0;
            fine += !figures.isEmpty() && hidden ? 1 : 0;
        }
        assertTrue(whole > 0 && fine > 5, whole + " " + fine);
    }

    /** As they are read aloud: names left out, figures as they come. */
    @Test
    void asItIsSaidOnThePhone() {
        Map<String, String> said = Map.ofEntries(
                Map.entry("length.blank-longest", "# alone is F mm long; the whole rod may be F mm at most."),
                Map.entry(
                        "length.section-longest",
                        "The longest section of # is F mm long; packed, the rod may be F mm at most."),
                Map.entry(
                        "line-class.weakest",
                        "# is rated for line of up to F kg; this tackle holds F kg, even at its knot."),
                Map.entry(
                        "line-class.main-line",
                        "# takes a main line of up to F kg behind a weaker leader; this one holds F kg."),
                Map.entry("lure-range.lightest", "The lightest lure of F g will hardly load #; lures from F g do."),
                Map.entry(
                        "durability.double-lock",
                        "# is held by one nut only; from class F a double lock is asked for."),
                Map.entry("reel-fit.hood-end", "The moving hood of # is not at the end that is wished."),
                Map.entry("seat-on-blank.arbor-needless", "# needs a gap of at least F mm; this one is F mm."),
                Map.entry(
                        "handle.ferrule-clear",
                        "The first joint of # would lie under the handle, which reaches F mm too far."),
                Map.entry(
                        "reel-fit.foot-thickness",
                        "# takes reel feet up to F mm thick under its hoods; this one is F mm."),
                Map.entry("reel-fit.foot-width", "# takes reel feet up to F mm wide in its hoods; this one is F mm."),
                Map.entry("handle.trigger-wish", "# does not meet the wish about a trigger."),
                Map.entry("handle.grip-place", "# is made for another place on the handle."),
                Map.entry("reel-fit.hood-size", "# is of another size than #."),
                Map.entry(
                        "handle.butt-closed",
                        "The butt would be left open: it takes a cap, or a grip that is closed by itself."),
                Map.entry("handle.butt-once", "# does not go on the butt: # is closed by itself."),
                Map.entry("handle.grip-longest", "# would have to be F mm long; it is sold F mm long."),
                Map.entry("handle.recess-family", "# is recessed for another hood, not for that of #."),
                Map.entry("stock.one-piece", "# is not to be had in time: F free."),
                Map.entry("guide-train.clearance", "Under load the line would rub on #: F mm of room is missing."));
        Set<String> heard = new TreeSet<>();
        for (Broken one : all()) {
            String words = said.get(one.c().id());
            if (words != null) {
                heard.add(one.c().id());
                assertEquals(words, bare(one).replaceAll(FIGURE, "F"), one::toString);
            }
        }
        assertEquals(new TreeSet<>(said.keySet()), heard);
    }

    /** What is said of pieces, of the barrel and of the first ring names the part, says what of it was measured, and what it is measured against. */
    @Test
    void whatIsMeasuredAndAgainstWhat() {
        Map<String, List<String>> about = Map.of(
                "length.fewest-pieces", List.of("pieces", "wish"),
                "length.most-pieces", List.of("pieces", "wish"),
                "handle.barrel-thin", List.of("barrel", "palm"),
                "handle.barrel-thick", List.of("barrel", "palm"),
                "guide-train.casting-stripper", List.of("ring of size", "turning spool", "first guide"));
        Map<String, Station> stations = Map.of(
                "handle.barrel-thin", Station.SEAT,
                "handle.barrel-thick", Station.SEAT,
                "guide-train.casting-stripper", Station.guide(1));
        Set<String> seen = new TreeSet<>();
        for (Broken one : broken()) {
            String id = one.c().id();
            if (about.containsKey(id)) {
                seen.add(id);
                about.get(id).forEach(words -> assertTrue(bare(one).contains(words), one::toString));
                Station station = stations.get(id);
                String part = station == null
                        ? one.fixture().build().layout().blankId()
                        : one.fixture().build().partAt(station);
                String name = one.fixture().partOf(part).facts().name();
                assertTrue(one.sentence().contains(name), one::toString);
                List<String> figures = figures(List.of(Pattern.compile(FIGURE)), bare(one));
                assertEquals(2, figures.size(), one::toString);
                assertTrue(is(figures.get(0), one.verdict().measured(), one), one::toString);
                assertTrue(is(figures.get(1), one.verdict().limit(), one), one::toString);
            }
        }
        assertEquals(new TreeSet<>(about.keySet()), seen);
    }
}
