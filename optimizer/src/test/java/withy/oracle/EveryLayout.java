package withy.oracle;

import java.util.ArrayList;
import java.util.List;
import withy.brief.Brief.HandleForm;
import withy.catalog.Adhesive;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Finish;
import withy.catalog.PartKind;
import withy.catalog.WrapThread;
import withy.objectives.Solver.Query;
import withy.rod.BlankShape;
import withy.rod.Consumables;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/** Every layout a question leaves open, and every set of thread, finish and adhesive, told from the rules alone. */
public final class EveryLayout {
    /** How far a butt cap may bring the reel nearer the butt than the reach says, mm. */
    private static final int LONGEST_CAP_MM = 60;

    private static final int FEWEST_GUIDES = 3;

    private EveryLayout() {}

    /** On every blank. */
    public static List<Setting> of(Catalog catalog, Query query) {
        List<Setting> layouts = new ArrayList<>();
        Menu menu = new Menu(catalog, query);
        for (Blank blank : menu.open(PartKind.BLANK, Blank.class)) {
            if (menu.allowed(Station.BLANK, blank)) {
                layouts.addAll(of(catalog, query, blank));
            }
        }
        return layouts;
    }

    /** On one blank. */
    static List<Setting> of(Catalog catalog, Query query, Blank blank) {
        List<Setting> layouts = new ArrayList<>();
        Integer given = query.reelFootMm();
        Refusal refusal = new Refusal();
        BlankShape shape = BlankShape.of(blank);
        int least = (int) Math.floor(query.brief().reachMinMm() - LONGEST_CAP_MM);
        for (int foot = Layout.GRID_MM; foot <= query.brief().reachMaxMm(); foot += Layout.GRID_MM) {
            if (foot < least || given != null && given != foot) {
                continue;
            }
            for (HandleForm form : HandleForm.values()) {
                for (int count = FEWEST_GUIDES; count <= Station.MOST_GUIDES; count++) {
                    Layout layout = new Layout(blank.id(), foot, form, count);
                    Setting setting = Setting.of(catalog, query.brief(), shape, layout);
                    query.rulebook().onLayout(setting, refusal.reset());
                    if (!refusal.refused()) {
                        layouts.add(setting);
                    }
                }
            }
        }
        return layouts;
    }

    /** What wraps and glue lines may be made with; of finishes and adhesives the first that is open. */
    public static List<Consumables> consumables(Catalog catalog, Query query) {
        Menu menu = new Menu(catalog, query);
        List<Consumables> all = new ArrayList<>();
        List<Finish> finishes = menu.open(PartKind.FINISH, Finish.class);
        List<Adhesive> adhesives = menu.open(PartKind.ADHESIVE, Adhesive.class);
        for (WrapThread thread : menu.open(PartKind.THREAD, WrapThread.class)) {
            if (menu.allowed(Station.THREAD, thread) && !finishes.isEmpty() && !adhesives.isEmpty()) {
                all.add(new Consumables(thread, finishes.get(0), adhesives.get(0)));
            }
        }
        return all;
    }
}
