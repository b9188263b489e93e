package withy.catalog;

import static withy.catalog.Column.flag;
import static withy.catalog.Column.length;
import static withy.catalog.Column.text;
import static withy.catalog.Column.whole;
import static withy.catalog.Column.word;

import java.util.List;

/** Columns of the files of what is wrapped or glued on the blank: guides, tip-tops, keepers. */
final class GuideSheets {
    static final Sheet<Guide> GUIDES = new Sheet<>(
            PartKind.GUIDE,
            Guide.class,
            List.of(
                    text("family", "maker's series", Guide::family),
                    length("ring_size_mm", 2, 60, "nominal ring size", Guide::ringSize),
                    length("ring_id_mm", 1, 55, "clear inner diameter", Guide::ringIdMm),
                    word("ring_material", RingMaterial.class, "what the ring is made of", Guide::ringMaterial),
                    flag("braid_ok", "rated for braid", Guide::braidOk),
                    text("frame_finish", "word for the frame's finish; equal through one train", Guide::frameFinish),
                    length("height_mm", 1, 80, "blank surface to ring centre", Guide::heightMm),
                    whole("feet", 1, 2, "number of feet", Guide::feet),
                    length("foot_length_mm", 3, 50, "length of each foot", Guide::footLengthMm),
                    flag("high_frame", "tall spinning frame", Guide::highFrame)),
            row -> new Guide(
                    row.facts(),
                    row.text("family"),
                    row.number("ring_size_mm"),
                    row.number("ring_id_mm"),
                    row.word("ring_material", RingMaterial.class),
                    row.flag("braid_ok"),
                    row.text("frame_finish"),
                    row.number("height_mm"),
                    row.whole("feet"),
                    row.number("foot_length_mm"),
                    row.flag("high_frame")));

    static final Sheet<TipTop> TIP_TOPS = new Sheet<>(
            PartKind.TIP_TOP,
            TipTop.class,
            List.of(
                    text("family", "maker's series", TipTop::family),
                    length("tube_mm", 0.8, 8, "inner diameter of the tube", TipTop::tubeMm),
                    length("tube_depth_mm", 3, 40, "how far the tube goes over the tip", TipTop::tubeDepthMm),
                    length("ring_size_mm", 2, 60, "nominal ring size", TipTop::ringSize),
                    length("ring_id_mm", 1, 55, "clear inner diameter", TipTop::ringIdMm),
                    word("ring_material", RingMaterial.class, "what the ring is made of", TipTop::ringMaterial),
                    flag("braid_ok", "rated for braid", TipTop::braidOk),
                    text("frame_finish", "word for the frame's finish; equal through one train", TipTop::frameFinish),
                    length("added_mm", 1, 60, "length it adds ahead of the blank", TipTop::addedMm)),
            row -> new TipTop(
                    row.facts(),
                    row.text("family"),
                    row.number("tube_mm"),
                    row.number("tube_depth_mm"),
                    row.number("ring_size_mm"),
                    row.number("ring_id_mm"),
                    row.word("ring_material", RingMaterial.class),
                    row.flag("braid_ok"),
                    row.text("frame_finish"),
                    row.number("added_mm")));

    static final Sheet<Keeper> KEEPERS = new Sheet<>(
            PartKind.KEEPER,
            Keeper.class,
            List.of(
                    whole("feet", 1, 2, "number of feet", Keeper::feet),
                    length("foot_length_mm", 2, 30, "length of each foot", Keeper::footLengthMm)),
            row -> new Keeper(row.facts(), row.whole("feet"), row.number("foot_length_mm")));

    private GuideSheets() {}
}
