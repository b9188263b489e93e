package withy.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import withy.app.DrawerAnswer.DrawerLine;
import withy.explain.Phrases;

/** Parts of a drawer of which the same is said, but for their names and for one figure of their own. */
final class DrawerGroup {
    /** In the place of a part's name. */
    private static final String NAME = "\u0001";

    /** In the place of a figure. */
    private static final String NUMBER = "\u0002";

    /** What each part allows: told one by one where it is only a few figures. */
    private static final Pattern ALLOWED = figure(
            "rated from |rated up to |which takes up to |which clamps from |line of up to |reel feet up to ",
            " (?:(?:g|mm)\\.|kg[; ]|mm (?:thick|wide))");

    /** What differs from part to part. */
    private static final List<Pattern> FIGURES = List.of(
            ALLOWED,
            figure("is only |is ", " (?:% |mm too |mm clear|mm long;|mm; tape)"),
            figure("with ", " mm to spare"),
            figure(": size ", " after "),
            figure("a bore of ", " mm;"),
            figure("price of ", " [A-Z]{3} "));

    private static final int MOST_ONE_BY_ONE = 4;

    /** "each does not grip the blank: its bore". */
    private static final Pattern NONE = Pattern.compile("each (is not|will not|does not ([a-z]+)) ");

    /** Of what is said of two parts at once: "and Fen 7 differ in …". */
    private static final List<String> BOTH = List.of("differ", "are", "have");

    private DrawerGroup() {}

    private static Pattern figure(String before, String after) {
        return Pattern.compile("(?<=" + before + ")[0-9]+(?:\\.[0-9]+)?(?=" + after + ")");
    }

    /** Lines of which the same is said, in their order. */
    static List<List<DrawerLine>> alike(List<DrawerLine> lines) {
        Map<String, List<DrawerLine>> alike = new LinkedHashMap<>();
        lines.forEach(line ->
                alike.computeIfAbsent(kind(line), any -> new ArrayList<>()).add(line));
        return List.copyOf(alike.values());
    }

    /** What is said of a part, whatever its name and whatever figure of its own it has. */
    private static String kind(DrawerLine line) {
        String said = said(line);
        if (line.breaks() == null) {
            return said;
        }
        Matcher own = own(said);
        return own == null ? said : with(said, own, NUMBER);
    }

    /** The figure of the part itself: none that stands before its name, where that is said; null where there is none. */
    private static @Nullable Matcher own(String said) {
        int from = Math.max(0, said.indexOf(NAME));
        for (Pattern pattern : FIGURES) {
            Matcher matcher = pattern.matcher(said);
            if (matcher.find(from)) {
                return matcher;
            }
        }
        return null;
    }

    private static String with(String said, Matcher own, String words) {
        return said.substring(0, own.start()) + words + said.substring(own.end());
    }

    /** What is said of a part without its name; the whole sentence where that is not in it. */
    private static String said(DrawerLine line) {
        String sentence = line.sentence();
        Matcher named = Pattern.compile("(?<!\\S)" + Pattern.quote(line.name()) + "(?=[\\s,;:]|\\.$)")
                .matcher(sentence);
        if (line.breaks() == null || !named.find()) {
            return sentence;
        }
        String own = Phrases.ownFirst(line.name(), sentence);
        return own != null
                ? NAME + " " + own
                : sentence.substring(0, named.start()) + NAME + sentence.substring(named.end());
    }

    /** One line for all of them. */
    static String told(List<DrawerLine> same) {
        DrawerLine first = same.get(0);
        String names = NamesTogether.of(same.stream().map(DrawerLine::name).toList());
        if (first.breaks() == null) {
            return names + ": " + first.sentence() + ".";
        }
        String said = ranged(same.stream().map(DrawerGroup::said).toList());
        if (!said.contains(NAME)) {
            return Phrases.of("drawer.eachOf", names, Phrases.clause(said));
        }
        if (same.size() == 1) {
            return first.sentence();
        }
        return said.startsWith(NAME)
                ? ofEach(names, said.substring(NAME.length()).strip())
                : Phrases.of("drawer.eachOf", names, Phrases.clause(said).replace(NAME, Phrases.of("drawer.each.one")));
    }

    /** What is said after the names of several: "each …", and of what holds of none of them "none …". */
    private static String ofEach(String names, String said) {
        for (String verb : BOTH) {
            Matcher both = Pattern.compile(Phrases.of("drawer.both." + verb)).matcher(said);
            if (both.matches()) {
                return Phrases.of("drawer.each." + verb, names, both.group(1), both.group(2));
            }
        }
        String each = Phrases.of("drawer.each", "", said);
        Matcher none = NONE.matcher(each);
        if (!none.find()) {
            return names + each;
        }
        String verb = none.group(2);
        String words = verb == null
                ? none.group(1).substring(0, none.group(1).indexOf(' '))
                : Phrases.of("drawer.none." + verb);
        String rest = each.substring(none.end()).replace(Phrases.of("drawer.its"), Phrases.of("drawer.their"));
        return Phrases.of("drawer.none", names, words, rest);
    }

    /** One sentence for several that differ in a figure only. */
    private static String ranged(List<String> said) {
        TreeMap<Double, String> figures = new TreeMap<>();
        for (String one : said) {
            Matcher own = own(one);
            if (own != null) {
                figures.put(Double.valueOf(own.group()), own.group());
            }
        }
        String first = said.get(0);
        Matcher own = own(first);
        if (own == null || figures.size() < 2) {
            return first;
        }
        boolean few = own.pattern() == ALLOWED && figures.size() <= MOST_ONE_BY_ONE;
        String words = few
                ? Phrases.either(List.copyOf(figures.values()))
                : Phrases.of(
                        "drawer.range",
                        figures.firstEntry().getValue(),
                        figures.lastEntry().getValue());
        return with(first, own, words);
    }
}
