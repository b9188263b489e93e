package withy.catalog;

/** The fourteen part kinds and the catalogue file that holds each. */
public enum PartKind {
    BLANK("blanks.csv", "blank"),
    REEL_SEAT("reel-seats.csv", "reel seat"),
    HOOD("hoods.csv", "hood"),
    ARBOR("arbors.csv", "arbor"),
    GRIP("grips.csv", "grip"),
    BUTT_CAP("butt-caps.csv", "butt cap"),
    CHECK("checks.csv", "winding check or trim ring"),
    GUIDE("guides.csv", "guide"),
    TIP_TOP("tip-tops.csv", "tip-top"),
    KEEPER("keepers.csv", "hook keeper"),
    THREAD("threads.csv", "thread"),
    FINISH("finishes.csv", "finish"),
    ADHESIVE("adhesives.csv", "adhesive"),
    DECAL("decals.csv", "decal");

    private final String fileName;
    private final String word;

    PartKind(String fileName, String word) {
        this.fileName = fileName;
        this.word = word;
    }

    /** Name of the file in the catalogue folder. */
    public String fileName() {
        return fileName;
    }

    /** The word a builder uses for it. */
    public String word() {
        return word;
    }
}
