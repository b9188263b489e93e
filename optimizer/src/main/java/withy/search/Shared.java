package withy.search;

import java.lang.ref.WeakReference;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.rod.Fitter;
import withy.rod.Setting;

/**
 * What blanks under different placings of forced parts have in common on one ground: the handle where the placings say the same of handles, the train where
 * they say the same of trains. Kept as long as one of them is. Not for several threads at once.
 */
final class Shared {
    private final Map<Shelved, WeakReference<Shelf>> shelves = new HashMap<>();
    private final Map<Stood, WeakReference<Stand>> stands = new HashMap<>();
    private final Map<Trained, WeakReference<TrainFloors>> trains = new HashMap<>();

    private record Shelved(Stations handle, HandleForm form) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Shelved that && form == that.form && handle.equals(that.handle);
        }

        @Override
        public int hashCode() {
            return 31 * handle.hashCode() + form.ordinal();
        }
    }

    private record Stood(Shelf shelf, String blankId, int footMm, String adhesiveId, Ends.Group ends) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Stood that
                    && footMm == that.footMm
                    && shelf.equals(that.shelf)
                    && blankId.equals(that.blankId)
                    && adhesiveId.equals(that.adhesiveId)
                    && ends.equals(that.ends);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * (31 * (31 * shelf.hashCode() + blankId.hashCode()) + footMm) + adhesiveId.hashCode())
                    + ends.hashCode();
        }
    }

    private record Trained(String blankId, Stations train, List<Ends.Group> ends) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Trained that
                    && blankId.equals(that.blankId)
                    && train.equals(that.train)
                    && ends.equals(that.ends);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * blankId.hashCode() + train.hashCode()) + ends.hashCode();
        }
    }

    /** What lies ready for the handle under one placing. */
    Shelf shelf(Stations handle, HandleForm form, Supplier<Shelf> made) {
        return kept(shelves, new Shelved(handle, form), made);
    }

    /** A stand of a shelf, the handle's side of it the same whatever is given of guides. */
    Stand stand(Shelf shelf, Setting setting, Fitter fitter, Ends.Group ends, Stations given) {
        String adhesive = fitter.with().adhesive().id();
        Stood key = new Stood(shelf, setting.blank().id(), setting.footMm(), adhesive, ends);
        return kept(stands, key, () -> new Stand(shelf, given, setting, fitter, ends))
                .under(given);
    }

    /** Floors of the trains of a blank under one placing. */
    TrainFloors trains(Site site, Supplier<TrainFloors> made) {
        Trained key = new Trained(site.shape().blank().id(), site.stations().ofTrain(), site.ends());
        return kept(trains, key, made);
    }

    /** Forgets what nobody uses any more. */
    void tidy() {
        shelves.values().removeIf(one -> one.get() == null);
        stands.values().removeIf(one -> one.get() == null);
        trains.values().removeIf(one -> one.get() == null);
    }

    private static <K, V> V kept(Map<K, WeakReference<V>> all, K key, Supplier<V> made) {
        WeakReference<V> before = all.get(key);
        @Nullable V known = before == null ? null : before.get();
        if (known == null) {
            known = made.get();
            all.put(key, new WeakReference<>(known));
        }
        return known;
    }
}
