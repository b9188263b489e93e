package withy.app;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.shop.Change;
import withy.shop.Job;
import withy.shop.Shop;

/**
 * What {@code job} answers without a job; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param jobs all jobs, oldest first
 */
public record JobsAnswer(int schema, List<Line> jobs) {
    public JobsAnswer {
        jobs = List.copyOf(jobs);
    }

    /**
     * One job.
     *
     * @param job its number
     * @param name short name of the commission
     * @param state how far it is
     * @param wantedBy day it is wanted, or null
     * @param missing promised pieces that were lost
     */
    public record Line(
            long job, String name, String state, @Nullable String wantedBy, int missing) {}

    static Line line(Job job, int missing) {
        return new Line(job.id(), job.name(), job.state().word(), job.wanted(), missing);
    }

    /** All jobs of a shop. */
    public static JobsAnswer of(Workshop workshop) {
        List<Line> lines = new ArrayList<>();
        if (Shop.exists(workshop.folder())) {
            try (Shop shop = Shop.reading(workshop.folder(), workshop.day())) {
                List<Change.Hit> hits = shop.stock().hits();
                for (Job job : shop.jobs().all()) {
                    int missing = hits.stream()
                            .filter(hit -> hit.job() == job.id())
                            .mapToInt(Change.Hit::pieces)
                            .sum();
                    lines.add(line(job, missing));
                }
            }
        }
        return new JobsAnswer(Answer.SCHEMA, lines);
    }
}
