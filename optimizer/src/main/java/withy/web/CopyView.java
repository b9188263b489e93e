package withy.web;

/**
 * A copy of the shop's memory that was kept.
 *
 * @param frame around it
 * @param name its name
 * @param written when, day and minute
 * @param folder the shop's folder, as a command line names it from anywhere
 * @param lines lines of the ledger in it
 * @param jobs jobs in it
 * @param file address of the file itself
 */
public record CopyView(Frame frame, String name, String written, String folder, long lines, long jobs, String file) {

    /** The way to the last copy, in words. */
    public record Last(String address, String words) {}
}
