package withy.web;

import io.javalin.http.Context;

/**
 * How long somebody looks.
 *
 * @param patienceS how long a search may take before the best so far is shown, s
 * @param waitMs how long the page waits before it shows what there is, ms
 */
record Look(int patienceS, long waitMs) {
    /** How long a page waits that was just asked for, ms. */
    private static final long FIRST_MS = 200;

    /** How long one that asks for the rest waits, ms. */
    private static final long REST_MS = 10_000;

    /** As an address tells. */
    static Look of(Context ctx) {
        String show = ctx.queryParam("show");
        return new Look(
                "long".equals(ctx.queryParam("look")) ? Bench.MOST_PATIENCE_S : Bench.PATIENCE_S,
                "rest".equals(show) || "best".equals(show) ? REST_MS : FIRST_MS);
    }
}
