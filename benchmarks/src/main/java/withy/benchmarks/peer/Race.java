package withy.benchmarks.peer;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import withy.benchmarks.peer.Question.Judged;
import withy.rod.Build;

/** One peer against the clock: takes what it finds, judges it anew, keeps when it was found. For several threads. */
public final class Race {
    private final Question question;
    private final long startNanos;
    private final long endNanos;
    private final List<Found> found = new ArrayList<>();
    private long best = Long.MAX_VALUE;
    private long closest = Long.MAX_VALUE;
    private @Nullable Build leastBroken;
    private @Nullable Double provenMs;

    public Race(Question question, double seconds) {
        this.question = question;
        this.startNanos = System.nanoTime();
        this.endNanos = startNanos + Math.round(seconds * TimeUnit.SECONDS.toNanos(1));
    }

    /**
     * A better legal build.
     *
     * @param ms when, since the start
     * @param score its score as judged here
     * @param build what it is
     */
    public record Found(double ms, long score, Build build) {}

    /** Takes a build; illegal ones count for nothing but are remembered where they break least. */
    public void offer(Build build) {
        offer(build, question.judge(build));
    }

    /** The same where it is judged already. */
    void offer(Build build, Judged judged) {
        synchronized (this) {
            if (judged.legal() && judged.score() < best) {
                best = judged.score();
                found.add(new Found(ms(), best, build));
            }
            if (judged.broken() < closest) {
                closest = judged.broken();
                leastBroken = build;
            }
        }
    }

    /** The peer says that nothing is better than its best. */
    public synchronized void proven() {
        provenMs = ms();
    }

    public boolean over() {
        return System.nanoTime() - endNanos >= 0;
    }

    public double secondsLeft() {
        return Math.max(0, (endNanos - System.nanoTime()) / 1e9);
    }

    /** Score of the best legal build so far; {@link Long#MAX_VALUE} before the first. */
    public synchronized long best() {
        return best;
    }

    public synchronized List<Found> found() {
        return List.copyOf(found);
    }

    /** What it built that breaks least, or null where it built nothing. */
    public synchronized @Nullable Build leastBroken() {
        return leastBroken;
    }

    /** When it said that it had proven its best, ms; null where it has not. */
    public synchronized @Nullable Double provenMs() {
        return provenMs;
    }

    private double ms() {
        return (System.nanoTime() - startNanos) / 1e6;
    }
}
