package withy.benchmarks.peer;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Runs the same work once a core. */
public final class TwoThreads {
    private TwoThreads() {}

    /** Work of one core. */
    public interface Share {
        /**
         * @param index 0, 1 …
         */
        void run(int index) throws Exception;
    }

    public static void run(Share share) throws Exception {
        ExecutorService workers = Executors.newFixedThreadPool(Peer.CORES);
        try {
            List<Callable<Void>> all = new ArrayList<>();
            for (int i = 0; i < Peer.CORES; i++) {
                int index = i;
                all.add(() -> {
                    share.run(index);
                    return null;
                });
            }
            for (Future<Void> done : workers.invokeAll(all)) {
                done.get();
            }
        } catch (ExecutionException e) {
            throw e.getCause() instanceof Exception cause ? cause : e;
        } finally {
            workers.shutdownNow();
        }
    }
}
