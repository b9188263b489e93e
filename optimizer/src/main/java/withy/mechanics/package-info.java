/**
 * Pure formulas: mass along a tube, balance, inertia, wraps, colour difference, guide spacing, bend, frequency. Lengths are
 * millimetres from the butt, masses grams, forces newtons, moments newton-millimetres, bending stiffness N·mm². May import
 * {@code units} only; the numerical library is at home here.
 */
@NullMarked
package withy.mechanics;

import org.jspecify.annotations.NullMarked;
