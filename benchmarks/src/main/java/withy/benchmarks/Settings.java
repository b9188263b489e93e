package withy.benchmarks;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How much is measured.
 *
 * @param only the sections wanted
 * @param minutes time for the whole, shared out between the sections
 * @param caps longest races of the peers
 * @param words the command line
 */
record Settings(Set<Section> only, double minutes, Field.Caps caps, String words) {
    static final String ALLOWED =
            "nothing, --quick, --mechanics, or any of --minutes N, --cap-quality S, --cap-proof S, --only "
                    + String.join(
                            ",",
                            EnumSet.allOf(Section.class).stream()
                                    .map(Section::word)
                                    .toList());

    private static final double USUAL_MINUTES = 120;
    private static final Field.Caps USUAL = new Field.Caps(60, 600);

    /** Parts of the page. */
    enum Section {
        PEERS,
        LATENCY,
        COLD,
        PAGE,
        FRONT,
        SCALE,
        BRIEFS,
        FEATURES,
        MICRO;

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** True where the page is written: nothing is left out. */
    boolean whole() {
        return only.equals(EnumSet.allOf(Section.class));
    }

    boolean wants(Section section) {
        return only.contains(section);
    }

    /** Null where the words are not understood. */
    static @Nullable Settings of(List<String> args) {
        Set<Section> only = EnumSet.allOf(Section.class);
        double minutes = USUAL_MINUTES;
        double quality = USUAL.qualitySeconds();
        double proof = USUAL.proofSeconds();
        try {
            for (int i = 0; i < args.size(); i += 2) {
                String value = args.get(i + 1);
                switch (args.get(i)) {
                    case "--minutes" -> minutes = Double.parseDouble(value);
                    case "--cap-quality" -> quality = Double.parseDouble(value);
                    case "--cap-proof" -> proof = Double.parseDouble(value);
                    case "--only" -> {
                        only = EnumSet.noneOf(Section.class);
                        for (String word : value.split(",", -1)) {
                            only.add(Section.valueOf(word.toUpperCase(Locale.ROOT)));
                        }
                    }
                    default -> {
                        return null;
                    }
                }
            }
        } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
            return null;
        }
        return new Settings(
                only,
                minutes,
                new Field.Caps(quality, proof),
                ("benchmarks/bin/run " + String.join(" ", args)).strip());
    }
}
