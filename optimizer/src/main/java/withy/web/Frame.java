package withy.web;

/**
 * What every page has around it.
 *
 * @param title what the page is about
 * @param here which of the main ways it belongs to: brief, jobs, stock, plan; empty for none
 * @param seal what its forms carry
 * @param step step of the conversation it is about, or empty
 */
public record Frame(String title, String here, String seal, String step) {
    /** Mark of a link that leads where one is. */
    public String current(String way) {
        return way.equals(here) ? "page" : "";
    }
}
