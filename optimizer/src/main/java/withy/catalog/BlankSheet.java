package withy.catalog;

import static withy.catalog.Column.length;
import static withy.catalog.Column.mass;
import static withy.catalog.Column.word;
import static withy.catalog.Column.wordSet;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.catalog.Column.Sort;

/** Columns of {@code blanks.csv}. */
final class BlankSheet {
    static final Sheet<Blank> BLANKS = new Sheet<>(PartKind.BLANK, Blank.class, columns(), BlankSheet::read);

    /** Two readings of one blank's length may differ by so much, mm. */
    private static final double SLACK_MM = 1;

    private BlankSheet() {}

    private static List<Column<Blank>> columns() {
        return List.of(
                wordSet(
                        "rod_type",
                        RodType.class,
                        "what the maker sells it for",
                        blank -> List.copyOf(blank.rodTypes())),
                length("length_mm", 900, 6000, "assembled length", Blank::lengthMm),
                new Column<>(
                        "section_lengths_mm",
                        Sort.LENGTHS,
                        true,
                        150,
                        6000,
                        List.of(),
                        "each section from butt to tip; their sum less the overlaps is the length",
                        Blank::sectionLengthsMm),
                word("ferrule_kind", FerruleKind.class, "how the sections join", Blank::ferruleKind),
                Column.<Blank>length(
                                "ferrule_overlap_mm",
                                0,
                                300,
                                "length of each joint; 0 or empty for one piece",
                                Blank::ferruleOverlapMm)
                        .optional(),
                Column.<Blank>mass(
                                "ferrule_extra_g",
                                0,
                                60,
                                "mass of one joint beyond the plain tube",
                                Blank::ferruleExtraG)
                        .optional(),
                new Column<>(
                        "stations_mm",
                        Sort.STATIONS,
                        true,
                        0.5,
                        60,
                        List.of(),
                        "outer diameters from the butt (x = 0) to the tip (x = length); a joint's step is two stations of one x",
                        Blank::stations),
                Column.<Blank>length("wall_mm", 0.1, 6, "wall thickness, if known", Blank::wallMm)
                        .optional(),
                Column.<Blank>length("balance_mm", 100, 4000, "measured balance point from the butt", Blank::balanceMm)
                        .optional(),
                word("action", Action.class, "where it bends", Blank::action),
                Column.<Blank>text("power", "maker's own word, never used to choose", Blank::power)
                        .optional(),
                mass("lure_min_g", 0.1, 1000, "rated lightest lure", Blank::lureMinG),
                mass("lure_max_g", 0.5, 1000, "rated heaviest lure", Blank::lureMaxG),
                Column.<Blank>mass("own_lure_min_g", 0.1, 1000, "the builder's own rating", Blank::ownLureMinG)
                        .optional(),
                Column.<Blank>mass("own_lure_max_g", 0.5, 1000, "the builder's own rating", Blank::ownLureMaxG)
                        .optional(),
                strength("line_min_kg", "rated least line strength", Blank::lineMinKg),
                strength("line_max_kg", "rated greatest line strength", Blank::lineMaxKg),
                gauge("gauge_min", "rated least braid gauge number", Blank::gaugeMin),
                gauge("gauge_max", "rated greatest braid gauge number", Blank::gaugeMax),
                strength("lift_kg", "maker's lift rating (dead load)", Blank::liftKg)
                        .optional(),
                strength("own_lift_kg", "the builder's own lift rating", Blank::ownLiftKg)
                        .optional(),
                Column.<Blank>mass(
                                "third_test_g",
                                1,
                                20_000,
                                "weight that drops the tip by a third of the length",
                                Blank::thirdTestG)
                        .optional());
    }

    private static Column<Blank> strength(String name, String about, Function<Blank, @Nullable Object> value) {
        return Column.number(name, Sort.STRENGTH, 0.1, 100, about, value);
    }

    private static Column<Blank> gauge(String name, String about, Function<Blank, @Nullable Object> value) {
        return Column.number(name, Sort.BARE, 0.05, 30, about, value).optional();
    }

    /** The stations with the last at the tip, where rounding (a length in inches, say) put it {@value #SLACK_MM} mm beside it at most. */
    private static List<Blank.OdStation> reached(List<Blank.OdStation> stations, double lengthMm) {
        int last = stations.size() - 1;
        Blank.OdStation tip = stations.get(last);
        if (Math.abs(tip.xMm() - lengthMm) > SLACK_MM) {
            return stations;
        }
        List<Blank.OdStation> reached = new ArrayList<>(stations);
        reached.set(last, new Blank.OdStation(lengthMm, tip.odMm()));
        return List.copyOf(reached);
    }

    private static Blank read(Row row) {
        Set<RodType> types = new TreeSet<>(row.words("rod_type", RodType.class));
        return new Blank(
                row.facts(),
                types,
                row.number("length_mm"),
                row.numbers("section_lengths_mm"),
                row.word("ferrule_kind", FerruleKind.class),
                row.number("ferrule_overlap_mm", 0),
                row.number("ferrule_extra_g", 0),
                reached(row.stations("stations_mm"), row.number("length_mm")),
                row.numberOrNull("wall_mm"),
                row.numberOrNull("balance_mm"),
                row.word("action", Action.class),
                row.text("power"),
                row.number("lure_min_g"),
                row.number("lure_max_g"),
                row.numberOrNull("own_lure_min_g"),
                row.numberOrNull("own_lure_max_g"),
                row.number("line_min_kg"),
                row.number("line_max_kg"),
                row.numberOrNull("gauge_min"),
                row.numberOrNull("gauge_max"),
                row.numberOrNull("lift_kg"),
                row.numberOrNull("own_lift_kg"),
                row.numberOrNull("third_test_g"));
    }
}
