package withy.search;

import java.util.HashMap;
import java.util.Map;
import java.util.function.IntFunction;

/**
 * Things by what decides of them: those that are equal in it are of one class.
 *
 * @param classOf the class of each, numbered from 0 in the order they are first met
 * @param count how many classes there are
 */
record Alike(int[] classOf, int count) {
    /**
     * Classes of so many things.
     *
     * @param trait what decides, by {@code equals}
     */
    static Alike of(int things, IntFunction<Object> trait) {
        Map<Object, Integer> met = new HashMap<>();
        int[] classOf = new int[things];
        for (int i = 0; i < things; i++) {
            Object key = trait.apply(i);
            Integer known = met.putIfAbsent(key, met.size());
            classOf[i] = known == null ? met.size() - 1 : known;
        }
        return new Alike(classOf, met.size());
    }
}
