package withy.brief;

import withy.brief.Brief.LineKind;
import withy.units.LineStandards;

/**
 * Strength of a line from its thickness and back, by the number scale of the line standards.
 *
 * <p>Formula: S = s·n, n = (d/d₁)²; S strength in kg, s strength of number 1 in kg, n number of the scale, d standard diameter in mm, d₁ that
 * of number 1. ASSUMED s: 4 lb a number for nylon and fluorocarbon, 20 lb a number for braid, as labels of the trade have it; a label in hand
 * always wins. Good from number 0.1 to 60.
 */
final class LineStrength {
    /** 4 lb, kg. */
    static final double SOLID_KG = 4 * 0.453_592_37;
    /** 20 lb, kg. */
    static final double BRAID_KG = 20 * 0.453_592_37;

    private LineStrength() {}

    /** Strength of number 1, kg. */
    static double ofNumberOneKg(LineKind kind) {
        return kind == LineKind.BRAID ? BRAID_KG : SOLID_KG;
    }

    /** Strength of a number of the kind's scale, kg. */
    static double ofNumberKg(LineKind kind, double number) {
        return Quantity.STRENGTH.round(Bounds.STRENGTH_KG.clamp(ofNumberOneKg(kind) * number));
    }

    /** Strength from the standard diameter, kg. */
    static double ofDiameterKg(LineKind kind, double diameterMm) {
        double ratio = diameterMm / diameterMm(kind, 1);
        return Quantity.STRENGTH.round(ofNumberOneKg(kind) * ratio * ratio);
    }

    /** Standard diameter of a strength, mm; the number is rounded to 0.01, so that 20 lb is number 5. */
    static double diameterMm(LineKind kind, double strengthKg, double numberOneKg) {
        double number = Math.max(0.01, Math.round(strengthKg / numberOneKg * 100) / 100.0);
        return Quantity.LENGTH.round(Bounds.LINE_MM.clamp(diameterMm(kind, number)));
    }

    private static double diameterMm(LineKind kind, double number) {
        return kind == LineKind.BRAID ? LineStandards.braidDiameterMm(number) : LineStandards.nylonDiameterMm(number);
    }
}
