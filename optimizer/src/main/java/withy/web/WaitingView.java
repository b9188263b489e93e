package withy.web;

/**
 * A page whose answer is on its way.
 *
 * @param frame around it
 * @param builds address of the builds it is about, or empty
 * @param here its own address, where it is asked for again
 */
public record WaitingView(Frame frame, String builds, String here) {}
