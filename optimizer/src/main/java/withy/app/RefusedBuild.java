package withy.app;

import java.util.List;

/** A build that can't be accepted: it breaks a rule, told in sentences. */
public final class RefusedBuild extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final List<String> sentences;

    RefusedBuild(String what, List<String> sentences) {
        super(what);
        this.sentences = List.copyOf(sentences);
    }

    /** Why, one sentence each. */
    public List<String> sentences() {
        return sentences;
    }
}
