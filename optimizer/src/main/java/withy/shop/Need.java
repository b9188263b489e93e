package withy.shop;

import org.jspecify.annotations.Nullable;

/**
 * Pieces of a part that a job needs, and how more of them are got.
 *
 * @param part catalogue id
 * @param pieces how many
 * @param leadDays days until an ordered piece arrives; null = cannot be ordered
 * @param packQty pieces that must be ordered together
 */
public record Need(String part, int pieces, @Nullable Integer leadDays, int packQty) {}
