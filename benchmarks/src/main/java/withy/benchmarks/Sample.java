package withy.benchmarks;

/**
 * One run.
 *
 * @param ms wall time, ms
 * @param cpuMs processor time of all its threads, ms
 * @param opened layouts worked through exactly, or {@link #NOT_COUNTED}
 * @param builds builds found
 * @param proven true where the answer is proven
 * @param capped true where it was stopped before its end
 * @param about what was asked about, where runs differ in that; else empty
 */
record Sample(double ms, double cpuMs, long opened, int builds, boolean proven, boolean capped, String about) {
    /** The offer of three solves several questions and does not tell their layouts. */
    static final long NOT_COUNTED = -1;

    /** Of runs that all ask the same. */
    Sample(double ms, double cpuMs, long opened, int builds, boolean proven, boolean capped) {
        this(ms, cpuMs, opened, builds, proven, capped, "");
    }

    Sample about(String what) {
        return new Sample(ms, cpuMs, opened, builds, proven, capped, what);
    }
}
