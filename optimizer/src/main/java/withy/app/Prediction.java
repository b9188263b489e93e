package withy.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.catalog.PartFacts;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Share;

/**
 * What was foretold of a rod when its build was accepted.
 *
 * @param schema format
 * @param weightG finished rod without reel, g
 * @param toleranceG ± of it, g
 * @param balanceMm balance point with reel, mm ahead of the reel foot
 * @param kinds what each kind of part adds, and {@link #WORK}: thread, finish and glue
 * @param unitsG weight of one piece as reckoned with, g, by part
 */
public record Prediction(
        int schema,
        double weightG,
        double toleranceG,
        double balanceMm,
        SortedMap<String, Kind> kinds,
        SortedMap<String, Double> unitsG) {
    /** Key of what is put on at the bench: thread, finish, glue, tape. */
    public static final String WORK = "bench work";

    private static final ObjectMapper MAPPER = new ObjectMapper();

    public Prediction {
        kinds = Collections.unmodifiableSortedMap(new TreeMap<>(kinds));
        unitsG = Collections.unmodifiableSortedMap(new TreeMap<>(unitsG));
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
                units);
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
