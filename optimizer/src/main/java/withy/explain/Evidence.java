package withy.explain;

/**
 * What a reason rests on. Only the three kinds there are: a reason never rests on another reason, so none can go in a circle.
 *
 * @param kind wish of the brief, rule of the shop, or fact of a catalogue part
 * @param ref field of the brief, code of the rule, or id of the part
 */
public record Evidence(Kind kind, String ref) {

    /** Kinds of grounds. */
    public enum Kind {
        WISH("wish"),
        RULE("rule"),
        FACT("fact");

        private final String key;

        Kind(String key) {
            this.key = key;
        }

        /** Name in answers. */
        public String key() {
            return key;
        }
    }

    static Evidence wish(String field) {
        return new Evidence(Kind.WISH, field);
    }

    static Evidence rule(String code) {
        return new Evidence(Kind.RULE, code);
    }

    static Evidence fact(String partId) {
        return new Evidence(Kind.FACT, partId);
    }
}
