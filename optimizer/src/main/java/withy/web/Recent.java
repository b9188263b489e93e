package withy.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** The last few things worked out, by what they depend on; each is worked out by the first who asks, while others who ask for it wait. */
final class Recent<K, V> {
    private final Map<K, Slot<V>> slots;

    Recent(int most) {
        this.slots = new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<K, Slot<V>> eldest) {
                return size() > most;
            }
        };
    }

    private static final class Slot<V> {
        private volatile @Nullable V value;

        synchronized V get(Supplier<V> maker) {
            V known = value;
            if (known == null) {
                known = maker.get();
                value = known;
            }
            return known;
        }
    }

    /** What is known of a key, or what is made of it now. */
    V get(K key, Supplier<V> maker) {
        Slot<V> slot;
        synchronized (slots) {
            slot = slots.computeIfAbsent(key, any -> new Slot<>());
        }
        return slot.get(maker);
    }

    /** What is known of a key, or null; never waits. */
    @Nullable
    V known(K key) {
        synchronized (slots) {
            Slot<V> slot = slots.get(key);
            return slot == null ? null : slot.value;
        }
    }

    /** Lets go of what is known of a key. */
    void forget(K key) {
        synchronized (slots) {
            slots.remove(key);
        }
    }
}
