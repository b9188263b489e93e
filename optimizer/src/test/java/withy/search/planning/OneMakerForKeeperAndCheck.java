package withy.search.planning;

import java.util.ArrayList;
import java.util.List;
import withy.catalog.Part;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Bench;
import withy.rules.Rule;
import withy.rules.Rulebook;

/** Keeper and winding check are there and of one maker: two stations that are no neighbours in the chain. */
final class OneMakerForKeeperAndCheck implements Rule {
    static Rulebook added() {
        List<Rule> rules = new ArrayList<>(Rulebook.standard().rules());
        rules.add(new OneMakerForKeeperAndCheck());
        return new Rulebook(rules);
    }

    @Override
    public String code() {
        return "one-maker-for-keeper-and-check";
    }

    @Override
    public void onRod(Rod rod, Bench bench) {
        Part keeper = rod.partAt(Station.KEEPER);
        Part check = rod.partAt(Station.WINDING_CHECK);
        boolean one = keeper != null
                && check != null
                && keeper.facts().maker().equals(check.facts().maker());
        bench.holds("one-maker", one, "", "");
    }
}
