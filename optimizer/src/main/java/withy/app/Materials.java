package withy.app;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToLongFunction;
import withy.app.BuildSheet.MaterialLine;
import withy.app.BuildSheet.Place;
import withy.catalog.Part;
import withy.explain.Phrases;
import withy.rod.Rod;
import withy.rod.Share;
import withy.rod.Station;

/** What a rod uses by amount: arbors, thread, finish, adhesive, tape; with the weight that stays on it and where. */
final class Materials {
    private static final double MG_PER_G = 1000;

    private final Rod rod;
    private final Costing costing;
    private final List<MaterialLine> lines = new ArrayList<>();

    private Materials(Rod rod, Costing costing) {
        this.rod = rod;
        this.costing = costing;
    }

    static List<MaterialLine> of(Rod rod, Costing costing) {
        Materials materials = new Materials(rod, costing);
        materials.arbors();
        materials.thread();
        materials.finish();
        materials.adhesive();
        materials.tape();
        return materials.lines;
    }

    private void arbors() {
        Part arbor = rod.partAt(Station.SEAT_ARBORS);
        Share share = rod.shares().get(Station.SEAT_ARBORS);
        if (arbor == null || share == null) {
            return;
        }
        add(
                "arbors",
                arbor,
                rod.pieces(Station.SEAT_ARBORS),
                "pieces",
                share.partCostMilli(),
                List.of(new Place("handle", share.partMg() / MG_PER_G)));
    }

    private void thread() {
        Share total = rod.total();
        add(
                "thread",
                rod.with().thread(),
                total.threadMm() / 1000.0,
                "m",
                total.threadCostMilli(),
                places(Share::threadMg));
    }

    private void finish() {
        Share total = rod.total();
        double mixed = Math.round(rod.tariff().finishMixedMl(total.finishUl()) * 1000) / 1000.0;
        add(
                "finish",
                rod.with().finish(),
                mixed,
                "ml",
                rod.tariff().finishMilli(rod.with(), total.finishUl()),
                places(Share::finishMg));
    }

    private void adhesive() {
        double mixed = rod.setting().catalog().rates().adhesiveMixMl();
        add(
                "adhesive",
                rod.with().adhesive(),
                mixed,
                "ml",
                rod.tariff().adhesiveMilli(rod.with()),
                places(Share::glueMg));
    }

    private void tape() {
        long mg = rod.total().tapeMg();
        if (mg > 0) {
            double grams = mg / MG_PER_G;
            lines.add(new MaterialLine(
                    "tape",
                    null,
                    Phrases.of("material.tapeRings"),
                    grams,
                    "g",
                    grams,
                    costing.line(0),
                    places(Share::tapeMg)));
        }
    }

    private void add(String what, Part part, double amount, String unit, long milli, List<Place> places) {
        long mg = places.stream()
                .mapToLong(p -> Math.round(p.weightG() * MG_PER_G))
                .sum();
        lines.add(new MaterialLine(
                what, part.id(), part.facts().name(), amount, unit, mg / MG_PER_G, costing.line(milli), places));
    }

    private List<Place> places(ToLongFunction<Share> take) {
        Map<String, Long> byPlace = new LinkedHashMap<>();
        rod.shares().forEach((station, share) -> {
            long mg = take.applyAsLong(share);
            if (mg > 0) {
                byPlace.merge(place(station), mg, Long::sum);
            }
        });
        List<Place> places = new ArrayList<>();
        byPlace.forEach((where, mg) -> places.add(new Place(where, mg / MG_PER_G)));
        return places;
    }

    private static String place(Station station) {
        return switch (station.place()) {
            case GUIDE -> "guides";
            case TIP_TOP -> "tip-top";
            case KEEPER -> "keeper";
            case DECAL -> "inscription";
            case BLANK -> "ferrules";
            default -> "handle";
        };
    }
}
