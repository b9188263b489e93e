package withyfixture.brief;

import withyfixture.mechanics.BeamManager;

/** Closes the cycle the architecture test looks for. */
public record Wish(BeamManager beam) {}
