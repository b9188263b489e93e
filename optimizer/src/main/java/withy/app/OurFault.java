package withy.app;

/** The program contradicts itself: what it chose does not stand up to its own judge. Never the reader's fault. */
public final class OurFault extends RuntimeException {
    private static final long serialVersionUID = 1L;

    OurFault(String message) {
        super(message);
    }
}
