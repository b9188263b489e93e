package withy.web;

/** Jobs. */
final class JobsPage {
    private JobsPage() {}

    /** True of a job that is not finished. */
    static boolean open(String state) {
        return !state.equals("closed") && !state.equals("cancelled");
    }
}
