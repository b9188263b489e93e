package withy.search;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import withy.catalog.Finish;
import withy.catalog.WrapThread;
import withy.mechanics.ThreadWrap;
import withy.rod.BlankShape;
import withy.rod.Consumables;
import withy.rod.Wraps;

/**
 * What thread and finish at the joints of a blank cost at least, whichever they are. Of each length of wrap the least and the most of any is known on the
 * thinnest and on the thickest blank; between them a wrap grows evenly with the diameter, but for the slant of its turns, which counts most on the thinnest.
 */
final class JointWraps {
    /** Rounding of a price, thousandths of a minor unit, and more than that of a mass, mg. */
    private static final double ROUNDING = 0.5;

    /** Of a blank that is thinner or thicker at a joint nothing is told. */
    private static final double THINNEST_MM = 0.5;

    private static final double THICKEST_MM = 40;

    private final Ground ground;
    private final Map<Double, Between> ofLength = new HashMap<>();

    JointWraps(Ground ground) {
        this.ground = ground;
    }

    /**
     * Least and most of one wrap.
     *
     * @param slantMg most that the slant of its turns adds to a straight line or takes from it, mg
     * @param slantMilli the same of its price, thousandths of a minor unit
     */
    private record Span(
            double leastMg, double mostMg, double leastMilli, double mostMilli, double slantMg, double slantMilli) {
        static final Span NONE = new Span(Double.MAX_VALUE, 0, Double.MAX_VALUE, 0, 0, 0);

        /**
         * @param slant part of the thread's length that is there for its slant alone
         */
        Span with(Wraps.Wrap wrap, double mg, double milli, double slant) {
            return new Span(
                    Math.min(leastMg, mg),
                    Math.max(mostMg, mg),
                    Math.min(leastMilli, milli),
                    Math.max(mostMilli, milli),
                    // as much thread more, and as much less room for finish
                    Math.max(slantMg, 2 * slant * 1000 * wrap.threadG()),
                    Math.max(slantMilli, slant * milli));
        }
    }

    /** The same of a wrap of one length on the thinnest blank and on the thickest. */
    private record Between(Span thin, Span thick) {
        Span on(double odMm) {
            double share = (odMm - THINNEST_MM) / (THICKEST_MM - THINNEST_MM);
            return new Span(
                    between(thin.leastMg, thick.leastMg, share) - thin.slantMg - ROUNDING,
                    between(thin.mostMg, thick.mostMg, share) + thin.slantMg + ROUNDING,
                    between(thin.leastMilli, thick.leastMilli, share) - thin.slantMilli - ROUNDING,
                    between(thin.mostMilli, thick.mostMilli, share) + thin.slantMilli + ROUNDING,
                    0,
                    0);
        }

        private static double between(double thin, double thick, double share) {
            return thin + share * (thick - thin);
        }
    }

    /**
     * A number they cost no less than.
     *
     * @param foot where the reel stands, mm from the butt
     * @param armMm from hand to foot, mm
     */
    long floor(BlankShape shape, int foot, double armMm, Linear k) {
        List<Wraps.Place> places = Wraps.atJoints(shape);
        if (places.isEmpty() || !ground.complete()) {
            return 0;
        }
        double sum = 0;
        for (Wraps.Place place : places) {
            double od = shape.profile().at(place.xMm());
            if (od < THINNEST_MM || od > THICKEST_MM) {
                return Long.MIN_VALUE / 4;
            }
            Span span =
                    ofLength.computeIfAbsent(place.lengthMm(), this::between).on(od);
            double c = k.perMgAt(place.xMm() - foot, armMm);
            sum += c * (c >= 0 ? span.leastMg : span.mostMg);
            sum += k.perMilli() * (k.perMilli() >= 0 ? span.leastMilli : span.mostMilli);
        }
        double rounding = 2.0 * Math.abs(k.perMg())
                + Math.abs((double) k.perMgMm())
                + Math.abs((double) k.perMgMm2())
                + Math.abs((double) k.perMilli());
        return (long) Math.floor(sum - rounding);
    }

    private Between between(double lengthMm) {
        return new Between(span(lengthMm, THINNEST_MM), span(lengthMm, THICKEST_MM));
    }

    private Span span(double lengthMm, double odMm) {
        Wraps.Place place = new Wraps.Place(0, lengthMm);
        double film = ground.catalog.rates().finishFilmMm();
        Span span = Span.NONE;
        for (WrapThread thread : ground.threads) {
            for (Finish finish : ground.finishes) {
                Consumables with = new Consumables(thread, finish, ground.adhesives.get(0));
                Wraps.Wrap wrap = Wraps.on(odMm, place, with, film);
                double mg = 1000 * wrap.threadG() + wrap.finishUl() * finish.densityGMl();
                double slant = new ThreadWrap(lengthMm, odMm, thread.diameterMm()).slantShare();
                span = span.with(wrap, mg, ground.tariff.threadMilli(thread, wrap.threadMm()), slant);
            }
        }
        return span;
    }
}
