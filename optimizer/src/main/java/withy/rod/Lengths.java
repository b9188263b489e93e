package withy.rod;

import java.util.List;
import withy.catalog.Blank;

/** Finished and packed length of a rod (handbook, rule 3). */
public final class Lengths {
    private Lengths() {}

    /** Blank, tip-top and butt cap together, mm. */
    public static double finishedMm(Blank blank, double tipTopMm, double capMm) {
        return blank.lengthMm() + tipTopMm + capMm;
    }

    /** Longest section with what it carries at its end, mm. */
    public static double packedMm(Blank blank, double tipTopMm, double capMm) {
        List<Double> sections = blank.sectionLengthsMm();
        double longest = 0;
        for (int i = 0; i < sections.size(); i++) {
            double ends = (i == 0 ? capMm : 0) + (i == sections.size() - 1 ? tipTopMm : 0);
            longest = Math.max(longest, sections.get(i) + ends);
        }
        return longest;
    }
}
