package withy.benchmarks.peer;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.oracle.EveryLayout;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rod.Tariff;

/**
 * All layouts of a question, for a solver that is given one after the other: blank by blank in turn, the reel
 * near the middle of the reach first, in rounds of ever longer limits. What is settled in a round does not come back.
 */
final class LayoutQueue {
    /** Limit of the first round, s; each further round has four times as long. */
    private static final double FIRST_SECONDS = 5;

    private static final double LONGER = 4;

    private final Deque<Piece> open = new ArrayDeque<>();
    private final List<Piece> next = new ArrayList<>();
    private final List<Consumables> with;
    private final int all;
    private double seconds = FIRST_SECONDS;
    private int settled;
    private int working;

    LayoutQueue(Question question) {
        this.with = EveryLayout.consumables(question.catalog(), question.query());
        Tariff tariff = new Tariff(question.catalog().rates(), question.query().brief());
        double middle = (question.query().brief().reachMinMm()
                        + question.query().brief().reachMaxMm())
                / 2;
        List<Setting> settings = with.isEmpty() ? List.of() : EveryLayout.of(question.catalog(), question.query());
        Map<String, List<Setting>> blanks = new LinkedHashMap<>();
        settings.stream()
                .sorted(Comparator.comparingDouble(setting -> Math.abs(setting.footMm() - middle)))
                .forEach(setting -> blanks.computeIfAbsent(setting.blank().id(), id -> new ArrayList<>())
                        .add(setting));
        List<Piece> pieces = new ArrayList<>();
        blanks.values().forEach(own -> {
            for (int turn = 0; turn < own.size(); turn++) {
                Share blank = new Fitter(own.get(turn), with.get(0), tariff).blank();
                pieces.add(new Piece(own.get(turn), turn, question.blankScore(blank)));
            }
        });
        pieces.sort(Comparator.comparingInt(Piece::turn).thenComparingDouble(Piece::blankScore));
        open.addAll(pieces);
        all = pieces.size();
    }

    /** One layout. */
    record Piece(Setting setting, int turn, double blankScore) {}

    /** The threads, each with finish and adhesive. */
    List<Consumables> with() {
        return with;
    }

    /** The next one to look at, with its limit; null where there is none left for this worker. */
    synchronized @Nullable Piece take() throws InterruptedException {
        while (open.isEmpty()) {
            if (next.isEmpty()) {
                if (working == 0) {
                    return null;
                }
                wait();
            } else {
                open.addAll(next);
                next.clear();
                seconds *= LONGER;
            }
        }
        working++;
        return open.poll();
    }

    synchronized double seconds() {
        return seconds;
    }

    synchronized void done(Piece piece, boolean isSettled) {
        working--;
        if (isSettled) {
            settled++;
        } else {
            next.add(piece);
        }
        notifyAll();
    }

    synchronized boolean allSettled() {
        return settled == all;
    }
}
