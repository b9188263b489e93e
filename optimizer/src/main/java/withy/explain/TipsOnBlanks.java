package withy.explain;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.PartKind;
import withy.catalog.TipTop;
import withy.objectives.Solver.Query;
import withy.rod.BlankShape;
import withy.rod.Layout;
import withy.rod.Placed;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;
import withy.rules.Rule;

/** Which tip-tops go onto which blanks. Their rule looks at tube and tip alone, so it is asked once, whatever else is wished. */
final class TipsOnBlanks {
    private static final String RULE = "tip-top";

    private final Catalog catalog;
    private final Map<String, Set<String>> blanks = new ConcurrentHashMap<>();

    TipsOnBlanks(Catalog catalog) {
        this.catalog = catalog;
    }

    /** The tip-tops that a question wants in, none where it leaves their rule out. */
    List<TipTop> forced(Query query) {
        boolean ruled = query.rulebook().rules().stream().anyMatch(TipsOnBlanks::theirs);
        return query.forced().stream()
                .map(catalog::find)
                .filter(part -> ruled && part instanceof TipTop)
                .map(TipTop.class::cast)
                .toList();
    }

    /** True where all of them go onto a blank. */
    boolean go(Query query, List<TipTop> tips, Blank blank) {
        return tips.stream()
                .allMatch(tip -> blanks.computeIfAbsent(tip.id(), id -> under(query, tip))
                        .contains(blank.id()));
    }

    private Set<String> under(Query query, TipTop tip) {
        Rule rule = query.rulebook().rules().stream()
                .filter(TipsOnBlanks::theirs)
                .findFirst()
                .orElseThrow();
        Refusal refusal = new Refusal();
        return catalog.all(PartKind.BLANK, Blank.class).stream()
                .filter(blank -> {
                    Layout any = new Layout(blank.id(), 300, HandleForm.SPLIT, 1);
                    Setting setting = Setting.of(catalog, query.brief(), BlankShape.of(blank), any);
                    rule.onPart(setting, new Placed(Station.TIP_TOP, tip, blank.lengthMm(), 0), refusal.reset());
                    return !refusal.refused();
                })
                .map(Blank::id)
                .collect(Collectors.toSet());
    }

    private static boolean theirs(Rule rule) {
        return rule.code().equals(RULE);
    }
}
