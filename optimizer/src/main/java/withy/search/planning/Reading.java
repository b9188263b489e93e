package withy.search.planning;

import java.util.Collections;
import java.util.SortedMap;
import withy.objectives.ObjectiveVector;

/**
 * One rod measured and judged once; every constraint reads from it.
 *
 * @param broken size of the failures by rule code, kept rules left out; {@link #QUESTION} holds those of the question itself
 * @param objectives the six objectives and the missed wishes
 */
record Reading(SortedMap<String, Long> broken, ObjectiveVector objectives) {
    /** Stands for ceilings and forced parts, which are no rule of the trade. */
    static final String QUESTION = "question";

    Reading {
        broken = Collections.unmodifiableSortedMap(broken);
    }

    /** By how much a rule is broken, 0 = kept. */
    long broken(String code) {
        Long size = broken.get(code);
        return size == null ? 0 : size;
    }

    boolean legal() {
        return broken.isEmpty();
    }
}
