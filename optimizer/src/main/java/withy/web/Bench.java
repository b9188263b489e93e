package withy.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import withy.app.LocalPage;
import withy.app.PartIds;
import withy.app.Reasons.BuildLine;
import withy.app.Workshop;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefFault;
import withy.brief.BriefReader;
import withy.brief.BriefReading;
import withy.catalog.Catalog;
import withy.shop.Snapshot;
import withy.units.Money;
import withy.units.QuantityText;

/** The shop as the pages ask it: briefs read, answers worked out once and kept for a while. */
final class Bench {
    private static final int MOST_CATALOGUES = 16;

    private final LocalPage.Setting setting;
    private final Memory memory = new Memory();
    private final Recent<List<Object>, Catalog> catalogues = new Recent<>(MOST_CATALOGUES);
    private final Answers answers;

    Bench(LocalPage.Setting setting, LongSupplier millis) {
        this.setting = setting;
        this.answers = new Answers(this, setting.choosers(), millis);
    }

    /** The shop's folder and lists as of now. */
    Workshop workshop() {
        return setting.workshop().get();
    }

    /** What the shop remembers as of now. */
    Memory memory() {
        return memory;
    }

    QuantityText units() {
        return setting.units();
    }

    /** An amount in the shop's currency. */
    String money(long minor) {
        return Money.print(minor, currency());
    }

    /** A build by name, price and weight. */
    String figures(BuildLine build) {
        return build.name() + " · " + sums(build);
    }

    String sums(BuildLine build) {
        return sums(build.priceMinor(), build.weightG());
    }

    String sums(long priceMinor, double weightG) {
        return money(priceMinor) + " · " + units().mass(weightG);
    }

    Currency currency() {
        return Currency.getInstance(workshop().lists().rates().currency());
    }

    /**
     * A brief read against the shop.
     *
     * @param brief the brief with nothing left open, or null where there is a fault
     * @param faults all of them
     * @param catalog what the shop has for it; the plain lists where there is a fault
     */
    record Asked(@Nullable Brief brief, List<BriefFault> faults, Catalog catalog) {
        /** The brief of a reading without fault. */
        Brief told() {
            if (brief == null) {
                throw new Refusal(422, faults.stream().map(BriefFault::message).toList());
            }
            return brief;
        }
    }

    /** Reads a brief as typed. */
    Asked read(ObjectNode typed) {
        Memory.Reading reading = memory.of(workshop());
        Snapshot snapshot = reading.snapshot();
        Catalog today = reading.catalog();
        // a page's brief has the form of today; that need not be taken for granted aloud
        ObjectNode whole = typed.has("schema") ? typed : typed.deepCopy().put("schema", 1);
        BriefReading told = BriefReader.read(whole, new BriefContext(today.rates(), today.asOf()));
        Brief brief = told.brief();
        if (brief == null) {
            return new Asked(null, told.faults(), today);
        }
        List<BriefFault> unknown = PartIds.unknown(brief, today);
        if (!unknown.isEmpty()) {
            return new Asked(null, unknown, today);
        }
        List<Object> key = new ArrayList<>();
        key.add(snapshot.hash());
        key.add(today.asOf());
        key.add(String.valueOf(brief.wantedBy()));
        key.add(brief.owned());
        return new Asked(brief, List.of(), catalogues.get(key, () -> snapshot.forBrief(brief)));
    }

    /** What is worked out for the pages. */
    Answers answers() {
        return answers;
    }

    /** Stops what is being worked out. */
    void close() {
        answers.close();
    }
}
