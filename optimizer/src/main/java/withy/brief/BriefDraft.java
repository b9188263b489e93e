package withy.brief;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Handle;
import withy.brief.Brief.Landing;
import withy.brief.Brief.Leader;
import withy.brief.Brief.Look;
import withy.brief.Brief.Lure;
import withy.brief.Brief.MainLine;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Reel;

/** A resolved brief with some of it said otherwise. Whatever is not changed stays, the steps worth noticing included. */
public final class BriefDraft {
    private final Brief from;
    private double lengthMinMm;
    private double lengthMaxMm;
    private int piecesMin;
    private int piecesMax;
    private @Nullable Double packedMaxMm;
    private Lure lure;
    private MainLine line;
    private @Nullable Leader leader;
    private Reel reel;
    private double largestFishKg;
    private Landing landing;
    private int durabilityClass;
    private int corrosionClass;
    private double palmMm;
    private double reachMinMm;
    private double reachMaxMm;
    private Handle handle;
    private Look look;
    private @Nullable Long budgetMinor;
    private @Nullable LocalDate wantedBy;
    private Map<Objective, Double> priorities;
    private List<PartWish> insisted;
    private List<PartWish> refused;

    /** Starts from what a brief says. */
    public BriefDraft(Brief from) {
        this.from = from;
        this.lengthMinMm = from.lengthMinMm();
        this.lengthMaxMm = from.lengthMaxMm();
        this.piecesMin = from.piecesMin();
        this.piecesMax = from.piecesMax();
        this.packedMaxMm = from.packedMaxMm();
        this.lure = from.lure();
        this.line = from.line();
        this.leader = from.leader();
        this.reel = from.reel();
        this.largestFishKg = from.largestFishKg();
        this.landing = from.landing();
        this.durabilityClass = from.durabilityClass();
        this.corrosionClass = from.corrosionClass();
        this.palmMm = from.palmMm();
        this.reachMinMm = from.reachMinMm();
        this.reachMaxMm = from.reachMaxMm();
        this.handle = from.handle();
        this.look = from.look();
        this.budgetMinor = from.budgetMinor();
        this.wantedBy = from.wantedBy();
        this.priorities = from.priorities();
        this.insisted = from.insisted();
        this.refused = from.refused();
    }

    /** What the draft says now. */
    public Brief brief() {
        return new Brief(
                from.name(),
                from.customer(),
                from.rodType(),
                from.twoHanded(),
                from.fishedFrom(),
                lengthMinMm,
                lengthMaxMm,
                piecesMin,
                piecesMax,
                packedMaxMm,
                lure,
                line,
                leader,
                from.dragKg(),
                reel,
                largestFishKg,
                landing,
                durabilityClass,
                corrosionClass,
                palmMm,
                reachMinMm,
                reachMaxMm,
                handle,
                look,
                budgetMinor,
                wantedBy,
                priorities,
                from.zoneNearMm(),
                from.zoneFarMm(),
                from.steps(),
                insisted,
                from.owned(),
                refused,
                from.counterweightAsked(),
                from.guidesByClearance(),
                from.defaultsUsed());
    }

    /** Finished length, mm. */
    public BriefDraft length(double minMm, double maxMm) {
        lengthMinMm = minMm;
        lengthMaxMm = maxMm;
        return this;
    }

    /** Sections. */
    public BriefDraft pieces(int min, int max) {
        piecesMin = min;
        piecesMax = max;
        return this;
    }

    /** Longest packed length, mm, or null for any. */
    public BriefDraft packed(@Nullable Double mostMm) {
        packedMaxMm = mostMm;
        return this;
    }

    /** Masses of the lures. */
    public BriefDraft lure(Lure other) {
        lure = other;
        return this;
    }

    /** Main line. */
    public BriefDraft line(MainLine other) {
        line = other;
        return this;
    }

    /** Leader, where there is one. */
    public BriefDraft leader(UnaryOperator<Leader> change) {
        leader = leader == null ? null : change.apply(leader);
        return this;
    }

    /** Reel. */
    public BriefDraft reel(Reel other) {
        reel = other;
        return this;
    }

    /** Heaviest fish, kg, and how it is landed. */
    public BriefDraft fish(double kg, Landing how) {
        largestFishKg = kg;
        landing = how;
        return this;
    }

    /** Durability and corrosion class. */
    public BriefDraft classes(int durability, int corrosion) {
        durabilityClass = durability;
        corrosionClass = corrosion;
        return this;
    }

    /** Palm breadth, mm. */
    public BriefDraft palm(double mm) {
        palmMm = mm;
        return this;
    }

    /** Reel foot to butt end, mm. */
    public BriefDraft reach(double minMm, double maxMm) {
        reachMinMm = minMm;
        reachMaxMm = maxMm;
        return this;
    }

    /** Handle wishes. */
    public BriefDraft handle(UnaryOperator<Handle> change) {
        handle = change.apply(handle);
        return this;
    }

    /** Look wishes. */
    public BriefDraft look(UnaryOperator<Look> change) {
        look = change.apply(look);
        return this;
    }

    /** Ceiling, minor units, or null for none. */
    public BriefDraft budget(@Nullable Long minor) {
        budgetMinor = minor;
        return this;
    }

    /** Date wanted, or null for no hurry. */
    public BriefDraft wantedBy(@Nullable LocalDate day) {
        wantedBy = day;
        return this;
    }

    /** Priorities of the objectives. */
    public BriefDraft priorities(Map<Objective, Double> other) {
        priorities = other;
        return this;
    }

    /** Parts insisted on and refused. */
    public BriefDraft parts(UnaryOperator<List<PartWish>> insistedChange, UnaryOperator<List<PartWish>> refusedChange) {
        insisted = insistedChange.apply(insisted);
        refused = refusedChange.apply(refused);
        return this;
    }
}
