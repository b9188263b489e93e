package withy.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withy.explain.Phrases;

/** Names of parts joined as a builder says them: of parts that differ in size only the name once, then the sizes, smallest first. */
final class NamesTogether {
    /** A name that ends with a size: "Fen Check 12.5", "Fen Cap 10.2x26", "Fen H25". */
    private static final Pattern SIZED = Pattern.compile("(.+?) ([A-Z]{0,2})([0-9]+(?:\\.[0-9]+)?)([-x/.0-9]*)");

    private NamesTogether() {}

    private record Sized(String kind, double size, String words) {}

    /** In the order in which each name begins to be told. */
    static String of(List<String> names) {
        Map<String, List<Sized>> alike = new LinkedHashMap<>();
        for (String name : names) {
            Matcher sized = SIZED.matcher(name);
            boolean has = sized.matches();
            Sized one = has
                    ? new Sized(sized.group(2), Double.parseDouble(sized.group(3)), name.substring(sized.end(1) + 1))
                    : new Sized("", 0, "");
            alike.computeIfAbsent(has ? sized.group(1) : name, any -> new ArrayList<>())
                    .add(one);
        }
        List<String> told = new ArrayList<>();
        alike.forEach((name, sizes) -> {
            List<String> words = sizes.stream()
                    .sorted(Comparator.comparing(Sized::kind).thenComparingDouble(Sized::size))
                    .map(Sized::words)
                    .toList();
            told.add(words.get(0).isEmpty() ? name : name + " " + Phrases.list(words));
        });
        return Phrases.list(told);
    }
}
