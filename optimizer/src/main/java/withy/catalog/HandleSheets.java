package withy.catalog;

import static withy.catalog.Column.flag;
import static withy.catalog.Column.length;
import static withy.catalog.Column.mass;
import static withy.catalog.Column.text;
import static withy.catalog.Column.whole;
import static withy.catalog.Column.word;

import java.util.List;

/** Columns of the files of the handle: seats, hoods, arbors, grips, caps, checks. */
final class HandleSheets {
    static final Sheet<ReelSeat> SEATS = new Sheet<>(
            PartKind.REEL_SEAT,
            ReelSeat.class,
            List.of(
                    flag("casting", "yes for a seat that carries the reel on top", ReelSeat::casting),
                    whole("size", 12, 30, "nominal size", ReelSeat::size),
                    length("bore_mm", 5, 35, "inner diameter", ReelSeat::boreMm),
                    length("length_mm", 60, 300, "length along the blank", ReelSeat::lengthMm),
                    length(
                            "foot_centre_mm",
                            20,
                            200,
                            "rear end to the centre of the reel foot",
                            ReelSeat::footCentreMm),
                    length("barrel_od_mm", 15, 45, "outer diameter where the palm lies", ReelSeat::barrelOdMm),
                    length("rear_od_mm", 12, 45, "outer diameter of the rear face", ReelSeat::rearOdMm),
                    length("front_od_mm", 12, 45, "outer diameter of the front face", ReelSeat::frontOdMm),
                    length("foot_length_min_mm", 30, 120, "shortest reel foot it clamps", ReelSeat::footLengthMinMm),
                    length("foot_length_max_mm", 30, 120, "longest reel foot it clamps", ReelSeat::footLengthMaxMm),
                    length("foot_thickness_max_mm", 1, 10, "thickest foot end", ReelSeat::footThicknessMaxMm),
                    length("foot_width_max_mm", 6, 25, "widest foot", ReelSeat::footWidthMaxMm),
                    text("hood_family", "thread family of its moving hood", ReelSeat::hoodFamily),
                    word("moving_hood", SeatEnd.class, "the end whose hood moves", ReelSeat::movingHood),
                    mass("moving_hood_g", 0.2, 60, "weight of the moving hood it is sold with", ReelSeat::movingHoodG),
                    flag("double_lock", "two nuts or a ratchet hold the hood", ReelSeat::doubleLock),
                    flag("trigger", "with a finger trigger", ReelSeat::trigger),
                    flag("front_finished", "the front edge needs no winding check", ReelSeat::frontFinished),
                    flag(
                            "through_blank",
                            "metal or full-length body that carries class 5 loads",
                            ReelSeat::throughBlank),
                    Column.<ReelSeat>text(
                                    "recess_family",
                                    "fore grips of this recess fit over its front hood",
                                    ReelSeat::recessFamily)
                            .optional()),
            row -> new ReelSeat(
                    row.facts(),
                    row.flag("casting"),
                    row.whole("size"),
                    row.number("bore_mm"),
                    row.number("length_mm"),
                    row.number("foot_centre_mm"),
                    row.number("barrel_od_mm"),
                    row.number("rear_od_mm"),
                    row.number("front_od_mm"),
                    row.number("foot_length_min_mm"),
                    row.number("foot_length_max_mm"),
                    row.number("foot_thickness_max_mm"),
                    row.number("foot_width_max_mm"),
                    row.text("hood_family"),
                    row.word("moving_hood", SeatEnd.class),
                    row.number("moving_hood_g"),
                    row.flag("double_lock"),
                    row.flag("trigger"),
                    row.flag("front_finished"),
                    row.flag("through_blank"),
                    row.text("recess_family")));

    static final Sheet<Hood> HOODS = new Sheet<>(
            PartKind.HOOD,
            Hood.class,
            List.of(
                    text("family", "thread family, equal to the seat's hood_family", Hood::family),
                    whole("size", 12, 30, "nominal size, equal to the seat's", Hood::size),
                    length("face_od_mm", 12, 45, "outer diameter of its outer face", Hood::faceOdMm),
                    flag("double_lock", "two nuts or a ratchet hold it", Hood::doubleLock)),
            row -> new Hood(
                    row.facts(),
                    row.text("family"),
                    row.whole("size"),
                    row.number("face_od_mm"),
                    row.flag("double_lock")));

    static final Sheet<Arbor> ARBORS = new Sheet<>(
            PartKind.ARBOR,
            Arbor.class,
            List.of(
                    length("od_mm", 6, 40, "outer diameter as sold", Arbor::odMm),
                    length("id_mm", 0, 35, "inner diameter as sold; 0 = solid", Arbor::idMm),
                    length("length_mm", 5, 400, "length as sold", Arbor::lengthMm),
                    length("min_wall_mm", 0.2, 10, "thinnest wall it may be left with", Arbor::minWallMm)),
            row -> new Arbor(
                    row.facts(),
                    row.number("od_mm"),
                    row.number("id_mm"),
                    row.number("length_mm"),
                    row.number("min_wall_mm")));

    static final Sheet<Grip> GRIPS = new Sheet<>(
            PartKind.GRIP,
            Grip.class,
            List.of(
                    word("place", Grip.Place.class, "where on the handle it belongs; full = butt to seat", Grip::place),
                    length("length_mm", 20, 1000, "length as sold", Grip::lengthMm),
                    length("shortest_mm", 10, 1000, "shortest it may be cut to", Grip::shortestMm),
                    length("front_od_mm", 10, 50, "outer diameter of the end toward the tip", Grip::frontOdMm),
                    length("mid_od_mm", 10, 50, "outer diameter half-way", Grip::midOdMm),
                    length("rear_od_mm", 10, 50, "outer diameter of the end toward the butt", Grip::rearOdMm),
                    length("bore_mm", 2, 40, "bore as sold", Grip::boreMm),
                    length("ream_max_mm", 2, 40, "widest it may be reamed", Grip::reamMaxMm),
                    flag("front_finished", "shaped front edge, no check needed", Grip::frontFinished),
                    flag("rear_finished", "shaped rear edge, no check needed", Grip::rearFinished),
                    flag("rear_closed", "closed rear end in place of a butt cap", Grip::rearClosed),
                    Column.<Grip>text("recess_family", "fore grips: hood family it is recessed for", Grip::recessFamily)
                            .optional()),
            row -> new Grip(
                    row.facts(),
                    row.word("place", Grip.Place.class),
                    row.number("length_mm"),
                    row.number("shortest_mm"),
                    row.number("front_od_mm"),
                    row.number("mid_od_mm"),
                    row.number("rear_od_mm"),
                    row.number("bore_mm"),
                    row.number("ream_max_mm"),
                    row.flag("front_finished"),
                    row.flag("rear_finished"),
                    row.flag("rear_closed"),
                    row.text("recess_family")));

    static final Sheet<ButtCap> CAPS = new Sheet<>(
            PartKind.BUTT_CAP,
            ButtCap.class,
            List.of(
                    length("inner_mm", 3, 45, "inner diameter", ButtCap::innerMm),
                    length("outer_mm", 8, 55, "outer diameter", ButtCap::outerMm),
                    length("added_mm", 0, 80, "length it adds behind the blank", ButtCap::addedMm),
                    flag("soft", "stretches over the blank", ButtCap::soft),
                    Column.<ButtCap>mass(
                                    "counterweight_max_g",
                                    0,
                                    150,
                                    "heaviest weight it can hold",
                                    ButtCap::counterweightMaxG)
                            .optional()),
            row -> new ButtCap(
                    row.facts(),
                    row.number("inner_mm"),
                    row.number("outer_mm"),
                    row.number("added_mm"),
                    row.flag("soft"),
                    row.number("counterweight_max_g", 0)));

    static final Sheet<Check> CHECKS = new Sheet<>(
            PartKind.CHECK,
            Check.class,
            List.of(
                    length("inner_mm", 2, 45, "inner diameter", Check::innerMm),
                    length("outer_mm", 4, 50, "outer diameter", Check::outerMm),
                    length("width_mm", 0.5, 30, "length along the blank", Check::widthMm),
                    flag("soft", "stretches over the blank", Check::soft)),
            row -> new Check(
                    row.facts(),
                    row.number("inner_mm"),
                    row.number("outer_mm"),
                    row.number("width_mm"),
                    row.flag("soft")));

    private HandleSheets() {}
}
