package withy.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.catalog.Catalog;
import withy.catalog.PartFacts;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Share;
import withy.shop.Piece;

/**
 * What was foretold of a rod when its build was accepted.
 *
 * @param schema format
 * @param weightG finished rod without reel, g
 * @param toleranceG ± of it, g
 * @param balanceMm balance point with reel, mm ahead of the reel foot
 * @param kinds what each kind of part adds, and {@link #WORK}: thread, finish and glue
 * @param unitsG weight of one piece as reckoned with, g, by part
 * @param hangingG rod with reel and line, g; 0 where it was not kept
 * @param armsMm where a part that is heavier adds what it is heavier, mm ahead of the reel foot: the mean over its places, by part
 */
public record Prediction(
        int schema,
        double weightG,
        double toleranceG,
        double balanceMm,
        SortedMap<String, Kind> kinds,
        SortedMap<String, Double> unitsG,
        double hangingG,
        SortedMap<String, Double> armsMm) {
    /** Key of what is put on at the bench: thread, finish, glue, tape. */
    public static final String WORK = "bench work";

    /** How much heavier each part is taken to find its arm, g. */
    private static final double HEAVIER_G = 1;

    private static final ObjectMapper MAPPER = new ObjectMapper();

    public Prediction {
        kinds = Collections.unmodifiableSortedMap(new TreeMap<>(kinds));
        unitsG = Collections.unmodifiableSortedMap(new TreeMap<>(unitsG));
        armsMm = Collections.unmodifiableSortedMap(armsMm == null ? new TreeMap<>() : new TreeMap<>(armsMm));
    }

    /**
     * What one kind adds.
     *
     * @param weightG g
     * @param toleranceG ± of it, g
     */
    public record Kind(double weightG, double toleranceG) {}

    /** Of a measured rod. */
    public static Prediction of(Rod rod) {
        SortedMap<String, Double> weights = new TreeMap<>();
        SortedMap<String, SortedMap<String, Double>> models = new TreeMap<>();
        SortedMap<String, Double> units = new TreeMap<>();
        Share total = rod.total();
        for (Placed placed : rod.placed().values()) {
            PartFacts facts = placed.part().facts();
            Share share = rod.shares().getOrDefault(placed.station(), Share.NONE);
            String kind = placed.part().kind().word();
            double part = share.partMg() / 1000.0;
            weights.merge(kind, part, Double::sum);
            double whole = facts.massMg() > 0 ? share.partMg() / (double) facts.massMg() : 1;
            models.computeIfAbsent(kind, k -> new TreeMap<>())
                    .merge(facts.id(), facts.weightTolG() * whole, Double::sum);
            units.put(facts.id(), facts.massMg() / 1000.0);
        }
        SortedMap<String, Kind> kinds = new TreeMap<>();
        weights.forEach((kind, weight) -> kinds.put(kind, new Kind(weight, together(models.get(kind)))));
        kinds.put(
                WORK,
                new Kind(
                        (total.massMg() - total.partMg()) / 1000.0,
                        rod.setting().catalog().rates().workmanshipToleranceG()));
        return new Prediction(
                Answer.SCHEMA,
                rod.figures().weightG(),
                Sheets.rounded(rod.figures().weightToleranceG(), 3),
                Sheets.rounded(rod.figures().balanceFromReelFootMm(), 2),
                kinds,
                units,
                rod.balance().massMg() / 1000.0,
                arms(rod));
    }

    private static SortedMap<String, Double> arms(Rod rod) {
        Catalog catalog = rod.setting().catalog();
        SortedMap<String, Double> arms = new TreeMap<>();
        for (Placed placed : rod.placed().values()) {
            PartFacts facts = placed.part().facts();
            if (!arms.containsKey(facts.id())) {
                PartFacts heavier = facts.withScale(facts.massMg() / 1000.0 + HEAVIER_G, facts.weightTolG());
                Catalog other = catalog.changed(Map.of(facts.id(), heavier), catalog.hash());
                Share with = Rod.measure(other, rod.brief(), rod.build()).total();
                long mg = with.massMg() - rod.total().massMg();
                if (mg != 0) {
                    double arm = (with.momentMgMm() - rod.total().momentMgMm()) / (double) mg;
                    arms.put(facts.id(), Sheets.rounded(arm, 2));
                }
            }
        }
        return arms;
    }

    /** The finished rod's weight by the readings of the very pieces, g. Of a part that is cut to fit the whole piece's reading says nothing exact. */
    double weightOfG(List<Piece> pieces) {
        double sum = weightG;
        for (Piece piece : pieces) {
            sum += heavierG(piece);
        }
        return sum;
    }

    /** Its balance point with reel likewise, mm ahead of the reel foot. */
    double balanceOfMm(List<Piece> pieces) {
        double mass = hangingG;
        double moment = hangingG * balanceMm;
        for (Piece piece : pieces) {
            Double arm = armsMm.get(piece.part());
            if (arm != null) {
                mass += heavierG(piece);
                moment += heavierG(piece) * arm;
            }
        }
        return hangingG > 0 ? moment / mass : balanceMm;
    }

    /** How much a piece is heavier than was reckoned with, g. */
    private double heavierG(Piece piece) {
        Double reading = piece.weightG();
        Double reckoned = unitsG.get(piece.part());
        return reading == null || reckoned == null ? 0 : reading - reckoned;
    }

    private static double together(@Nullable SortedMap<String, Double> tolerances) {
        double squares = 0;
        for (double tolerance : tolerances == null ? Collections.<Double>emptyList() : tolerances.values()) {
            squares += tolerance * tolerance;
        }
        return Sheets.rounded(Math.sqrt(squares), 4);
    }

    /** Written for the memory. */
    String json() {
        return AnswerJson.write(this);
    }

    /** Read from the memory. */
    static Prediction read(String json) {
        try {
            return MAPPER.readValue(json, Prediction.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a prediction that can't be read: " + e.getOriginalMessage(), e);
        }
    }
}
