package withy.web;

import io.javalin.http.Context;

/**
 * How long somebody looks.
 *
 * @param patienceS how long a search may take before the best so far is shown, s
 * @param waitMs how long the page waits before it shows what there is, ms
 * @param seen the stage of an answer that is on the screen already; the page waits for one beyond it
 */
record Look(int patienceS, long waitMs, int seen) {
    /** A stage no answer grows beyond: only the whole will do. */
    static final int WHOLE = Integer.MAX_VALUE;

    /** How long a page waits that was just asked for, ms. */
    private static final long FIRST_MS = 200;

    /** How long one that asks for the rest waits, ms. */
    private static final long REST_MS = 10_000;

    /** As an address tells. A page that was just asked for shows the whole if that comes at once, so that nothing flickers. */
    static Look of(Context ctx) {
        String show = String.valueOf(ctx.queryParam("show"));
        boolean stage = show.matches("\\d{1,4}");
        boolean rest = stage || show.equals("rest") || show.equals("best");
        return new Look(
                "long".equals(ctx.queryParam("look")) ? Answers.MOST_PATIENCE_S : Answers.PATIENCE_S,
                rest ? REST_MS : FIRST_MS,
                stage ? Integer.parseInt(show) : rest ? 0 : WHOLE);
    }
}
