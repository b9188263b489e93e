package withy.catalog;

/** Anything a rod is built from. One record a kind; every kind carries the same {@link PartFacts}. */
public sealed interface Part
        permits Blank,
                ReelSeat,
                Hood,
                Arbor,
                Grip,
                ButtCap,
                Check,
                Guide,
                TipTop,
                Keeper,
                WrapThread,
                Finish,
                Adhesive,
                Decal {

    /** What every part has: maker, price, stock, weight, material, colour, classes. */
    PartFacts facts();

    /** The kind, which is also the file the part is kept in. */
    PartKind kind();

    /** The catalogue id: lower case, digits and hyphens, unique across kinds. */
    default String id() {
        return facts().id();
    }

    /** Weight used for this part, in milligrams: the scale's where the piece was weighed, else the catalogue's. */
    default long massMg() {
        return facts().massMg();
    }

    /** The same part with other facts. */
    default Part with(PartFacts facts) {
        return PartCopy.of(this, facts);
    }
}
