package withy.search;

import org.jspecify.annotations.Nullable;

/**
 * What least numbers are looked up by: the prices they hold under and the durability class every part needs.
 *
 * @param prices what a share costs
 * @param leastClass of the handbook's classes, the least that may stand there
 */
record AtClass(Linear prices, int leastClass) {
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof AtClass that && leastClass == that.leastClass && prices.equals(that.prices);
    }

    @Override
    public int hashCode() {
        return 31 * prices.hashCode() + leastClass;
    }
}
