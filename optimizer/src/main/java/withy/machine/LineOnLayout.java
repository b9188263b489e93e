package withy.machine;

import withy.brief.Brief;
import withy.catalog.Blank;
import withy.catalog.RodType;
import withy.rod.Setting;

/**
 * The line on a layout's guides, whichever are chosen: on the bare blank, through rings of the house's sizes, under the working load and level with
 * a weight that drops the tip by a third. Of the places the layout gives; answers are kept by layout.
 */
public sealed interface LineOnLayout {
    /**
     * What the line does.
     *
     * @param leastGapMm least distance of line and blank ahead of the stripper under both loads, mm; below 0 they touch
     * @param largestTurnRad most the line turns by in one guide at the tip drop of a third, radians
     */
    record Runs(double leastGapMm, double largestTurnRad) implements LineOnLayout {}

    /** No bend to be trusted. */
    record Unknown(String reason) implements LineOnLayout {}

    /** Of a layout. */
    static LineOnLayout of(Setting setting) {
        return HouseLine.LATELY.of(Key.of(setting), key -> HouseLine.of(setting));
    }

    /** Sharpest turn over that with another count of guides; NaN where one is not known. */
    static double sharper(Setting setting, int than) {
        return of(setting) instanceof Runs here && of(setting.withGuides(than)) instanceof Runs there
                ? here.largestTurnRad() / there.largestTurnRad()
                : Double.NaN;
    }

    /** All that decides it. */
    record Key(
            Blank blank,
            int footMm,
            int count,
            RodType type,
            boolean twoHanded,
            double heaviestG,
            double dragKg,
            double lineMm,
            Brief.Reel reel) {
        static Key of(Setting setting) {
            Brief brief = setting.brief();
            return new Key(
                    setting.blank(),
                    setting.footMm(),
                    setting.guideCount(),
                    brief.rodType(),
                    brief.twoHanded(),
                    brief.lure().heaviestG(),
                    brief.dragKg(),
                    RodBend.lineMm(brief),
                    brief.reel());
        }
    }
}
