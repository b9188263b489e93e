package withy.catalog.sample;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import withy.catalog.Operation;
import withy.catalog.PartKind;
import withy.catalog.Rates;
import withy.catalog.RodType;

/** Rates of the sample shop; labour minutes are common practice (trade tables), prices and tax invented. */
final class SampleRates {
    private SampleRates() {}

    static Rates rates() {
        return new Rates(
                "EUR",
                20,
                12,
                3000,
                0,
                minutes(),
                400,
                "clearlough-wrap-coat-high",
                "clearlough-bench-paste",
                Map.of(
                        RodType.SPINNING, List.of("A", "B"),
                        RodType.CASTING, List.of("A", "B", "C"),
                        RodType.SURF_SPINNING, List.of("C", "D")),
                0.45,
                0.35,
                6,
                8,
                0.0009,
                tolerances(),
                0.8,
                Rates.Steps.ASSUMED,
                Map.of(RodType.SPINNING, 52000L, RodType.CASTING, 58000L, RodType.SURF_SPINNING, 68000L));
    }

    private static Map<Operation, Double> minutes() {
        Map<Operation, Double> minutes = new EnumMap<>(Operation.class);
        for (Operation operation : Operation.values()) {
            minutes.put(operation, (double) minutes(operation));
        }
        return minutes;
    }

    private static int minutes(Operation operation) {
        return switch (operation) {
            case INTAKE_AND_PLAN -> 30;
            case FIND_AXIS_AND_MARK -> 12;
            case FIT_CORK_GRIP -> 20;
            case FIT_EVA_GRIP -> 10;
            case FIT_CARBON_GRIP -> 12;
            case FIT_ARBORS -> 20;
            case GLUE_HANDLE -> 35;
            case FIT_CAP -> 4;
            case FIT_CHECK -> 4;
            case FIT_TIP_TOP -> 8;
            case LAYOUT_AND_TEST -> 40;
            case GRIND_FOOT -> 3;
            case WRAP_SINGLE_FOOT -> 7;
            case WRAP_DOUBLE_FOOT -> 13;
            case UNDERWRAP -> 4;
            case WRAP_FERRULE -> 12;
            case WRAP_KEEPER -> 5;
            case APPLY_DECAL -> 15;
            case COAT_ONE -> 40;
            case COAT_TWO -> 32;
            case CLEAN_AND_WEIGH -> 25;
        };
    }

    private static Map<PartKind, Double> tolerances() {
        Map<PartKind, Double> percent = new EnumMap<>(PartKind.class);
        for (PartKind kind : PartKind.values()) {
            percent.put(kind, 5.0);
        }
        percent.put(PartKind.BLANK, 4.0);
        percent.put(PartKind.GRIP, 8.0);
        percent.put(PartKind.GUIDE, 8.0);
        percent.put(PartKind.TIP_TOP, 8.0);
        return percent;
    }
}
