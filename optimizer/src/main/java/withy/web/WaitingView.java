package withy.web;

/**
 * A page whose answer is on its way.
 *
 * @param frame around it
 * @param builds address of the builds it is about, or empty
 */
public record WaitingView(Frame frame, String builds) {}
