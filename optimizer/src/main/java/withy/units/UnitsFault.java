package withy.units;

/** A text that could not be read as the quantity it should be: where, what stood there, what is allowed, and a guess at what was meant. */
public final class UnitsFault extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String text;
    private final int position;
    private final String read;
    private final String allowed;
    private final String maybe;

    /**
     * @param text the whole text, shortened when it is long
     * @param position index of the first character that did not fit, from 0
     * @param read what stood there, or "the end"
     * @param allowed what may stand there
     * @param maybe a sentence that starts "Maybe "
     */
    public UnitsFault(String text, int position, String read, String allowed, String maybe) {
        super("Can't read \"%s\" at character %d: found %s, allowed is %s.%n%s"
                .formatted(text, position + 1, read, allowed, maybe)
                .replace(System.lineSeparator(), "\n"));
        this.text = text;
        this.position = position;
        this.read = read;
        this.allowed = allowed;
        this.maybe = maybe;
    }

    public String text() {
        return text;
    }

    public int position() {
        return position;
    }

    public String read() {
        return read;
    }

    public String allowed() {
        return allowed;
    }

    public String maybe() {
        return maybe;
    }
}
