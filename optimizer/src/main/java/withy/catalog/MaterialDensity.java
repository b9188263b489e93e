package withy.catalog;

/**
 * Density of what parts are made of, g/cm³: a usual value and the scatter a catalogue weight may show.
 *
 * <p>Sources, all as quoted by compilations: cork 0.12–0.26 (Bolz &amp; Tuve, CRC 1973; Gibson, Easterling &amp; Ashby 1981), cork-rubber 0.56–0.95
 * (Doran 1994), EVA foam 0.08–0.30 (Verdejo &amp; Mills 2002; light grades from memory), aluminium 2.70, stainless 7.9–8.0, titanium 4.43–4.51, brass
 * 8.4–8.5 (ASM Metals Handbook), carbon laminate 1.42–1.60, glass laminate 1.85–2.0 (CRC), nylon 1.13–1.15, polyester 1.38, silk 1.25, epoxy
 * 1.1–1.2, rubber 0.86–1.25 (CRC). Polyurethane foam 0.08–0.20, nickel silver 8.7, composite, filled plastic and metallic yarn are from memory.
 *
 * @param usual usual value, g/cm³
 * @param least lowest believable, g/cm³
 * @param most highest believable, g/cm³
 */
public record MaterialDensity(double usual, double least, double most) {
    /** The density of a material. */
    public static MaterialDensity of(Material material) {
        return switch (material) {
            case CARBON -> new MaterialDensity(1.60, 1.40, 1.75);
            case GLASS -> new MaterialDensity(1.90, 1.70, 2.10);
            case COMPOSITE -> new MaterialDensity(1.72, 1.45, 2.00);
            case CORK -> new MaterialDensity(0.24, 0.12, 0.30);
            case RUBBER_CORK -> new MaterialDensity(0.60, 0.45, 0.95);
            case EVA -> new MaterialDensity(0.18, 0.08, 0.32);
            case WOOD -> new MaterialDensity(0.62, 0.35, 1.33);
            case PLASTIC -> new MaterialDensity(1.14, 0.90, 1.45);
            case CARBON_FILLED -> new MaterialDensity(1.30, 1.15, 1.50);
            case ALUMINIUM -> new MaterialDensity(2.70, 2.65, 2.85);
            case NICKEL_SILVER -> new MaterialDensity(8.70, 8.40, 8.90);
            case STAINLESS -> new MaterialDensity(8.00, 7.70, 8.10);
            case TITANIUM -> new MaterialDensity(4.43, 4.40, 4.55);
            case BRASS -> new MaterialDensity(8.50, 8.30, 8.80);
            case RUBBER -> new MaterialDensity(1.10, 0.86, 1.40);
            case FOAM -> new MaterialDensity(0.12, 0.03, 0.30);
            case GRAPHITE_FOAM -> new MaterialDensity(0.16, 0.08, 0.40);
            case NYLON -> new MaterialDensity(1.14, 1.10, 1.18);
            case POLYESTER -> new MaterialDensity(1.38, 1.30, 1.42);
            case SILK -> new MaterialDensity(1.25, 1.20, 1.40);
            case METALLIC -> new MaterialDensity(1.80, 1.20, 4.00);
            case EPOXY -> new MaterialDensity(1.115, 1.05, 1.30);
            case URETHANE -> new MaterialDensity(1.08, 0.95, 1.25);
            case TAPE, PAPER -> new MaterialDensity(0.90, 0.60, 1.30);
        };
    }

    /** The usual value in g/mm³. */
    public double usualGMm3() {
        return usual / 1000;
    }
}
