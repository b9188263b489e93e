package withy.app;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.shop.Change;
import withy.shop.Job;
import withy.shop.Piece;

/**
 * What {@code job JOB} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param job its number
 * @param name short name of the commission
 * @param state new, offered, accepted, built, weighed, closed or cancelled
 * @param revision changes with every write
 * @param wantedBy day it is wanted, or null
 * @param currency currency of the prices
 * @param offers what was offered
 * @param build the accepted build as a build file, or null
 * @param glued stations that are glued or wrapped
 * @param pieces pieces promised to it or built into it
 * @param missing parts whose promised pieces were lost
 * @param predicted what was foretold of the accepted build, or null
 * @param asBuilt the finished rod on the scale, or null
 * @param warnings what to look at
 * @param history what was done, oldest first
 */
public record JobAnswer(
        int schema,
        long job,
        String name,
        String state,
        int revision,
        @Nullable String wantedBy,
        String currency,
        List<OfferLine> offers,
        @Nullable JsonNode build,
        List<String> glued,
        List<Piece> pieces,
        List<Change.Hit> missing,
        @Nullable Foretold predicted,
        Job.@Nullable AsBuilt asBuilt,
        List<String> warnings,
        List<Job.Event> history) {
    public JobAnswer {
        offers = List.copyOf(offers);
        glued = List.copyOf(glued);
        pieces = List.copyOf(pieces);
        missing = List.copyOf(missing);
        warnings = List.copyOf(warnings);
        history = List.copyOf(history);
    }

    /**
     * An offer.
     *
     * @param offer its number
     * @param day day it was given
     * @param validUntil last day it holds by its paper; null where it was given before papers were kept
     * @param ended day it was withdrawn or let lapse, or null
     * @param lapsed true where it was let lapse
     * @param catalogHash hash of lists and memory at that time
     * @param builds its builds
     */
    public record OfferLine(
            long offer,
            String day,
            @Nullable String validUntil,
            @Nullable String ended,
            boolean lapsed,
            String catalogHash,
            List<OfferedBuild> builds) {
        public OfferLine {
            builds = List.copyOf(builds);
        }
    }

    /**
     * One build of an offer.
     *
     * @param rank 1 is the best
     * @param name a few words
     * @param weightG finished rod, g
     * @param priceMinor what the customer pays, minor units
     */
    public record OfferedBuild(int rank, String name, double weightG, long priceMinor) {}

    /**
     * What was foretold.
     *
     * @param weightG by the lists and the parts' mean readings, g
     * @param weightOfPiecesG by the readings of the very pieces promised, g
     * @param toleranceG ± of it, g
     * @param balanceMm balance point with reel by the lists and the parts' mean readings, mm ahead of the reel foot
     * @param balanceOfPiecesMm likewise by the readings of the very pieces promised
     */
    public record Foretold(
            double weightG, double weightOfPiecesG, double toleranceG, double balanceMm, double balanceOfPiecesMm) {}

    static JobAnswer of(Job.File file, String currency, List<String> warnings) {
        Job job = file.job();
        String told = job.build();
        String predicted = job.predicted();
        return new JobAnswer(
                Answer.SCHEMA,
                job.id(),
                job.name(),
                job.state().word(),
                job.revision(),
                job.wanted(),
                currency,
                file.offers().stream().map(JobAnswer::offer).toList(),
                told == null ? null : JsonText.tree(told),
                new ArrayList<>(new TreeSet<>(job.glued())),
                file.pieces(),
                file.missing(),
                predicted == null ? null : foretold(Prediction.read(predicted), file.pieces()),
                file.asBuilt(),
                warnings,
                file.history());
    }

    private static OfferLine offer(Job.Offer offer) {
        List<OfferedBuild> builds = new ArrayList<>();
        for (JsonNode build : JsonText.tree(offer.answer()).path("builds")) {
            builds.add(new OfferedBuild(
                    build.path("rank").intValue(),
                    build.path("name").asText(),
                    build.path("figures").path("weightG").doubleValue(),
                    build.path("figures").path("priceMinor").longValue()));
        }
        return new OfferLine(
                offer.id(),
                offer.day(),
                OfferFile.validUntil(offer),
                offer.ended(),
                offer.lapsed(),
                offer.catalogHash(),
                builds);
    }

    static Foretold foretold(Prediction predicted, List<Piece> pieces) {
        return new Foretold(
                predicted.weightG(),
                Sheets.rounded(predicted.weightOfG(pieces), 3),
                predicted.toleranceG(),
                predicted.balanceMm(),
                Sheets.rounded(predicted.balanceOfMm(pieces), 2));
    }
}
