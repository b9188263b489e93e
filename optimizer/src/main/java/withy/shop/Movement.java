package withy.shop;

import org.jspecify.annotations.Nullable;

/**
 * One line of the ledger.
 *
 * @param id its number; later lines have higher ones
 * @param day day it was written
 * @param what the command it belongs to
 * @param part catalogue id
 * @param reason why, a {@link Reason#word()}
 * @param shelf pieces put on the shelf; negative = taken
 * @param promised pieces promised to a job; negative = no longer
 * @param ordered pieces put on order; negative = arrived or given up
 * @param job the job it concerns, or null
 * @param note in words
 * @param takenBack true where the command was taken back later
 */
public record Movement(
        long id,
        String day,
        String what,
        String part,
        String reason,
        int shelf,
        int promised,
        int ordered,
        @Nullable Long job,
        String note,
        boolean takenBack) {}
