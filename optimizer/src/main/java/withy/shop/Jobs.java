package withy.shop;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.shop.Job.State;

/** Jobs and what is promised to them. Every write names the revision it was made on; where somebody came first it is refused. */
public final class Jobs {
    private final Database database;
    private final LocalDate today;

    Jobs(Database database, LocalDate today) {
        this.database = database;
        this.today = today;
    }

    /** A new job. */
    public Job add(String name, String brief, @Nullable LocalDate wanted) {
        return database.write(sql -> {
            Ledger ledger = new Ledger(sql, today.toString(), "new job");
            long id = sql.insert(
                    "INSERT INTO job (name, state, brief, wanted_day) VALUES (?, 'new', ?, ?)",
                    name,
                    brief,
                    wanted == null ? null : wanted.toString());
            event(ledger, id, "new", name);
            return JobRows.need(sql, id);
        });
    }

    /** All jobs, oldest first. */
    public List<Job> all() {
        return database.read(sql -> JobRows.all(sql));
    }

    /** One job. */
    public Job get(long id) {
        return database.read(sql -> JobRows.need(sql, id));
    }

    /** One job with all that belongs to it. */
    public Job.File file(long id) {
        return database.read(sql -> JobRows.file(sql, id));
    }

    /** Pieces promised to each job or built into it, by part; lost ones are not there any more. */
    public SortedMap<String, Integer> held(long id) {
        return database.read(sql -> JobRows.held(sql, id));
    }

    /**
     * Pieces of one part that a job waits for.
     *
     * @param part catalogue id
     * @param pieces promised pieces that are on order
     * @param due day the last of them is due
     * @param unsent of these, orders still to be sent
     */
    public record Waiting(String part, int pieces, String due, int unsent) {}

    /** What an open job is promised and is not here yet, by part. */
    public List<Waiting> waiting(long id) {
        return database.read(sql -> JobRows.waiting(sql, id));
    }

    /** Keeps an offer as it was given. It warns others but promises nothing. */
    public Job offer(Job job, String catalogHash, String answer, String shown, String paper) {
        return write(job, "offer", ledger -> {
            ledger.sql()
                    .run(
                            "INSERT INTO offer (job, batch, catalog_hash, answer, shown, paper)"
                                    + " VALUES (?, ?, ?, ?, ?, ?)",
                            job.id(),
                            ledger.batch(),
                            catalogHash,
                            answer,
                            shown,
                            paper);
            set(ledger, job, job.state() == State.NEW ? State.OFFERED : job.state());
            event(ledger, job.id(), "offered", "");
        });
    }

    /**
     * What was offered does not hold any more, since it is withdrawn or the customer let its day pass. The offers stay as they were given.
     *
     * @param lapsed true where its day passed
     */
    public Job withdraw(Job job, boolean lapsed, String note) {
        if (job.state() != State.OFFERED) {
            throw wrongState(job, "is " + job.state().word() + ": there is no open offer");
        }
        return write(job, "withdraw", ledger -> {
            set(ledger, job, State.NEW);
            event(ledger, job.id(), lapsed ? "lapsed" : "withdrawn", note);
        });
    }

    /**
     * The customer took a build, or another one in place of the first: its pieces are promised firmly.
     *
     * @param build the build as JSON
     * @param predicted what is foretold of it, as JSON
     * @param needs the pieces it takes, glued ones included
     * @param note in words, for the history
     */
    public Job accept(Job job, String build, String predicted, List<Need> needs, String note) {
        return accept(job, job.brief(), job.wanted(), build, predicted, needs, note);
    }

    /** The same under another brief. */
    public Job accept(
            Job job,
            String brief,
            @Nullable String wantedDay,
            String build,
            String predicted,
            List<Need> needs,
            String note) {
        if (!job.open()) {
            throw wrongState(job, "is " + job.state().word() + ": its parts are settled");
        }
        return write(job, "accept", ledger -> {
            LocalDate wanted = wantedDay == null ? null : LocalDate.parse(wantedDay);
            new Promises(ledger, job.id(), today, wanted).settle(needs);
            ledger.sql()
                    .run(
                            "UPDATE job SET brief = ?, wanted_day = ?, build = ?, predicted = ? WHERE id = ?",
                            brief,
                            wantedDay,
                            build,
                            predicted,
                            job.id());
            set(ledger, job, State.ACCEPTED);
            boolean same = build.equals(job.build()) && brief.equals(job.brief());
            event(ledger, job.id(), job.state() != State.ACCEPTED ? "accepted" : same ? "confirmed" : "changed", note);
        });
    }

    /** Stations are glued or wrapped: their pieces leave the shelf, and stay in this rod. */
    public Job glue(Job job, Set<String> stations, Map<String, Integer> pieces) {
        needAccepted(job);
        return write(job, "glue", ledger -> {
            Set<String> glued = new TreeSet<>(job.glued());
            glued.addAll(stations);
            new Promises(ledger, job.id(), today, null).use(pieces);
            ledger.sql().run("UPDATE job SET glued = ? WHERE id = ?", String.join(" ", glued), job.id());
            set(ledger, job, State.ACCEPTED);
            event(ledger, job.id(), "glued", String.join(" ", new TreeSet<>(stations)));
        });
    }

    /** The rod is built: all its pieces leave the shelf. */
    public Job built(Job job) {
        needAccepted(job);
        return write(job, "built", ledger -> {
            Promises promises = new Promises(ledger, job.id(), today, null);
            promises.use(promises.unused());
            set(ledger, job, State.BUILT);
            event(ledger, job.id(), "built", "");
        });
    }

    /**
     * The finished rod was weighed.
     *
     * @param foretoldMg what it should weigh by the very pieces in it, mg
     * @param toleranceMg ± that was stated with it, mg
     */
    public Job weighed(Job job, long weightMg, @Nullable Double balanceMm, long foretoldMg, long toleranceMg) {
        if (job.state() != State.BUILT && job.state() != State.WEIGHED) {
            throw wrongState(job, "is " + job.state().word() + ": only a built rod is weighed");
        }
        return write(job, "as built", ledger -> {
            ledger.sql()
                    .run(
                            "INSERT INTO as_built (job, batch, weight_mg, balance_mm, foretold_mg, tolerance_mg)"
                                    + " VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (job) DO UPDATE SET"
                                    + " batch = excluded.batch, weight_mg = excluded.weight_mg,"
                                    + " balance_mm = excluded.balance_mm, foretold_mg = excluded.foretold_mg,"
                                    + " tolerance_mg = excluded.tolerance_mg",
                            job.id(),
                            ledger.batch(),
                            weightMg,
                            balanceMm,
                            foretoldMg,
                            toleranceMg);
            set(ledger, job, State.WEIGHED);
            event(ledger, job.id(), "weighed", weightMg / 1000.0 + " g");
        });
    }

    /** The customer has his rod. */
    public Job close(Job job) {
        if (job.state() != State.BUILT && job.state() != State.WEIGHED) {
            throw wrongState(job, "is " + job.state().word() + ": only a built rod is handed over");
        }
        return write(job, "close", ledger -> {
            set(ledger, job, State.CLOSED);
            event(ledger, job.id(), "closed", "");
        });
    }

    /** The customer does not want it any more: what is not built in is free again. */
    public Job cancel(Job job, String note) {
        if (!job.open()) {
            throw wrongState(job, "is " + job.state().word() + " and can't be cancelled");
        }
        return write(job, "cancel", ledger -> {
            new Promises(ledger, job.id(), today, null).release();
            set(ledger, job, State.CANCELLED);
            event(ledger, job.id(), "cancelled", note);
        });
    }

    /** What was done with a job last and has a way back, or null. */
    public @Nullable WayBack wayBack(long id) {
        List<WayBack> last = database.read(sql -> {
            WayBack there = WayBack.of(sql, id);
            return there == null ? List.of() : List.of(there);
        });
        return last.isEmpty() ? null : last.get(0);
    }

    /**
     * Takes back what was done with a job last: its build, brief and state, every promise and piece are as they were before. Then what is free
     * goes to whoever waits for it, as always.
     */
    public Job takeBack(Job job) {
        return write(job, "undo", ledger -> {
            WayBack last = WayBack.of(ledger.sql(), job.id());
            if (last == null) {
                throw ShopFault.refused(
                        "job " + job.id() + ": there is nothing that can be taken back.",
                        "an offer is withdrawn (withy job " + job.id()
                                + " --withdraw), and a finished rod is weighed again.");
            }
            if (!last.obstacles().isEmpty()) {
                throw ShopFault.refused(
                        "job " + job.id() + " can't go back any more.\n" + String.join("\n", last.obstacles()),
                        "choose again: withy out PART --job " + job.id() + ".");
            }
            Set<String> parts = last.take(ledger, job.id());
            event(ledger, job.id(), "taken back", last.event());
            Ledger after = new Ledger(ledger.sql(), today.toString(), "made good");
            for (String part : parts) {
                after.makeGood(part);
            }
        });
    }

    private interface Step {
        void in(Ledger ledger) throws SQLException;
    }

    private Job write(Job job, String what, Step step) {
        return database.write(sql -> {
            Job now = JobRows.need(sql, job.id());
            if (now.revision() != job.revision()) {
                throw new ShopFault(
                        ShopFault.Kind.STALE,
                        "job " + job.id() + " was changed meanwhile: it is "
                                + now.state().word() + ", revision " + now.revision() + ", not " + job.revision()
                                + ". Nothing was changed.",
                        "look at it again: withy job " + job.id() + ".");
            }
            step.in(new Ledger(sql, today.toString(), what));
            return JobRows.need(sql, job.id());
        });
    }

    private static void set(Ledger ledger, Job job, State state) throws SQLException {
        ledger.sql().run("UPDATE job SET state = ?, revision = revision + 1 WHERE id = ?", state.word(), job.id());
    }

    private static void event(Ledger ledger, long job, String what, String note) throws SQLException {
        ledger.sql()
                .run("INSERT INTO event (job, batch, what, note) VALUES (?, ?, ?, ?)", job, ledger.batch(), what, note);
    }

    private static void needAccepted(Job job) {
        if (job.state() != State.ACCEPTED) {
            throw wrongState(job, "is " + job.state().word() + ": only an accepted build is built");
        }
    }

    private static ShopFault wrongState(Job job, String problem) {
        return ShopFault.refused(
                "job " + job.id() + " " + problem + ".", "another job is meant: withy job lists them.");
    }
}
