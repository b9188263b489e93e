package withy.rules;

import java.util.List;
import withy.brief.Brief;
import withy.brief.Brief.PartWish;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Station;

/**
 * Parts insisted on are in, refused parts and materials are not, and weight is not bought for balance: the butt cap weighs at most
 * {@value #CAP_MOST_G} g and {@value #CAP_SHARE} of the rod unless the customer asks for a counterweight.
 */
final class Must implements Rule {
    static final double CAP_MOST_G = 30;
    static final double CAP_SHARE = 0.08;

    private static final double G_PER_MG = 1e-3;

    @Override
    public String code() {
        return "must";
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        refused(brief.refused(), part, bench);
        if (brief.look().refusedMaterials().isEmpty()) {
            bench.notApplicable("refused-material");
        } else {
            boolean absent =
                    !brief.look().refusedMaterials().contains(part.facts().material());
            bench.holds("refused-material", absent, part.id());
        }
        if (part instanceof ButtCap && brief.counterweightAsked()) {
            bench.notApplicable("cap-mass");
        } else if (part instanceof ButtCap) {
            bench.atMost("cap-mass", part.massMg() * G_PER_MG, CAP_MOST_G, Unit.G, part.id());
        }
    }

    @Override
    public void onRod(Rod rod, Bench bench) {
        boolean insists = false;
        for (PartWish wish : rod.brief().insisted()) {
            if (wish.hard()) {
                insists = true;
                bench.holds("insisted", contains(rod, wish.partId()), wish.partId());
            }
        }
        if (!insists) {
            bench.notApplicable("insisted");
        }
        Placed cap = rod.placed().get(Station.BUTT_CAP);
        if (cap == null || rod.brief().counterweightAsked()) {
            bench.notApplicable("cap-share");
        } else {
            double limit = rod.figures().weightG() * CAP_SHARE;
            bench.atMost(
                    "cap-share",
                    cap.part().massMg() * G_PER_MG,
                    limit,
                    Unit.G,
                    cap.part().id());
        }
    }

    private static void refused(List<PartWish> wishes, Part part, Bench bench) {
        boolean any = false;
        boolean absent = true;
        for (int i = 0; i < wishes.size(); i++) {
            PartWish wish = wishes.get(i);
            any |= wish.hard();
            absent &= !(wish.hard() && wish.partId().equals(part.id()));
        }
        if (any) {
            bench.holds("refused-part", absent, part.id());
        } else {
            bench.notApplicable("refused-part");
        }
    }

    private static boolean contains(Rod rod, String partId) {
        return rod.build().layout().blankId().equals(partId)
                || rod.build().choices().values().stream()
                        .anyMatch(choice -> choice.partId().equals(partId));
    }
}
