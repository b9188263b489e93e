package withy.explain;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import withy.brief.Brief;
import withy.brief.Brief.Look;
import withy.brief.Brief.PartWish;
import withy.brief.BriefDraft;
import withy.catalog.Material;
import withy.catalog.Part;
import withy.explain.Demand.Switch;
import withy.objectives.Solver.Query;
import withy.rules.Rulebook;

/** Everything a brief asks that a build must keep, in the order it is told. Nice wishes are none: they forbid nothing. */
final class Demands {
    private static final double MOST_BUDGET_TIMES = 20;

    private final Inquiry inquiry;
    private final Brief brief;
    private final List<Demand> list = new ArrayList<>();

    private Demands(Inquiry inquiry) {
        this.inquiry = inquiry;
        this.brief = inquiry.brief();
    }

    static List<Demand> of(Inquiry inquiry) {
        Demands demands = new Demands(inquiry);
        demands.list.addAll(SizeDemands.of(inquiry.brief(), inquiry.units()));
        demands.list.addAll(TackleDemands.of(inquiry.brief(), inquiry.units()));
        demands.classes();
        demands.list.addAll(HandleDemands.of(inquiry.brief(), inquiry.units()));
        demands.look();
        demands.trade();
        demands.parts();
        return List.copyOf(demands.list);
    }

    /** The brief without these demands: one, or one for each value that would do where any will do. */
    static Set<Brief> without(Brief brief, List<Demand> dropped) {
        List<Brief> briefs = new ArrayList<>(List.of(brief));
        for (Demand demand : dropped) {
            List<Brief> wider = new ArrayList<>();
            for (Brief so : briefs) {
                for (Consumer<BriefDraft> drop : demand.drops()) {
                    BriefDraft draft = new BriefDraft(so);
                    drop.accept(draft);
                    wider.add(draft.brief());
                }
            }
            briefs = wider;
        }
        return new LinkedHashSet<>(briefs);
    }

    /** A question about the brief without these demands: one, or one for each value that would do; one for all hands. */
    static Set<Query> without(Inquiry inquiry, Query question, List<Demand> dropped) {
        List<Demand> others = dropped.stream()
                .filter(demand -> !demand.key().equals(HandleDemands.HAND))
                .toList();
        Rulebook rules =
                others.size() < dropped.size() ? inquiry.rulebooks().anyHand(question.rulebook()) : question.rulebook();
        Set<Query> questions = new LinkedHashSet<>();
        without(inquiry.brief(), others)
                .forEach(brief -> questions.add(question.withBrief(brief).withRulebook(rules)));
        return questions;
    }

    private void classes() {
        atLeast(
                "durabilityClass",
                brief.durabilityClass(),
                (draft, n) -> draft.classes(n, draft.brief().corrosionClass()));
        atLeast(
                "water",
                brief.corrosionClass(),
                (draft, n) -> draft.classes(draft.brief().durabilityClass(), n));
    }

    /** A class of 1 asks for nothing. */
    private void atLeast(String key, int now, BiConsumer<BriefDraft, Integer> set) {
        if (now > 1) {
            add(
                    key,
                    Phrases.of("demand." + key, now),
                    draft -> set.accept(draft, 1),
                    new Dial(
                            key,
                            now,
                            1,
                            1,
                            (draft, n) -> set.accept(draft, (int) Math.round(n)),
                            n -> Long.toString(Math.round(n)),
                            ""));
        }
    }

    private void look() {
        for (Material material : brief.look().refusedMaterials()) {
            String name = Phrases.of("material." + material.word());
            plain(
                    "look.refusedMaterials",
                    material.word(),
                    Phrases.of("demand.look.refusedMaterials", name),
                    draft -> draft.look(look -> without(look, material)));
        }
    }

    private static Look without(Look look, Material material) {
        Set<Material> rest = new TreeSet<>(look.refusedMaterials());
        rest.remove(material);
        return new Look(look.theme(), look.likedMaterials(), rest, look.likedColours(), look.inscription());
    }

    private void trade() {
        Long budget = brief.budgetMinor();
        if (budget != null) {
            add(
                    "budgetMinor",
                    Phrases.of("demand.budgetMinor", inquiry.money(budget)),
                    draft -> draft.budget(null),
                    new Dial(
                            "budgetMinor",
                            budget,
                            budget * MOST_BUDGET_TIMES,
                            1,
                            (draft, minor) -> draft.budget(Math.round(minor)),
                            minor -> inquiry.money(Math.round(minor)),
                            "minor"));
        }
        if (brief.wantedBy() != null) {
            int longest = 0;
            for (Part part : inquiry.catalog().byId().values()) {
                Integer days = part.facts().leadDays();
                longest = days == null ? longest : Math.max(longest, days);
            }
            java.time.LocalDate wanted = brief.wantedBy();
            java.time.LocalDate last = inquiry.catalog().asOf().plusDays(longest);
            long days = Math.max(0, java.time.temporal.ChronoUnit.DAYS.between(wanted, last));
            add(
                    "wantedBy",
                    Phrases.of("demand.wantedBy", wanted),
                    draft -> draft.wantedBy(null),
                    new Dial(
                            "wantedBy",
                            0,
                            days,
                            1,
                            (draft, later) -> draft.wantedBy(wanted.plusDays(Math.round(later))),
                            later -> Long.toString(Math.round(later)),
                            "days"));
        }
    }

    private void parts() {
        for (PartWish wish : brief.insisted()) {
            if (wish.hard()) {
                plain(
                        "insisted",
                        wish.partId(),
                        Phrases.of("demand.insisted", inquiry.name(wish.partId())),
                        draft -> draft.parts(all -> without(all, wish), all -> all));
            }
        }
        for (PartWish wish : brief.refused()) {
            if (wish.hard()) {
                plain(
                        "refused",
                        wish.partId(),
                        Phrases.of("demand.refused", inquiry.name(wish.partId())),
                        draft -> draft.parts(all -> all, all -> without(all, wish)));
            }
        }
    }

    private static List<PartWish> without(List<PartWish> all, PartWish one) {
        return all.stream().filter(wish -> !wish.equals(one)).toList();
    }

    private void add(String key, String words, Consumer<BriefDraft> drop, Dial... dials) {
        list.add(new Demand(key, "", words, List.of(drop), List.of(dials), List.of()));
    }

    /** A demand that is only dropped as a whole. */
    private void plain(String key, String about, String words, Consumer<BriefDraft> drop) {
        String repair = Phrases.of("repair." + key, about.isEmpty() ? "" : inquiry.spoken(about));
        list.add(new Demand(key, about, words, List.of(drop), List.of(), List.of(new Switch(repair, drop))));
    }
}
