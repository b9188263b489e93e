package withy.catalog;

/** What takes time at the bench; rates.json gives minutes for each. */
public enum Operation {
    INTAKE_AND_PLAN("listen and plan"),
    FIND_AXIS_AND_MARK("straightest axis, mark"),
    FIT_CORK_GRIP("ream and fit a cork or wood grip"),
    FIT_EVA_GRIP("ream and fit an EVA grip"),
    FIT_CARBON_GRIP("fit a moulded or carbon grip"),
    FIT_ARBORS("seat arbors"),
    GLUE_HANDLE("glue the handle"),
    FIT_CAP("butt cap"),
    FIT_CHECK("winding check or trim ring"),
    FIT_TIP_TOP("tip-top"),
    LAYOUT_AND_TEST("guide layout and static test"),
    GRIND_FOOT("grind a guide foot"),
    WRAP_SINGLE_FOOT("wrap a single-foot guide"),
    WRAP_DOUBLE_FOOT("wrap a double-foot guide"),
    UNDERWRAP("underwrap of one foot"),
    WRAP_FERRULE("ferrule wraps"),
    WRAP_KEEPER("hook keeper"),
    APPLY_DECAL("inscription"),
    COAT_ONE("first coat"),
    COAT_TWO("second coat"),
    CLEAN_AND_WEIGH("clean, check, weigh");

    private final String word;

    Operation(String word) {
        this.word = word;
    }

    /** Plain words for a labour line. */
    public String word() {
        return word;
    }
}
