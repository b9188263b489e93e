package withy.rules;

import withy.brief.Brief;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Part;

/**
 * A fish lifted aboard is a dead load: the blank's lift rating is at least {@value DeadLoad#TIMES} times the fish, and so is the leader less its
 * knot; a blank without a rating is refused, not passed.
 *
 * <p>The builder's own rating goes before the maker's. Without a leader the main line takes its place. Common practice.
 */
final class Lift implements Rule {
    @Override
    public String code() {
        return "lift";
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        if (!(part instanceof Blank blank)) {
            return;
        }
        if (brief.landing() != Brief.Landing.LIFTED) {
            bench.notApplicable("rating");
            bench.notApplicable("leader");
            return;
        }
        double load = DeadLoad.ofKg(brief);
        Double own = blank.ownLiftKg();
        Double rating = own != null ? own : blank.liftKg();
        if (rating == null) {
            bench.unknown("rating", load, Unit.KG, blank.id());
        } else {
            bench.atLeast("rating", rating, load, Unit.KG, blank.id());
        }
        Brief.Leader leader = brief.leader();
        double strength = leader != null ? leader.strengthKg() : brief.line().strengthKg();
        bench.atLeast("leader", strength * LineClass.KNOT_SHARE, load, Unit.KG, "");
    }
}
