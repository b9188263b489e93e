package withy.machine;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/** Keeps what was worked out lately, so much and no more; what is asked longest ago goes first. For several threads. */
final class Lately<K, V> {
    private static final float LOAD = 0.75f;

    private final Map<K, V> kept;

    Lately(int most) {
        this.kept = new LinkedHashMap<>(16, LOAD, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                return size() > most;
            }
        };
    }

    V of(K key, Function<K, V> work) {
        synchronized (kept) {
            V known = kept.get(key);
            if (known != null) {
                return known;
            }
        }
        V now = work.apply(key);
        synchronized (kept) {
            kept.put(key, now);
        }
        return now;
    }
}
