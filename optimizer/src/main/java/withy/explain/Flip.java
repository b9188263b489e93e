package withy.explain;

/**
 * What would have to change for a part to win, verified by solving on both sides.
 *
 * @param kind what changes
 * @param subject objective, part or field of the brief
 * @param now what it is
 * @param loses value nearest to {@code wins} with which it still does not win
 * @param wins value with which it is in the best build; NaN where none was found as far as it is worth looking
 * @param unit unit of the values
 * @param sentence told as on the phone
 */
public record Flip(Kind kind, String subject, double now, double loses, double wins, String unit, String sentence) {

    /** What may change. */
    public enum Kind {
        PRIORITY("priority"),
        PRICE("price"),
        WEIGHT("weight"),
        WISH("wish");

        private final String key;

        Kind(String key) {
            this.key = key;
        }

        /** Name in answers. */
        public String key() {
            return key;
        }
    }
}
