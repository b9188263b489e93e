package withy.oracle;

import static withy.oracle.CpRod.sum;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.LinearExpr;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import withy.oracle.CpRod.Piece;
import withy.rod.Build.Choice;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Share;
import withy.rod.Station;

/**
 * The thread of one layout: a literal each. What a wrapped part adds is worked out with the first thread; how much more it is with another counts where
 * both are chosen, one literal for all parts of a place with equal differences.
 */
final class CpThread {
    private final CpRod rod;
    private final List<Fitter> fitters = new ArrayList<>();
    private final List<Piece> threads = new ArrayList<>();
    private final List<Term> more = new ArrayList<>();
    private final Map<Key, List<Piece>> wrapped = new LinkedHashMap<>();

    CpThread(CpRod rod, List<Consumables> with) {
        this.rod = rod;
        for (Consumables one : with) {
            fitters.add(new Fitter(rod.setting, one, rod.tariff));
            Choice choice = Choice.of(one.thread().id());
            threads.add(rod.add(Station.THREAD, choice, one.thread(), null, Share.NONE, 1));
        }
        rod.model.addEquality(sum(threads), 1);
        Share first = fitters.get(0).blank();
        for (int i = 0; i < with.size(); i++) {
            more.add(Term.difference(threads.get(i).literal(), fitters.get(i).blank(), first));
        }
    }

    /** What a literal adds to the sums. */
    record Term(BoolVar literal, long massMg, long momentMgMm, long inertiaMgMm2, long costMilli, long finishUl) {
        static Term of(Piece piece) {
            return difference(piece.literal(), piece.share(), Share.NONE);
        }

        static Term difference(BoolVar literal, Share one, Share other) {
            return new Term(
                    literal,
                    one.massMg() - other.massMg(),
                    one.momentMgMm() - other.momentMgMm(),
                    one.inertiaMgMm2() - other.inertiaMgMm2(),
                    one.costMilli() - other.costMilli(),
                    one.finishUl() - other.finishUl());
        }

        boolean nothing() {
            return massMg == 0 && momentMgMm == 0 && inertiaMgMm2 == 0 && costMilli == 0 && finishUl == 0;
        }

        Term at(BoolVar other) {
            return new Term(other, massMg, momentMgMm, inertiaMgMm2, costMilli, finishUl);
        }
    }

    private record Key(Station station, int thread, Term difference) {}

    /** A part whose share depends on the thread. */
    void wraps(Piece piece, Function<Fitter, Share> share) {
        for (int i = 1; i < fitters.size(); i++) {
            BoolVar thread = threads.get(i).literal();
            Term difference = Term.difference(thread, share.apply(fitters.get(i)), piece.share());
            if (!difference.nothing()) {
                wrapped.computeIfAbsent(new Key(piece.station(), i, difference), key -> new ArrayList<>())
                        .add(piece);
            }
        }
    }

    /** Everything the threads change; all wrapped parts must have been told. */
    List<Term> more() {
        wrapped.forEach((key, pieces) -> {
            BoolVar thread = threads.get(key.thread()).literal();
            BoolVar both = rod.model.newBoolVar("with " + key.station() + more.size());
            rod.model.addLessOrEqual(both, thread);
            rod.model.addLessOrEqual(both, sum(pieces));
            rod.model.addLessOrEqual(
                    LinearExpr.newBuilder().add(sum(pieces)).add(thread),
                    LinearExpr.newBuilder().add(both).add(1));
            more.add(key.difference().at(both));
        });
        wrapped.clear();
        return more;
    }

    /** The first thread with finish and adhesive. */
    Fitter fitter() {
        return fitters.get(0);
    }
}
