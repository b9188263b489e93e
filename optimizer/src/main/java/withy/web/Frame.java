package withy.web;

/**
 * What every page has around it.
 *
 * @param title what the page is about
 * @param here which of the main ways it belongs to: brief, jobs, weigh, stock, plan; empty for none
 * @param seal what its forms carry, so that no other page can make one
 * @param once other at every showing, so that a form sent twice is done once
 * @param step step of the talk it is about, or empty
 * @param trouble why what is said can't be kept, or empty
 * @param waits true where more is on its way, so that a browser without script looks again
 */
public record Frame(String title, String here, String seal, String once, String step, String trouble, boolean waits) {
    Frame waiting() {
        return new Frame(title, here, seal, once, step, trouble, true);
    }
}
