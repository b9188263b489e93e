package withy.search;

import org.jspecify.annotations.Nullable;
import withy.catalog.Guide;
import withy.catalog.RingMaterial;
import withy.catalog.TipTop;

/** What a rule between guides may look at: guides that agree in it are asked for one another. */
record RingTrait(double size, String finish, RingMaterial material) {
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof RingTrait that
                && Double.compare(size, that.size) == 0
                && material == that.material
                && finish.equals(that.finish);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * Double.hashCode(size) + finish.hashCode()) + material.ordinal();
    }

    static RingTrait of(Guide guide) {
        return new RingTrait(guide.ringSize(), guide.frameFinish(), guide.ringMaterial());
    }

    static RingTrait of(TipTop tip) {
        return new RingTrait(tip.ringSize(), tip.frameFinish(), tip.ringMaterial());
    }
}
