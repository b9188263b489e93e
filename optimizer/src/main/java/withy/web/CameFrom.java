package withy.web;

import io.javalin.http.Context;
import org.jspecify.annotations.Nullable;
import withy.rod.Station;

/**
 * The page a reason was asked for from, so that it leads back there.
 *
 * @param told as the address says it: rank and station of a drawer ("1/seat"), "lighter", or empty for the builds themselves
 */
public record CameFrom(String told) {
    private static final String LIGHTER = "lighter";

    /** Straight from the builds. */
    public static CameFrom builds() {
        return new CameFrom("");
    }

    /** As an address tells; what is no such page leads back to the builds. */
    static CameFrom of(Context ctx) {
        String told = Pages.asked(ctx, "from");
        int slash = told.indexOf('/');
        boolean drawer =
                slash > 0 && told.substring(0, slash).matches("\\d") && station(told.substring(slash + 1)) != null;
        return drawer || told.equals(LIGHTER) ? new CameFrom(told) : builds();
    }

    private static @Nullable Station station(String key) {
        Station station = Station.parse(key);
        // written otherwise it would be another address
        return station != null && station.key().equals(key) ? station : null;
    }

    /** True where there is a page between this one and the builds. */
    public boolean between() {
        return !told.isEmpty();
    }

    /** Address of that page for a step. */
    public String address(String step) {
        return told.equals(LIGHTER) ? "/lighter/" + step : "/drawer/" + step + "/" + told;
    }

    /** What the way there is called. */
    public String words() {
        return Words.say(told.equals(LIGHTER) ? "back.lighter" : "back.drawer");
    }

    /** What the address of a page that is gone to from here says besides. */
    public String query() {
        return told.isEmpty() ? "" : "&from=" + told;
    }
}
