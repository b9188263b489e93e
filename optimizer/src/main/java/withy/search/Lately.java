package withy.search;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.rod.Build;

/**
 * What earlier questions came to. Questions asked one after another are often alike, so what answered one may answer the next. For several threads.
 */
final class Lately {
    /** Builds kept in mind. */
    private static final int MOST_BUILDS = 12;

    /** Blanks kept in mind. */
    private static final int MOST_BLANKS = 4;

    private final ArrayDeque<Build> builds = new ArrayDeque<>();
    private final ArrayDeque<String> blanks = new ArrayDeque<>();
    private final Map<String, Integer> feet = new HashMap<>();

    /** Builds found, the last one first. */
    synchronized List<Build> builds() {
        return List.copyOf(builds);
    }

    /** A build was found. */
    synchronized void found(Build build) {
        first(build, builds, MOST_BUILDS);
    }

    /** A handle went on a blank. */
    synchronized void held(String blankId) {
        first(blankId, blanks, MOST_BLANKS);
    }

    /** A handle went on a blank with the reel foot at a place, mm from the butt. */
    synchronized void heldAt(String blankId, int footMm) {
        feet.put(blankId, footMm);
    }

    /** Where it stood when one last went on a blank; null where none did. */
    synchronized @Nullable Integer foot(String blankId) {
        return feet.get(blankId);
    }

    /** Blanks that a handle went on or a build was found on last, a few of them. */
    synchronized Set<String> likelyBlanks() {
        Set<String> likely = new LinkedHashSet<>();
        blanks.stream().limit(1).forEach(likely::add);
        for (Build build : builds) {
            if (likely.size() < MOST_BLANKS) {
                likely.add(build.layout().blankId());
            }
        }
        return likely;
    }

    private static <T> void first(T one, ArrayDeque<T> of, int most) {
        of.remove(one);
        of.addFirst(one);
        if (of.size() > most) {
            of.removeLast();
        }
    }

    /** Those first whose blanks had a handle, else in their order. */
    List<Site> likeliestFirst(List<Site> sites) {
        List<Site> others = new ArrayList<>();
        List<Site> ordered = likely(sites, others);
        ordered.addAll(others);
        return ordered;
    }

    /** Those whose blanks had a handle; the others are added to a list. */
    synchronized List<Site> likely(List<Site> sites, List<Site> others) {
        Set<String> held = new HashSet<>(blanks);
        List<Site> likely = new ArrayList<>();
        for (Site site : sites) {
            (held.contains(site.shape().blank().id()) ? likely : others).add(site);
        }
        return likely;
    }
}
