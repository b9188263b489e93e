package withy.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.RodType;
import withy.catalog.WrapThread;
import withy.objectives.Solver.Query;
import withy.rod.Build.Choice;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * What may stand at each station for a question, told from the words of the trade alone: parts that the brief itself refuses are left out (they
 * make every build illegal), blanks are sold for the rod's type, threads are of the shop's letters, finish and adhesive the house's unless wished, an inscription is set where one is
 * asked for.
 */
final class Menu {
    /** A station left empty. */
    static final @Nullable Choice EMPTY = null;

    private final Catalog catalog;
    private final Query query;
    private final Set<String> open = new TreeSet<>();

    Menu(Catalog catalog, Query query) {
        this.catalog = catalog;
        this.query = query;
        Refusal refusal = new Refusal();
        for (Part part : catalog.byId().values()) {
            query.rulebook().onCandidate(query.brief(), catalog, part, refusal.reset());
            if (!refusal.refused() && !query.refused().contains(part.id()) && usual(part)) {
                open.add(part.id());
            }
        }
    }

    private boolean usual(Part part) {
        boolean wished = query.forced().contains(part.id())
                || query.fixed().values().stream()
                        .anyMatch(choice -> choice.partId().equals(part.id()))
                || query.brief().insisted().stream()
                        .anyMatch(wish -> wish.partId().equals(part.id()));
        if (wished) {
            return true;
        }
        if (part instanceof WrapThread thread) {
            RodType type = query.brief().rodType();
            List<String> letters = catalog.rates().threadLetters().get(type);
            return letters != null && letters.contains(thread.letter());
        }
        if (part instanceof Blank blank) {
            return blank.rodTypes().contains(query.brief().rodType());
        }
        return part.kind() != PartKind.FINISH && part.kind() != PartKind.ADHESIVE
                || part.id().equals(catalog.rates().houseFinish())
                || part.id().equals(catalog.rates().houseAdhesive());
    }

    /** Parts of a kind that are open. */
    <P extends Part> List<P> open(PartKind kind, Class<P> type) {
        return catalog.all(kind, type).stream()
                .filter(part -> open.contains(part.id()))
                .toList();
    }

    /** Choices for a station that takes one part, {@link #EMPTY} among them where it may stay empty. */
    List<@Nullable Choice> at(Station station, PartKind kind, boolean mayBeEmpty) {
        List<@Nullable Choice> all = new ArrayList<>();
        if (mayBeEmpty && !query.fixed().containsKey(station)) {
            all.add(EMPTY);
        }
        for (Part part : open(kind, Part.class)) {
            if (allowed(station, part)) {
                all.add(Choice.of(part.id()));
            }
        }
        return all;
    }

    /** True where the question leaves this part its station. */
    boolean allowed(Station station, Part part) {
        Choice fixed = query.fixed().get(station);
        return fixed == null ? !query.empty().contains(station) : fixed.partId().equals(part.id());
    }

    /** Grips of a place at every length: as sold and every 5 mm down to the shortest. */
    List<@Nullable Choice> grips(Station station, Grip.Place place, boolean mayBeEmpty) {
        List<@Nullable Choice> all = new ArrayList<>();
        Choice fixed = query.fixed().get(station);
        if (mayBeEmpty && fixed == null) {
            all.add(EMPTY);
        }
        for (Grip grip : open(PartKind.GRIP, Grip.class)) {
            if (grip.place() != place || !allowed(station, grip)) {
                continue;
            }
            if (place == Grip.Place.FULL) {
                all.add(Choice.of(grip.id()));
            } else if (fixed != null && fixed.cutMm() > 0) {
                all.add(fixed);
            } else {
                all.add(new Choice(grip.id(), grip.lengthMm()));
                for (int cut = 5; cut < grip.lengthMm(); cut += 5) {
                    if (cut >= grip.shortestMm()) {
                        all.add(new Choice(grip.id(), cut));
                    }
                }
            }
        }
        return all;
    }

    /** Inscriptions: one where it is asked for and there is one; one or none where a plate is wished for by itself; none otherwise. */
    List<@Nullable Choice> decals() {
        boolean wanted = !query.brief().look().inscription().isEmpty()
                && !open(PartKind.DECAL, Part.class).isEmpty()
                && !query.empty().contains(Station.DECAL);
        boolean given = query.fixed().containsKey(Station.DECAL);
        boolean wished = query.forced().stream().anyMatch(this::decal)
                || query.brief().insisted().stream().anyMatch(wish -> decal(wish.partId()));
        if (wanted || given || wished) {
            return at(Station.DECAL, PartKind.DECAL, !wanted && !given);
        }
        List<@Nullable Choice> none = new ArrayList<>();
        none.add(EMPTY);
        return none;
    }

    private boolean decal(String id) {
        Part part = catalog.find(id);
        return part != null && part.kind() == PartKind.DECAL;
    }

    /** Butt grips of a handle form. */
    List<@Nullable Choice> buttGrips(HandleForm form) {
        if (form == HandleForm.SPLIT) {
            return grips(Station.BUTT_GRIP, Grip.Place.BUTT, false);
        }
        List<@Nullable Choice> none = new ArrayList<>();
        if (!query.fixed().containsKey(Station.BUTT_GRIP)) {
            none.add(EMPTY);
        }
        return none;
    }
}
