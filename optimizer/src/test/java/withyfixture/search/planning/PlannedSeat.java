package withyfixture.search.planning;

/** Stands for a mutable class of the engine. */
public final class PlannedSeat {}
