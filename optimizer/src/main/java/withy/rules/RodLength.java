package withy.rules;

import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.catalog.Blank;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.TipTop;
import withy.rod.Lengths;
import withy.rod.Setting;

/**
 * The finished rod is as long as wanted, comes in as many pieces as wanted and packs as short as wanted; finished means blank, tip-top and butt
 * cap together, packed means the longest section with what it carries at its end.
 *
 * <p>What the bare blank already breaks is refused with the blank; the whole rod is then not measured again for it.
 */
final class RodLength implements Rule {
    @Override
    public String code() {
        return "length";
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        if (!(part instanceof Blank blank)) {
            return;
        }
        bench.atLeast("fewest-pieces", blank.sections(), brief.piecesMin(), Unit.COUNT, blank.id());
        bench.atMost("most-pieces", blank.sections(), brief.piecesMax(), Unit.COUNT, blank.id());
        bench.atMost("blank-longest", blank.lengthMm(), brief.lengthMaxMm(), Unit.MM, blank.id());
        Double packed = brief.packedMaxMm();
        if (packed == null) {
            bench.notApplicable("section-longest");
        } else {
            bench.atMost("section-longest", longestSectionMm(blank), packed, Unit.MM, blank.id());
        }
    }

    @Override
    public void onEnds(Setting setting, @Nullable ButtCap cap, @Nullable TipTop tipTop, Bench bench) {
        Brief brief = setting.brief();
        Blank blank = setting.blank();
        double capMm = cap == null ? 0 : cap.addedMm();
        double tipMm = tipTop == null ? 0 : tipTop.addedMm();
        double finished = Lengths.finishedMm(blank, tipMm, capMm);
        bench.atLeast("finished-shortest", finished, brief.lengthMinMm(), Unit.MM, blank.id());
        if (Unit.MM.quantise(blank.lengthMm()) > Unit.MM.quantise(brief.lengthMaxMm())) {
            bench.notApplicable("finished-longest");
        } else {
            bench.atMost("finished-longest", finished, brief.lengthMaxMm(), Unit.MM, blank.id());
        }
        Double packed = brief.packedMaxMm();
        if (packed == null || Unit.MM.quantise(longestSectionMm(blank)) > Unit.MM.quantise(packed)) {
            bench.notApplicable("packed");
        } else {
            bench.atMost("packed", Lengths.packedMm(blank, tipMm, capMm), packed, Unit.MM, blank.id());
        }
    }

    private static double longestSectionMm(Blank blank) {
        double longest = 0;
        for (int i = 0; i < blank.sections(); i++) {
            longest = Math.max(longest, blank.sectionLengthsMm().get(i));
        }
        return longest;
    }
}
