package withy.app;

import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.explain.Phrases;
import withy.shop.Piece;
import withy.shop.Shop;
import withy.units.QuantityText;

/**
 * What the shop knows of a piece that is about to be weighed.
 *
 * @param piece the piece a reading would be booked for, with its weight so far; null where none of its part is known to be here
 * @param readings readings booked so far of the piece, or of its part where no piece was named; it only ever grows
 */
public record OnScale(@Nullable Piece piece, int readings) {
    private static final OnScale NOTHING = new OnScale(null, 0);

    /** Of the piece of this number, or of the next one of the part. */
    public static OnScale of(Workshop workshop, String part, @Nullable Integer number) {
        if (!Shop.exists(workshop.folder())) {
            return NOTHING;
        }
        try (Shop shop = Shop.reading(workshop.folder(), workshop.day())) {
            return new OnScale(shop.scale().next(part, number), shop.scale().readings(part, number));
        }
    }

    /** Weight of the piece so far, g; null where it was never weighed. */
    public @Nullable Double weightG() {
        return piece == null ? null : piece.weightG();
    }

    /** That a reading would count over another one, both told; null where it would not. */
    public @Nullable String doubt(Part part, long mg, QuantityText units) {
        Double before = weightG();
        return piece == null || before == null || Math.round(before * 1000) == mg
                ? null
                : Phrases.of(
                        "scale.doubt.again",
                        part.facts().name(),
                        piece.number(),
                        units.fineMass(before),
                        units.fineMass(mg / 1000.0));
    }
}
