package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.web.Caller.Reply;

/** What is written by hand on an order slip is understood in the talk; what is not is told without a word of files. */
class AsTypedTest extends ByRequest {
    private static Reply said(String field, String typed) throws Exception {
        return page.form("/brief", "from", "", "start", "", "name", "Dab", field, typed);
    }

    /** What stands in the field when the brief is opened again, and what the exported brief has for it. */
    private static String again(String field, String typed) throws Exception {
        Reply reply = said(field, typed);
        assertEquals(303, reply.status(), typed + reply.body());
        String step = reply.location().substring("/builds/".length());
        String input = Caller.found(
                "(<input[^>]* id=\"" + field.replace('.', '-') + "\"[^>]*>)",
                page.get("/brief/" + step).body());
        return Caller.found(" value=\"([^\"]*)\"", input);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "largestFish | about 2 kg | 2 kg",
                "length | 2.1 | 2.1 m",
                "length | 2,1 to 2,4 | 2,1 m to 2,4 m",
                "length | 210 | 210 cm",
                "length | 2.1-2.4 m | 2.1 m to 2.4 m",
                "length | 2100 | 2100",
                "length | 7-8 ft | 7 ft to 8 ft",
                "packedMax | 120 | 120 cm",
                "packedMax | 1.2 | 1.2 m",
                "packedMax | 600 | 600",
                "pieces | two | 2",
                "pieces | 2 pieces | 2",
                "pieces | 1-2 | 1 to 2",
                "pieces | 2 or 3 | 2 to 3",
                "reach | 260 | 260",
                "reach | 250-280 mm | 250 mm to 280 mm",
                "reel.size | C3000 | 3000",
                "reel.size | 2500S | 2500",
                "budget | 400 euro | 400 EUR",
                "budget | 400,- | 400",
                "wantedBy | 20.06.2026 | 2026-06-20",
                "wantedBy | 20/6/2026 | 2026-06-20",
                "wantedBy | 6/20/2026 | 2026-06-20",
                "wantedBy | 2026-6-20 | 2026-06-20",
                "wantedBy | 20 June 2026 | 2026-06-20",
                "wantedBy | June 20th, 2026 | 2026-06-20",
                "wantedBy | 20 June | 20 June",
                "leader.strength | no | none",
            })
    void whatIsWrittenByHandIsUnderstood(String field, String typed, String again) throws Exception {
        assertEquals(again, again(field, typed));
    }

    /** The page stands on 1 June 2026. */
    @ParameterizedTest
    @CsvSource({"20 June, 20 June 2026", "31.5., 31 May 2027"})
    void aDayWithoutItsYearIsTheNextOneAndSaidSo(String typed, String taken) throws Exception {
        String builds = said("wantedBy", typed).location();
        String words = "The date is told without a year: " + taken + " is taken, the next such day.";
        assertTrue(page.get(builds).body().contains(words), taken);
        assertTrue(page.get(builds.replace("/builds/", "/brief/")).body().contains(words), taken);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "largestFish | 2-3 kg | one figure is asked for here. Right would be 2.8 kg.",
                "lure.usual | 10-20 g | one figure is asked for here. Right would be 10 g.",
                "length | 7 | allowed is 900 to 6000 mm.",
                "length | 2.4 m to 2.1 m | allowed",
                "pieces | several | allowed is a whole number, 1 to 8, or two of them, such as 1 to 2. Right would be 1 to 2.",
                "reel.size | small | allowed is a number, 0 to 30000. Right would be 2500.",
                "wantedBy | 3/4/2027 | Maybe write it as 2026-05-31.",
                "wantedBy | 31 June 2026 | Maybe write it as 2026-05-31.",
            })
    void whatIsNotUnderstoodIsToldWithoutAWordOfFiles(String field, String typed, String why) throws Exception {
        Reply reply = said(field, typed);
        assertEquals(422, reply.status(), reply.body());
        String told = Caller.found("id=\"" + field.replace('.', '-') + "-fault\"[^>]*>([\\s\\S]*?)</p>", reply.body())
                .replaceAll("<[^>]+>", "")
                .replace("&#34;", "\"");
        assertTrue(told.contains(why), told);
        for (String file : new String[] {"quotes", "object", " key ", "min\":"}) {
            assertFalse(told.contains(file), told);
        }
    }

    @Test
    void aDayAtTheShelfIsReadTheSameWay() throws Exception {
        String part = "/stock/marrick-tideway-r-16";
        page.form(part, "once", "a", "do", "order", "pieces", "2", "due", "20 June 2026");
        assertTrue(page.get(part).body().contains("ordered: +2 on order"), "booked");
        assertEquals(
                422,
                page.form(part, "once", "b", "do", "order", "pieces", "2", "due", "20 June 2025")
                        .status());
    }
}
