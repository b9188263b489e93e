package withy.catalog.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.catalog.Action;
import withy.catalog.Blank;
import withy.catalog.Blank.OdStation;
import withy.catalog.FerruleKind;
import withy.catalog.Gloss;
import withy.catalog.Lab;
import withy.catalog.Material;
import withy.catalog.RodType;

/**
 * What a blank is made to, from which its stations, wall and weight are computed.
 *
 * @param targetG weight aimed at, g; sets the wall, which is then rounded and gives the weight
 */
record BlankDesign(
        String maker,
        String model,
        Set<RodType> types,
        double lengthMm,
        int sections,
        FerruleKind ferrule,
        double overlapMm,
        double extraG,
        double buttMm,
        double tipMm,
        double targetG,
        Material material,
        Action action,
        String power,
        double lureMinG,
        double lureMaxG,
        double lineMinKg,
        double lineMaxKg,
        @Nullable Double gaugeMin,
        @Nullable Double gaugeMax,
        double liftKg,
        double thirdTestG,
        int durability,
        double priceEur,
        @Nullable Lab colour,
        @Nullable Gloss gloss,
        String set,
        boolean balanceKnown) {

    static BlankDesign of(DesignTable.Design row) {
        return new BlankDesign(
                row.text("maker"),
                row.text("model"),
                Set.of(row.word("rod_type", RodType.class)),
                row.number("length_mm"),
                row.whole("sections"),
                row.word("ferrule", FerruleKind.class),
                row.number("overlap_mm"),
                row.number("ferrule_extra_g"),
                row.number("butt_mm"),
                row.number("tip_mm"),
                row.number("target_g"),
                row.word("material", Material.class),
                row.word("action", Action.class),
                row.text("power"),
                row.number("lure_min_g"),
                row.number("lure_max_g"),
                row.number("line_min_kg"),
                row.number("line_max_kg"),
                row.number("gauge_min"),
                row.number("gauge_max"),
                row.number("lift_kg"),
                row.number("third_test_g"),
                row.whole("durability"),
                row.number("price_eur"),
                row.colour(),
                row.gloss(),
                row.text("set"),
                row.flag("balance_known"));
    }

    Blank blank(DesignTable.Design row) {
        List<OdStation> stations = stations();
        double density = Shapes.density(material);
        double joints = (sections - 1) * extraG;
        double wall = Shapes.to(wallFor(stations, density, targetG - joints), 0.01);
        double weight = Shapes.tubeMass(stations, wall, density) + joints;
        List<Double> lengths = new ArrayList<>();
        double each = (lengthMm + (sections - 1) * overlapMm) / sections;
        for (int i = 0; i < sections; i++) {
            lengths.add(Shapes.to(each, 0.5));
        }
        Double balance = balanceKnown ? Shapes.to(balance(stations, wall, density, weight), 1) : null;
        return new Blank(
                Draft.of(maker, model, material)
                        .weight(weight, 0.1, 4)
                        .price(priceEur)
                        .supplied(row, 2, 10)
                        .supplier("Tarn Road Wholesale")
                        .look(colour, gloss, set)
                        .classes(durability, 4)
                        .facts(),
                types,
                lengthMm,
                lengths,
                ferrule,
                overlapMm,
                extraG,
                stations,
                wall,
                balance,
                action,
                power,
                lureMinG,
                lureMaxG,
                null,
                null,
                lineMinKg,
                lineMaxKg,
                gaugeMin,
                gaugeMax,
                liftKg > 0 ? liftKg : null,
                null,
                thirdTestG > 0 ? thirdTestG : null);
    }

    /** Diameters fall from butt to tip; at each joint the section ahead starts wider (put-over) and runs back to the taper. */
    private List<OdStation> stations() {
        List<OdStation> stations = new ArrayList<>();
        double each = (lengthMm + (sections - 1) * overlapMm) / sections;
        double reach = each - overlapMm;
        for (int k = 0; k < sections; k++) {
            double from = k * reach;
            double to = k == sections - 1 ? lengthMm : from + reach;
            int pieces = sections == 1 ? 6 : sections == 2 ? 3 : 2;
            for (int i = 0; i <= pieces; i++) {
                double x = Shapes.to(from + (to - from) * i / pieces, 0.5);
                double step = k == 0 || ferrule != FerruleKind.PUT_OVER ? 0 : stepAt(from) * (1 - (double) i / pieces);
                double od = Shapes.to(taper(x) + step, 0.01);
                boolean same = i == 0 && k > 0 && ferrule != FerruleKind.PUT_OVER;
                if (!same) {
                    stations.add(new OdStation(x, od));
                }
            }
        }
        return stations;
    }

    private double stepAt(double x) {
        return Math.min(2.6, 0.9 + 0.11 * taper(x));
    }

    private double taper(double x) {
        double bow = switch (action) {
            case SLOW -> 0.92;
            case MODERATE -> 0.96;
            case MODERATE_FAST -> 1.0;
            case FAST -> 1.06;
            case EXTRA_FAST -> 1.12;
        };
        return tipMm + (buttMm - tipMm) * StrictMath.pow(1 - x / lengthMm, bow);
    }

    private static double wallFor(List<OdStation> stations, double density, double targetG) {
        double low = 0.1;
        double high = 6;
        for (int i = 0; i < 60; i++) {
            double mid = (low + high) / 2;
            if (Shapes.tubeMass(stations, mid, density) < targetG) {
                low = mid;
            } else {
                high = mid;
            }
        }
        return low;
    }

    private double balance(List<OdStation> stations, double wall, double density, double weight) {
        double moment = Shapes.tubeMoment(stations, wall, density, 1);
        double reach = (lengthMm + (sections - 1) * overlapMm) / sections - overlapMm;
        for (int k = 1; k < sections; k++) {
            moment += extraG * (k * reach + overlapMm / 2);
        }
        return moment / weight;
    }
}
