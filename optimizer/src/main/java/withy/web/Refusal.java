package withy.web;

import java.util.List;

/** A request that is not answered as asked: told on a page of its own, with what helps. */
final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final int status;
    private final transient List<String> lines;

    Refusal(int status, List<String> lines) {
        super(String.join(" ", lines));
        this.status = status;
        this.lines = List.copyOf(lines);
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
}
