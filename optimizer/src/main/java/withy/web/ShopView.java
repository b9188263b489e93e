package withy.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** Pages about jobs, stock, scale and plan. */
public final class ShopView {
    private ShopView() {}

    /** All jobs, open ones first. */
    public record JobsView(Frame frame, List<JobLine> open, List<JobLine> done) {
        public JobsView {
            open = List.copyOf(open);
            done = List.copyOf(done);
        }
    }

    /** One job in a line. */
    public record JobLine(long job, String name, String state, String wanted, String missing) {}

    /**
     * One job.
     *
     * @param frame around it
     * @param job its number
     * @param revision changes with every write
     * @param name short name
     * @param state key of its state
     * @param wanted day it is wanted in words, or empty
     * @param offers builds of the last offer
     * @param offered when that was given and until when it holds, or empty
     * @param ended true where it does not hold any more
     * @param withdraw what ends it, in words; empty where none is open
     * @param foretold what it should weigh, or empty
     * @param weight the weight alone, as it may be typed; empty where nothing was accepted
     * @param balance likewise
     * @param built what it weighs, or empty
     * @param stations its parts, glued or not
     * @param missing parts whose promised pieces are lost
     * @param waits what it waits for
     * @param warnings what to look at
     * @param history what was done
     * @param done what was done last
     * @param last what was done last and has a way back, or null
     * @param scalable true where its pieces can be weighed
     * @param slip what was typed and can't be booked
     */
    public record JobView(
            Frame frame,
            long job,
            int revision,
            String name,
            String state,
            String wanted,
            List<Offered> offers,
            String offered,
            boolean ended,
            String withdraw,
            String foretold,
            String weight,
            String balance,
            String built,
            List<Stand> stations,
            List<Lost> missing,
            List<String> waits,
            List<String> warnings,
            List<String> history,
            String done,
            @Nullable Last last,
            boolean scalable,
            Slip slip) {
        public JobView {
            offers = List.copyOf(offers);
            stations = List.copyOf(stations);
            missing = List.copyOf(missing);
            waits = List.copyOf(waits);
            warnings = List.copyOf(warnings);
            history = List.copyOf(history);
        }
    }

    /** What was done with a job last, and what stands against taking it back; nothing, where it can be. */
    public record Last(long act, String words, List<String> obstacles) {
        public Last {
            obstacles = List.copyOf(obstacles);
        }
    }

    /** A build that was offered. */
    public record Offered(int rank, String name, String figures) {}

    /** A part of an accepted build. */
    public record Stand(String station, String place, String part, String name, boolean glued) {}

    /** A promised piece that is lost. */
    public record Lost(String part, String words) {}

    /**
     * The scale.
     *
     * @param frame around it
     * @param job the job, or 0
     * @param name its name
     * @param next piece to be weighed next, or null where all are, or none is chosen
     * @param pieces all pieces of the job
     * @param foretold what the rod should weigh by lists and readings, or empty
     * @param sum how far the readings are off so far, or empty
     * @param jobs jobs whose pieces can be weighed, where none is chosen
     * @param drift how far lists are off, where no job is chosen
     * @param query words of a part that is looked for, or empty
     * @param found parts of that name, each as if it were a piece
     * @param more how many were left out
     * @param weighed what was weighed last, or empty
     * @param last the way back from that, or null
     * @param slip what was typed and can't be booked
     */
    public record ScaleView(
            Frame frame,
            long job,
            String name,
            @org.jspecify.annotations.Nullable PieceLine next,
            List<PieceLine> pieces,
            String foretold,
            String sum,
            List<JobLine> jobs,
            List<String> drift,
            String query,
            List<PieceLine> found,
            int more,
            String weighed,
            @Nullable TakeBack last,
            Slip slip) {
        public ScaleView {
            found = List.copyOf(found);
            pieces = List.copyOf(pieces);
            jobs = List.copyOf(jobs);
            drift = List.copyOf(drift);
        }
    }

    /**
     * A piece on the way to the scale.
     *
     * @param piece its name, or its part's where any piece of it will do
     * @param number its number as it is shown, or empty
     * @param name maker and model
     * @param listed weight in the lists
     * @param reading its weight so far, or empty
     * @param seen readings there were of it when the page was made
     */
    public record PieceLine(String piece, String number, String name, String listed, String reading, int seen) {
        PieceLine seen(int readings) {
            return new PieceLine(piece, number, name, listed, reading, readings);
        }

        /** The piece as an address tells it. */
        public String at() {
            return piece.replace("#", "%23");
        }
    }

    /**
     * Stock.
     *
     * @param frame around it
     * @param query words looked for
     * @param kind kind looked for, or empty
     * @param kinds kinds there are, key and words
     * @param parts what was found
     * @param more how many were left out
     * @param remembered true where there is a memory that can be copied
     * @param copies the way to the last copy of the memory, if there is one
     * @param folder the shop's folder, as a command line names it from anywhere
     */
    public record StockView(
            Frame frame,
            String query,
            String kind,
            List<BriefView.Option> kinds,
            List<StockLine> parts,
            int more,
            boolean remembered,
            List<CopyView.Last> copies,
            String folder) {
        public StockView {
            copies = List.copyOf(copies);
            kinds = List.copyOf(kinds);
            parts = List.copyOf(parts);
        }
    }

    /** One part in stock. */
    public record StockLine(
            String part, String name, String kind, int free, int shelf, int promised, int ordered, int missing) {}

    /** One part with all that can be done about it; {@code seen} readings there were of it when the page was made. */
    public record PartView(
            Frame frame,
            StockLine line,
            String weight,
            String price,
            String due,
            int seen,
            List<String> pieces,
            List<String> ledger,
            List<String> readings,
            @Nullable TakeBack last,
            Slip slip) {
        public PartView {
            readings = List.copyOf(readings);
            pieces = List.copyOf(pieces);
            ledger = List.copyOf(ledger);
        }
    }

    /**
     * A part that ran out.
     *
     * @param frame around it
     * @param part its id
     * @param name maker and model
     * @param jobs accepted jobs that need it, each with its ladder
     * @param since what happened since the ladder was shown that something was to be taken of, or empty
     * @param coming what is still on its way: more that the last job can do, and the next one
     * @param unfinished true where it was cut short
     * @param last the way back, where it was just booked that it ran out, or null
     */
    public record OutView(
            Frame frame,
            String part,
            String name,
            List<Ladder> jobs,
            String since,
            ReasonsView.More coming,
            boolean unfinished,
            @Nullable TakeBack last) {
        public OutView {
            jobs = List.copyOf(jobs);
        }

        /** True where all that a job can do is known. */
        public boolean known(Ladder job) {
            return coming.words().isEmpty() || !jobs.get(jobs.size() - 1).equals(job);
        }
    }

    /** What one job can do; {@code asked} where its customer asked for the part by name. */
    public record Ladder(
            long job, int revision, String name, String agreed, String waiting, boolean asked, List<Rung> rungs) {
        public Ladder {
            rungs = List.copyOf(rungs);
        }
    }

    /** One way. */
    public record Rung(int rung, String mark, String title, List<String> swaps, String then, String ready) {
        public Rung {
            swaps = List.copyOf(swaps);
        }
    }

    /** All jobs from one stock. */
    public record PlanView(
            Frame frame, List<Planned> jobs, List<String> summary, List<Supplier> shopping, boolean unfinished) {
        public PlanView {
            jobs = List.copyOf(jobs);
            summary = List.copyOf(summary);
            shopping = List.copyOf(shopping);
        }
    }

    /** One job of the plan. */
    public record Planned(long job, String name, String rod, List<String> notes) {
        public Planned {
            notes = List.copyOf(notes);
        }
    }

    /** What is ordered from one supplier. */
    public record Supplier(String name, String total, List<BuildsView.Line> lines) {
        public Supplier {
            lines = List.copyOf(lines);
        }
    }
}
