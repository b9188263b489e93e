package withy.rod;

import withy.catalog.Adhesive;
import withy.catalog.Finish;
import withy.catalog.WrapThread;

/**
 * What every wrap and glue line of one rod is made with.
 *
 * @param thread wrapping thread
 * @param finish coat over the wraps
 * @param adhesive glue
 */
public record Consumables(WrapThread thread, Finish finish, Adhesive adhesive) {}
