package withy.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** A request that is not answered as asked: told on a page of its own, with what helps. */
final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final int status;
    private final transient List<String> lines;
    private final transient @Nullable Way way;

    /** Where it goes on from a refusal. */
    record Way(String address, String words) {}

    Refusal(int status, List<String> lines) {
        this(status, lines, null);
    }

    Refusal(int status, List<String> lines, @Nullable Way way) {
        super(String.join(" ", lines));
        this.status = status;
        this.lines = List.copyOf(lines);
        this.way = way;
    }

    Refusal(int status, String... lines) {
        this(status, List.of(lines));
    }

    /** HTTP status. */
    int status() {
        return status;
    }

    /** What is wrong, then what helps. */
    List<String> lines() {
        return lines;
    }

    /** Where it goes on, or null where only back. */
    @Nullable
    Way way() {
        return way;
    }
}
