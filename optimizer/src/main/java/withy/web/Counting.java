package withy.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import withy.app.Chooser.Fit;
import withy.app.Fitting;
import withy.app.Reasons.AskedLine;
import withy.explain.Phrases;
import withy.objectives.Solver.Query;
import withy.rod.Station;
import withy.rules.Rulebook;
import withy.web.Bench.Asked;
import withy.web.BriefView.CountView;

/** What still fits a brief, told in a line or two. */
final class Counting {
    private final Bench bench;

    Counting(Bench bench) {
        this.bench = bench;
    }

    /** Blanks only: there at once. */
    CountView blanks(Asked asked) {
        if (asked.brief() == null) {
            return new CountView(
                    asked.faults().stream().map(BriefForm::told).limit(1).toList(), true);
        }
        Query query = Query.of(asked.told(), Rulebook.standard());
        Map<Station.Place, Fit> fits = bench.answers().chooser(asked.catalog()).fits(query);
        Fit blanks = fits.get(Station.Place.BLANK);
        if (blanks == null) {
            throw new IllegalStateException("no station for the blank");
        }
        return new CountView(
                List.of(Words.say("count.blanks", blanks.offered(), blanks.offered() + blanks.refused())),
                blanks.offered() == 0);
    }

    /**
     * Blanks and builds, or the first wish that leaves none: a search.
     *
     * @param typed as typed, so that what was said is blamed before what is taken for granted
     */
    CountView builds(Asked asked, ObjectNode typed) {
        CountView blanks = blanks(asked);
        if (asked.brief() == null) {
            return blanks;
        }
        Fitting fitting = bench.answers().fitting(asked, turn(typed));
        List<String> lines = new ArrayList<>(blanks.lines());
        AskedLine tooMuch = fitting.tooMuch();
        boolean none = fitting.atLeast() == 0 && !fitting.interrupted();
        if (fitting.atLeast() > 0) {
            lines.add(Words.say(fitting.atLeast() == 1 ? "count.builds.1" : "count.builds", fitting.atLeast()));
        } else if (!none) {
            lines.add(Words.say("count.long"));
        } else {
            lines.add(
                    tooMuch == null
                            ? Words.say("count.none")
                            : Words.say("count.tooMuch", Phrases.sentence(tooMuch.words())));
        }
        return new CountView(lines, none);
    }

    /** First what is taken for granted, then what was said in the order of the talk, parts by name last. */
    private static Comparator<String> turn(ObjectNode typed) {
        List<String> talk = new ArrayList<>();
        Questions.fields().forEach(field -> talk.add(field.path()));
        return Comparator.comparingInt((String demand) -> said(typed, demand) ? 1 : 0)
                .thenComparingInt(demand -> {
                    for (int i = 0; i < talk.size(); i++) {
                        if (same(demand, talk.get(i))) {
                            return i;
                        }
                    }
                    return talk.size();
                });
    }

    private static boolean same(String demand, String field) {
        String bare = bare(demand);
        return bare.equals(field) || field.startsWith(bare + ".") || bare.startsWith(field + ".");
    }

    /** A demand's key without the unit it is written with. */
    private static String bare(String demand) {
        return switch (demand) {
            case "lengthMm" -> "length";
            case "packedMaxMm" -> "packedMax";
            case "reachMm" -> "reach";
            case "budgetMinor" -> "budget";
            case "line.strength" -> "line.gauge";
            default -> demand;
        };
    }

    private static boolean said(ObjectNode typed, String demand) {
        String top = bare(demand).split("\\.", -1)[0];
        for (String key :
                List.of(top, top + "Mm", top + "Kg", top + "Minor", top.equals("water") ? "corrosionClass" : top)) {
            JsonNode there = typed.path(key);
            if (!there.isMissingNode()) {
                return true;
            }
        }
        return false;
    }
}
