package withy.catalog;

import static withy.catalog.Column.flag;
import static withy.catalog.Column.length;
import static withy.catalog.Column.text;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.catalog.Column.Sort;

/** Columns of the files of what is used up: thread, finish, adhesive, decals. */
final class ConsumableSheets {
    static final Sheet<WrapThread> THREADS = new Sheet<>(
            PartKind.THREAD,
            WrapThread.class,
            List.of(
                    text("letter", "size letter, maker's own", WrapThread::letter),
                    length("diameter_mm", 0.03, 1, "thread diameter", WrapThread::diameterMm),
                    number("tex", 1, 500, "linear density, g/km", WrapThread::tex),
                    number("spool_m", 5, 20_000, "metres on one spool", WrapThread::metresPerSpool),
                    flag("colour_preserved", "keeps its colour without a preserver", WrapThread::colourPreserved)),
            row -> new WrapThread(
                    row.facts(),
                    row.text("letter"),
                    row.number("diameter_mm"),
                    row.number("tex"),
                    row.number("spool_m"),
                    row.flag("colour_preserved")));

    static final Sheet<Finish> FINISHES = new Sheet<>(
            PartKind.FINISH,
            Finish.class,
            List.of(
                    number("density_g_ml", 0.7, 2.5, "mixed density", Finish::densityGMl),
                    number("pack_ml", 2, 5000, "volume of one pack", Finish::packMl),
                    number("resin_parts", 0.1, 20, "resin parts by volume", Finish::resinParts),
                    number("hardener_parts", 0, 20, "hardener parts by volume", Finish::hardenerParts),
                    number("pot_life_min", 1, 600, "working time", Finish::potLifeMin),
                    number("recoat_h", 0.5, 96, "hours before the next coat", Finish::recoatHours),
                    number("cure_h", 1, 1000, "hours until it can be used", Finish::cureHours)),
            row -> new Finish(
                    row.facts(),
                    row.number("density_g_ml"),
                    row.number("pack_ml"),
                    row.number("resin_parts"),
                    row.number("hardener_parts"),
                    row.number("pot_life_min"),
                    row.number("recoat_h"),
                    row.number("cure_h")));

    static final Sheet<Adhesive> ADHESIVES = new Sheet<>(
            PartKind.ADHESIVE,
            Adhesive.class,
            List.of(
                    number("density_g_ml", 0.7, 2.5, "mixed density", Adhesive::densityGMl),
                    number("pack_ml", 2, 5000, "volume of one pack", Adhesive::packMl),
                    number("resin_parts", 0.1, 20, "resin parts by volume", Adhesive::resinParts),
                    number("hardener_parts", 0, 20, "hardener parts by volume", Adhesive::hardenerParts),
                    number("pot_life_min", 1, 600, "working time", Adhesive::potLifeMin),
                    number("cure_h", 1, 1000, "hours until it carries load", Adhesive::cureHours)),
            row -> new Adhesive(
                    row.facts(),
                    row.number("density_g_ml"),
                    row.number("pack_ml"),
                    row.number("resin_parts"),
                    row.number("hardener_parts"),
                    row.number("pot_life_min"),
                    row.number("cure_h")));

    static final Sheet<Decal> DECALS = new Sheet<>(
            PartKind.DECAL,
            Decal.class,
            List.of(
                    length("width_mm", 2, 300, "along the blank", Decal::widthMm),
                    length("height_mm", 1, 60, "around the blank", Decal::heightMm)),
            row -> new Decal(row.facts(), row.number("width_mm"), row.number("height_mm")));

    private ConsumableSheets() {}

    private static <P> Column<P> number(
            String name, double min, double max, String about, Function<P, @Nullable Object> value) {
        return Column.number(name, Sort.NUMBER, min, max, about, value);
    }
}
