/**
 * The shop's memory in one SQLite file: pieces and their ledger, scale readings, prices, jobs with offers and reservations, back-ups. All SQL is
 * here. May import {@code units}, {@code catalog}, {@code brief}, {@code mechanics}, {@code rod}, {@code rules}, {@code objectives}; not
 * {@code search} or {@code explain}.
 */
@NullMarked
package withy.shop;

import org.jspecify.annotations.NullMarked;
