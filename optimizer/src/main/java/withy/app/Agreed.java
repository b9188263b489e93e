package withy.app;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefReader;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.rod.Build;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.shop.Job;
import withy.shop.Need;
import withy.shop.Shop;
import withy.shop.ShopFault;
import withy.shop.Snapshot;

/** What was agreed for a job, as it was kept: the brief, the accepted build, its rod and the pieces that rod takes. */
final class Agreed {
    /** Before any date a kept brief may name: its date was judged when it was first read. */
    private static final LocalDate ANY_DAY = LocalDate.of(1900, 1, 1);

    private Agreed() {}

    /** The kept brief. */
    static Brief brief(Workshop workshop, Job job) {
        return brief(workshop, job.brief());
    }

    /** A brief as it is kept, as JSON. */
    static Brief brief(Workshop workshop, String told) {
        return BriefReader.read(told, new BriefContext(workshop.lists().rates(), ANY_DAY))
                .orThrow();
    }

    /** The accepted build. */
    static Build build(Job job, Catalog catalog) {
        String told = job.build();
        if (told == null) {
            throw ShopFault.refused(
                    "job " + job.id() + " is " + job.state().word() + ": no build was accepted yet.",
                    "type: withy job " + job.id() + " --accept 1.");
        }
        BuildReader.Reading reading = BuildReader.read(told, catalog);
        Build build = reading.build();
        if (build == null) {
            throw new RefusedBuild(
                    "the build of job " + job.id() + " names parts that are in no list any more.",
                    reading.faults().stream().map(f -> f.message()).toList());
        }
        return build;
    }

    /** The accepted rod, measured against what the job can have now. */
    static Rod rod(Workshop workshop, Shop shop, Job job) {
        Brief brief = brief(workshop, job);
        Catalog catalog =
                shop.snapshot(workshop.lists()).forJob(brief, shop.jobs().held(job.id()));
        return Rod.measure(catalog, brief, build(job, catalog));
    }

    /** Pieces a rod takes from the shop. */
    static List<Need> needs(Rod rod) {
        SortedMap<String, Integer> pieces = new TreeMap<>();
        for (Placed placed : rod.placed().values()) {
            if (fromTheShop(rod, placed)) {
                pieces.merge(placed.part().id(), rod.pieces(placed.station()), Integer::sum);
            }
        }
        List<Need> needs = new ArrayList<>();
        pieces.forEach((id, count) -> {
            Part part = rod.setting().catalog().find(id);
            if (part != null) {
                needs.add(new Need(
                        id, count, part.facts().leadDays(), part.facts().packQty()));
            }
        });
        return needs;
    }

    /** True where pieces of the shop stand there: not what is used by amount, nor what the customer brings. */
    static boolean fromTheShop(Rod rod, Placed placed) {
        return !Snapshot.shared(placed.part().kind())
                && !rod.brief().owned().contains(placed.part().id());
    }
}
