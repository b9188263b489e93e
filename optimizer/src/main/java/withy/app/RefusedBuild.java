package withy.app;

import java.util.List;

/** A build that can't be accepted: it breaks a rule or can't be read, told in sentences. */
public final class RefusedBuild extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final List<String> sentences;
    private final boolean unreadable;

    RefusedBuild(String what, List<String> sentences) {
        this(what, sentences, false);
    }

    private RefusedBuild(String what, List<String> sentences, boolean unreadable) {
        super(what);
        this.sentences = List.copyOf(sentences);
        this.unreadable = unreadable;
    }

    /** Of a text that is no build; its faults. */
    static RefusedBuild unreadable(List<String> faults) {
        return new RefusedBuild("the build can't be read.", faults, true);
    }

    /** True where the text is at fault, not the build. */
    public boolean unreadable() {
        return unreadable;
    }

    /** Why, one sentence each. */
    public List<String> sentences() {
        return sentences;
    }
}
