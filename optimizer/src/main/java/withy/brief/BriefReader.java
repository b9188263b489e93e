package withy.brief;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Handle;
import withy.brief.Brief.Landing;
import withy.brief.Brief.Leader;
import withy.brief.Brief.Look;
import withy.brief.Brief.Lure;
import withy.brief.Brief.MainLine;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Reel;
import withy.brief.FrameReader.Ends;
import withy.brief.FrameReader.Kind;
import withy.brief.FrameReader.Pieces;
import withy.catalog.TextFile;

/**
 * Reads a brief written as JSON: checks all of it, takes a stated default for what is left out, and hands out a resolved {@link Brief} or every
 * fault at once.
 */
public final class BriefReader {
    /** The format this program reads and writes. */
    public static final int SCHEMA = 1;

    private static final int LONGEST_NAME = 120;
    private static final int MOST_DEFAULTS = 200;
    private static final int LONGEST_SENTENCE = 400;

    private BriefReader() {}

    /** Reads a file; fails only where the file can't be read at all. */
    public static BriefReading read(Path file, BriefContext context) throws IOException {
        if (Files.size(file) > 4L * BriefText.LONGEST) {
            String much = Files.size(file) + " bytes";
            return new BriefReading(
                    null,
                    List.of(new BriefFault(
                            "",
                            1,
                            1,
                            much,
                            "at most " + BriefText.LONGEST + " characters",
                            "Maybe another file was given.")));
        }
        return read(TextFile.decode(Files.readAllBytes(file)), context);
    }

    /** Reads a text. */
    public static BriefReading read(String json, BriefContext context) {
        try {
            BriefText text = BriefText.read(json);
            Notes notes = new Notes(text.places());
            return read(text.tree(), notes, context);
        } catch (BriefText.Unreadable e) {
            return new BriefReading(null, List.of(e.fault()));
        }
    }

    /** Reads a tree that is already in memory; its faults have no line and column. */
    public static BriefReading read(JsonNode tree, BriefContext context) {
        return read(tree, new Notes(Map.of()), context);
    }

    static BriefReading read(JsonNode tree, Notes notes, BriefContext context) {
        if (!tree.isObject()) {
            notes.fault("", Values.shown(tree), "a JSON object", "Maybe the outer braces are missing.");
            return new BriefReading(null, notes.faults());
        }
        Fields root = new Fields(tree, "", notes);
        if (newer(root)) {
            return new BriefReading(null, notes.faults());
        }
        Brief brief = brief(root, context);
        root.finish();
        return notes.faults().isEmpty() ? new BriefReading(brief, List.of()) : new BriefReading(null, notes.faults());
    }

    /** A newer format is refused at once: none of its other keys can be judged. */
    private static boolean newer(Fields root) {
        root.take("$schema");
        if (!root.has("schema")) {
            root.notes().taken(Default.SCHEMA, SCHEMA);
            return false;
        }
        JsonNode told = root.take("schema");
        if (told.isIntegralNumber() && told.canConvertToInt() && told.intValue() == SCHEMA) {
            return false;
        }
        boolean newer = told.isIntegralNumber() && told.bigIntegerValue().signum() > 0;
        String maybe = newer
                ? "Maybe a newer withy wrote it: a version that knows brief schema " + told.asText() + " reads it."
                : "Maybe leave it out.";
        root.fault("schema", "the number " + SCHEMA, maybe);
        return true;
    }

    private static Brief brief(Fields root, BriefContext context) {
        String name = name(root);
        String customer = root.text("customer", LONGEST_NAME);
        Frame frame = frame(root);
        Tackle tackle = tackle(root, frame);
        TradeReader trade = new TradeReader(root, context);
        Use use = use(trade, tackle, frame.kind());
        BodyReader body = new BodyReader(root);
        BodyReader.Hand hand = body.hand();
        Ends reach = body.reach(hand, frame.kind(), frame.lure(), frame.twoHanded());
        Wishes wishes = wishes(root, frame.kind());
        Bargain bargain = bargain(trade, frame.kind());
        Allowed allowed = new Allowed(told(root.flag("counterweightAsked")), guidesByClearance(root));
        Person person = new Person(name, customer == null ? "" : customer, hand.palmMm(), reach);
        return resolved(person, frame, tackle, use, wishes, bargain, allowed, defaults(root));
    }

    private static boolean told(@Nullable Boolean flag) {
        return flag != null && flag;
    }

    private static boolean guidesByClearance(Fields root) {
        if (!root.has("guidesByClearance")) {
            root.notes().taken(Default.GUIDE_COUNT);
        }
        return told(root.flag("guidesByClearance"));
    }

    private record Allowed(boolean counterweight, boolean guidesByClearance) {}

    private record Person(String name, String customer, double palmMm, Ends reach) {}

    private record Frame(
            Kind kind,
            Lure lure,
            boolean twoHanded,
            Ends length,
            @Nullable Double packed,
            Pieces pieces) {}

    private record Tackle(MainLine line, @Nullable Leader leader, double dragKg, Reel reel) {}

    private record Use(double fishKg, Landing landing, int durability, int corrosion) {}

    private record Wishes(Handle handle, Look look, Parts parts) {}

    private record Bargain(
            @Nullable Long budget,
            @Nullable LocalDate wantedBy,
            Map<Objective, Double> priorities,
            Ends zone,
            Map<Objective, Double> steps) {}

    private static String name(Fields root) {
        String name = root.text("name", LONGEST_NAME);
        if (name == null || name.isEmpty()) {
            name = "commission";
            root.notes().taken(Default.NAME, name);
        }
        return name;
    }

    private static Frame frame(Fields root) {
        FrameReader reader = new FrameReader(root);
        Kind kind = reader.kind();
        Lure lure = new TackleReader(root).lure(kind.type());
        Span told = reader.length();
        boolean twoHanded = reader.twoHanded(kind.type(), lure, told);
        Ends length = reader.length(told, kind, lure, twoHanded);
        Double packed = reader.packed();
        return new Frame(kind, lure, twoHanded, length, packed, reader.pieces(kind.type(), packed));
    }

    private static Tackle tackle(Fields root, Frame frame) {
        LineReader lines = new LineReader(root);
        MainLine line = lines.line(frame.lure());
        Leader leader = lines.leader(line, frame.lure(), frame.kind().type());
        double drag = lines.drag(line, leader);
        return new Tackle(
                line, leader, drag, new TackleReader(root).reel(frame.kind().type(), frame.lure()));
    }

    private static Use use(TradeReader trade, Tackle tackle, Kind kind) {
        double fish = trade.largestFish(tackle.dragKg());
        Landing landing = trade.landing(kind.from());
        int durability = trade.durability(tackle.dragKg(), kind.from(), landing);
        return new Use(fish, landing, durability, trade.corrosion(kind.from()));
    }

    private static Wishes wishes(Fields root, Kind kind) {
        WishReader wishes = new WishReader(root);
        Handle handle = wishes.handle(kind.type());
        Look look = wishes.look();
        return new Wishes(handle, look, parts(root, wishes));
    }

    private static Bargain bargain(TradeReader trade, Kind kind) {
        Long budget = trade.budget();
        LocalDate wantedBy = trade.wantedBy();
        Map<Objective, Double> priorities = trade.priorities();
        Ends zone = trade.zone();
        return new Bargain(budget, wantedBy, priorities, zone, trade.steps(kind.type(), budget));
    }

    private static Brief resolved(
            Person person,
            Frame frame,
            Tackle tackle,
            Use use,
            Wishes wishes,
            Bargain bargain,
            Allowed allowed,
            List<String> defaultsUsed) {
        return new Brief(
                person.name(),
                person.customer(),
                frame.kind().type(),
                frame.twoHanded(),
                frame.kind().from(),
                frame.length().min(),
                frame.length().max(),
                frame.pieces().min(),
                frame.pieces().max(),
                frame.packed(),
                frame.lure(),
                tackle.line(),
                tackle.leader(),
                tackle.dragKg(),
                tackle.reel(),
                use.fishKg(),
                use.landing(),
                use.durability(),
                use.corrosion(),
                person.palmMm(),
                person.reach().min(),
                person.reach().max(),
                wishes.handle(),
                wishes.look(),
                bargain.budget(),
                bargain.wantedBy(),
                bargain.priorities(),
                bargain.zone().min(),
                bargain.zone().max(),
                bargain.steps(),
                wishes.parts().insisted(),
                wishes.parts().owned(),
                wishes.parts().refused(),
                allowed.counterweight(),
                allowed.guidesByClearance(),
                defaultsUsed);
    }

    private record Parts(List<PartWish> insisted, TreeSet<String> owned, List<PartWish> refused) {}

    private static Parts parts(Fields root, WishReader wishes) {
        Parts parts = new Parts(wishes.parts("insisted"), wishes.owned(), wishes.parts("refused"));
        for (PartWish refused : parts.refused()) {
            boolean wanted = parts.owned().contains(refused.partId())
                    || parts.insisted().stream().anyMatch(wish -> wish.partId().equals(refused.partId()));
            if (wanted) {
                root.notes()
                        .fault(
                                "refused",
                                refused.partId(),
                                "parts that are neither insisted on nor owned",
                                "Maybe drop it from one of the two lists.");
            }
        }
        return parts;
    }

    /** Sentences a resolved brief carries from its first reading, then those of this one. */
    private static List<String> defaults(Fields root) {
        List<String> carried = root.list("defaultsUsed", MOST_DEFAULTS, (value, where) -> sentence(root, value, where));
        carried.addAll(root.notes().defaults());
        return carried;
    }

    private static @Nullable String sentence(Fields root, JsonNode value, String where) {
        if (value.isTextual() && value.textValue().length() <= LONGEST_SENTENCE) {
            return value.textValue();
        }
        root.notes()
                .fault(
                        where,
                        Values.shown(value),
                        "a sentence of at most " + LONGEST_SENTENCE + " characters",
                        "Maybe leave defaultsUsed out: the program writes it.");
        return null;
    }
}
